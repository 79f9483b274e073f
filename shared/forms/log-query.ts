import { fold } from '../text/fold';
import { Day, readDay } from '../time/day';

/** What is looked for in the log, as it was typed: empty for everything. */
export type LogQuery = Record<(typeof LOG_FIELDS)[number], string>;

export const LOG_FIELDS = ['bench', 'product', 'from', 'to', 'person'] as const;

/** What stands in an address. What is not asked there, or too long to be meant, is left out. */
export const logQueryIn = (search: Readonly<Record<string, string | string[] | undefined>>): LogQuery => {
  const one = (field: string) => [search[field] ?? ''].flat()[0]?.trim().slice(0, 200) ?? '';
  return { bench: one('bench'), product: one('product'), from: one('from'), to: one('to'), person: one('person') };
};

/** The same as an address writes it: only what is looked for. */
export function logQueryText(query: Partial<LogQuery>): string {
  const asked = LOG_FIELDS.flatMap((field) => (query[field] ? [[field, query[field]]] : []));
  return new URLSearchParams(asked).toString();
}

/** What is wrong with a day that was typed; null when it is one, or empty. */
export function dayFault(text: string): string | null {
  const reading = text === '' ? null : readDay(text);
  return reading && !reading.ok ? reading.message : null;
}

/** Which page of what was found is shown, the newest first: 1 unless an address says otherwise. */
export function logPageIn(search: Readonly<Record<string, string | string[] | undefined>>): number {
  const text = [search.page ?? ''].flat()[0] ?? '';
  return /^[1-9]\d{0,4}$/.test(text) ? Number(text) : 1;
}

/** On how many pages of so many lines a number of records stand; at least one. */
export const logPages = (records: number, onOne: number): number => Math.max(1, Math.ceil(records / onOne));

/** What is looked for of a record. */
type Logged = { benches: string[]; products: string[]; on: Day; people: (string | null)[] };

/**
 * Whether a record is looked for: on that bench, with that product, on or between those days, by or entered by somebody
 * of that name. Days that are none look for nothing.
 */
export function isLookedFor({ bench, product, from, to, person }: LogQuery, logged: Logged): boolean {
  if (bench !== '' && !logged.benches.includes(bench)) return false;
  if (product !== '' && !logged.products.includes(product)) return false;
  const [first, last] = [Day.safeParse(from), Day.safeParse(to)];
  if (first.success && logged.on < first.data) return false;
  if (last.success && logged.on > last.data) return false;
  const named = fold(person);
  return named === '' || logged.people.some((name) => name !== null && fold(name).includes(named));
}
