/*
 * Who may stand where, worked out once more from the rules alone: plain text and plain numbers, another way of reading
 * dates, none of the program's own code. The rules, in the order in which they are used here:
 *
 *   an application counts from the moment it started; one that was withdrawn, and confirmed so, does not
 *   an interval is whole minutes, rounded up; that of a mix is its longest, a stock solution's that of what it is made from
 *   too; what the labels said when it was recorded counts where it was longer
 *   a bench reopens when the interval has passed since the end, as time passes, and not before an amendment that is open
 *   would have it
 *   no end, or an interval that nobody knows: unknown. Otherwise closed before the latest reopening, and open from it on
 */

type WrittenProduct = { id: string; reiHours: string | null; madeFrom: string[] };
export type WrittenRecord = {
  id: string;
  recipe: string;
  benches: string[];
  startedAt: string;
  endedAt: string | null;
  /** What went in, where somebody noted it, with the minutes that the label said then. */
  products: { product: string; reiMinutes: number | null }[];
  closedUntil: string | null;
  withdrawn: boolean;
};
export type WrittenHistory = {
  products: WrittenProduct[];
  recipes: { id: string; products: string[] }[];
  records: WrittenRecord[];
};

export type Standing = { state: 'open' | 'closed' | 'unknown'; until: number | null; because: string[] };

/** Of a bench at a moment. Moments are read by Date, which knows nothing of the shop's zone. */
export function standingOf(history: WrittenHistory, bench: string, now: number): Standing {
  const begun = history.records.filter(
    ({ benches, startedAt, withdrawn, closedUntil }) =>
      benches.includes(bench) && Date.parse(startedAt) <= now && !(withdrawn && closedUntil === null),
  );
  const ends = begun.map((record) => ({ id: record.id, at: reopens(history, record) }));
  const unknown = ends.filter(({ at }) => at === null).map(({ id }) => id);
  if (unknown.length > 0) return { state: 'unknown', until: null, because: unknown };
  const latest = ends.reduce((most, { at }) => Math.max(most, at ?? 0), Number.NEGATIVE_INFINITY);
  if (now >= latest) return { state: 'open', until: null, because: [] };
  return { state: 'closed', until: latest, because: ends.filter(({ at }) => at === latest).map(({ id }) => id) };
}

/** When a record reopens its benches; null when nobody can say. */
export function reopens(history: WrittenHistory, record: WrittenRecord): number | null {
  const minutes = intervalOf(history, record);
  if (record.endedAt === null || minutes === null) return null;
  const elapsed = Date.parse(record.endedAt) + minutes * 60_000;
  return record.closedUntil === null ? elapsed : Math.max(elapsed, Date.parse(record.closedUntil));
}

function intervalOf(history: WrittenHistory, { recipe, products }: WrittenRecord): number | null {
  const mixed = products.map(({ product }) => product);
  const inRecipe = history.recipes.find(({ id }) => id === recipe)?.products ?? [];
  const today = (mixed.length > 0 ? mixed : inRecipe).flatMap((id) => labelled(history, id));
  const then = products.map(({ reiMinutes }) => reiMinutes);
  if (today.includes(null)) return null;
  const known = [...today, ...(then.includes(null) ? [] : then)].map((minutes) => minutes ?? 0);
  return Math.max(0, ...known);
}

/** The minutes of a label, and of the labels of what it is made from. */
function labelled({ products }: WrittenHistory, id: string): (number | null)[] {
  const product = products.find((one) => one.id === id);
  if (!product) return [null];
  const own = product.reiHours === null ? null : wholeMinutes(product.reiHours);
  return [own, ...product.madeFrom.flatMap((source) => labelled({ products, recipes: [], records: [] }, source))];
}

/** Hours as they are written, digit by digit, times sixty and up to the next whole minute. */
export function wholeMinutes(hours: string): number {
  const [whole = '0', decimals = ''] = hours.split('.');
  const under = 10n ** BigInt(decimals.length);
  const over = BigInt(whole + decimals) * 60n;
  return Number(over % under === 0n ? over / under : over / under + 1n);
}
