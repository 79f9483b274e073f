import { z } from 'zod';
import type { Fields } from './rows';

/** A row of the form of an order: an offer, and the how-manieth line of it, since an order may have several of one. */
export type OrderRow = { offer: string; which: number; name: string };

const Line = z.object({
  ...{ offer: z.string(), which: z.number(), name: z.string() },
  ...{ count: z.string().optional(), price: z.string().optional() },
});

const Ordered = z.object({ offer: z.string(), count: z.string(), price: z.string(), name: z.string() });

/** An order that somebody writes and has not sent. */
const WrittenOrder = z.object({
  /** The page whose form it is. */
  address: z.string(),
  shop: z.string(),
  supplier: z.object({ id: z.string(), name: z.string() }),
  /** How the order stood that is changed; empty for a new one. */
  standing: z.string(),
  /** The shop's day on which something was last typed. */
  writtenOn: z.string(),
  /** What is typed in the rows otherwise than the form began, cleared fields too. */
  lines: z.array(Line),
  /** The same of the fields beside the rows. */
  aside: z.record(z.string(), z.string()),
  /** Everything that it orders so far. */
  ordered: z.array(Ordered),
});
export type WrittenOrder = z.output<typeof WrittenOrder>;

const ASIDE = ['placedOn', 'expectedOn', 'freight', 'note'];

type Written = Pick<WrittenOrder, 'lines' | 'aside' | 'ordered'>;

/**
 * What is typed into the form of an order.
 *
 * Takes    the rows of the form, what its fields began with, and what stands in them now
 * Gives    what differs, and all that is ordered; null when nothing differs
 */
export function writtenIn(rows: readonly OrderRow[], first: Fields, now: Fields): Written | null {
  const otherwise = (name: string) => (now[name] === (first[name] ?? '') ? undefined : now[name]);
  const lines = rows.flatMap((row, place) => {
    const [count, price] = [otherwise(`lines[${place}].count`), otherwise(`lines[${place}].price`)];
    return count === undefined && price === undefined ? [] : [{ ...row, count, price }];
  });
  const aside = ASIDE.flatMap((name) => {
    const typed = otherwise(name);
    return typed === undefined ? [] : [[name, typed]];
  });
  if (lines.length === 0 && aside.length === 0) return null;
  const ordered = rows.flatMap(({ offer, name }, place) => {
    const [count = '', price = ''] = [now[`lines[${place}].count`], now[`lines[${place}].price`]];
    return count.trim() === '' || count.trim() === '0' ? [] : [{ offer, count, price, name }];
  });
  return { lines, aside: Object.fromEntries(aside), ordered };
}

/**
 * The fields of a form that what was written goes into, whatever rows have come or gone since.
 *
 * Gives    the fields by their name now, and what is no longer offered, in words
 */
export function writtenAgain(
  { lines, aside }: Pick<WrittenOrder, 'lines' | 'aside'>,
  rows: readonly OrderRow[],
): { fields: Fields; gone: string[] } {
  const fields: Record<string, string> = { ...aside };
  const gone: string[] = [];
  for (const { offer, which, name, count, price } of lines) {
    const place = rows.findIndex((row) => row.offer === offer && row.which === which);
    if (place < 0) gone.push(count ? `${count} × ${name}` : name);
    else if (count !== undefined) fields[`lines[${place}].count`] = count;
    if (place >= 0 && price !== undefined) fields[`lines[${place}].price`] = price;
  }
  return { fields, gone };
}

/** What an order asks for so far, in words. */
export const writtenWords = ({ ordered }: Pick<WrittenOrder, 'ordered'>): string =>
  ordered.length === 0 ? 'nothing yet' : ordered.map(({ count, name }) => `${count.trim()} × ${name}`).join('; ');

type Packs = { offer: string; count: string };

/** Which of the orders to one supplier are done with once these packs are ordered: one of them, or all together. */
export function placedAmong(written: readonly WrittenOrder[], packs: readonly Packs[]): WrittenOrder[] {
  const one = written.find((order) => asksFor([order], packs));
  if (one) return [one];
  return asksFor(written, packs) ? [...written] : [];
}

/** Whether these orders ask together for these packs and no others. */
const asksFor = (written: readonly WrittenOrder[], packs: readonly Packs[]): boolean =>
  summed(written.flatMap(({ ordered }) => ordered)) === summed(packs);

function summed(packs: readonly Packs[]): string {
  const sums = new Map<string, number>();
  for (const { offer, count } of packs) sums.set(offer, (sums.get(offer) ?? 0) + Number(count));
  return [...sums]
    .map(([offer, count]) => `${offer} ${count}`)
    .sort()
    .join('\n');
}

/**
 * What new orders ask for, together in the fields of a purchase list. Orders that are changed are not among it. What
 * several of them ask for at one price is one line.
 */
export function listedTogether(written: readonly WrittenOrder[]): [name: string, value: string][] {
  const packs = written.filter(({ standing }) => standing === '').flatMap(({ ordered }) => ordered);
  const keyOf = ({ offer, price }: (typeof packs)[number]) => `${offer} ${price.trim()}`;
  const first = packs.filter((one, place) => packs.findIndex((other) => keyOf(other) === keyOf(one)) === place);
  return first.flatMap((one, row): [string, string][] => {
    const same = packs.filter((other) => keyOf(other) === keyOf(one));
    const sum = same.reduce((total, { count }) => total + Number(count), 0);
    // What cannot be read is handed on as it was typed, so that the list can say so.
    const count = Number.isNaN(sum) ? same.map((other) => other.count.trim()).join(' + ') : String(sum);
    return [
      [`lines[${row}].offer`, one.offer],
      [`lines[${row}].count`, count],
      [`lines[${row}].price`, one.price.trim()],
    ];
  });
}

/** What was kept, read back; null when it is none. */
export function readWritten(text: string | null): WrittenOrder | null {
  try {
    return WrittenOrder.parse(JSON.parse(text ?? ''));
  } catch {
    return null;
  }
}
