import { readStock, stockText } from '../measure/read-stock';
import { type Reading, read } from '../outcome';
import { least, type Stock, stock } from '../quantity/amounts';
import { bottleKey, type PlanBottle, type PlanProduct, productIn } from './mix-plan';
import type { MixProgress, Part } from './mix-progress';
import { plannedPour } from './mix-screens';

/**
 * The bottles of a product in the order in which this mix takes from them: those that somebody chose, then those that
 * the sheet would use.
 */
export function bottlesToUse(progress: MixProgress, product: string): PlanBottle[] {
  const { bottles } = productIn(progress.plan, product);
  const chosen = (progress.chosen[product] ?? []).map(bottleKey);
  const rank = (bottle: PlanBottle) => {
    const at = chosen.indexOf(bottleKey(bottle));
    return at === -1 ? chosen.length : at;
  };
  return [...bottles].sort((one, other) => rank(one) - rank(other));
}

/** What the books leave in a bottle once everything of this mix is out of it, but for one fill's pour of it. µL or mg. */
function leftBefore(progress: MixProgress, bottle: PlanBottle, product: string, fill: number): number {
  const { plan, pours } = progress;
  const its = productIn(plan, product);
  let left = bottle.left;
  for (const pour of pours) {
    if (pour.product !== product || pour.fill === fill || !pour.done) continue;
    for (const part of pour.parts) {
      const amount = part.bottle && bottleKey(part.bottle) === bottleKey(bottle) ? amountOf(part, its) : null;
      if (amount?.ok) left -= amount.value;
      if (amount && part.ranOut) left = 0;
    }
  }
  return Math.max(0, left);
}

/** How much a part is, µL or mg. Refuses what `readStock` refuses. */
export const amountOf = ({ amount }: Pick<Part, 'amount'>, product: PlanProduct): Reading<Stock> =>
  readStock(amount, product);

/**
 * A pour as the sheet has it, out of the bottles whose turn it is: the next one once one is empty. What the books do not
 * have is laid on the last.
 *
 * Gives    no parts when nobody knows how much it is, and when nothing there measures it: then somebody says what was poured
 */
export const partsAsPlanned = (progress: MixProgress, fill: number, product: string): Part[] =>
  (plannedPour(progress, product)?.farOff ?? null) === null ? partsExactly(progress, fill, product) : [];

/** The same where somebody has measured it after all, with something that the shop does not list. */
export function partsExactly(progress: MixProgress, fill: number, product: string): Part[] {
  const amount = plannedPour(progress, product)?.perFill ?? null;
  return amount === null || amount === 0 ? [] : partsOf(progress, { fill, product, amount: stock(amount) });
}

type ToDraw = { fill: number; product: string; amount: Stock };

/** So much of a product out of the bottles whose turn it is. */
export function partsOf(progress: MixProgress, { fill, product, amount }: ToDraw): Part[] {
  const its = productIn(progress.plan, product);
  const parts: { bottle: PlanBottle; amount: number }[] = [];
  let open = amount as number;
  for (const bottle of bottlesToUse(progress, product)) {
    const there = least(open, leftBefore(progress, bottle, product, fill));
    if (there > 0) parts.push({ bottle, amount: there });
    open -= there;
    if (open === 0) break;
  }
  const last = parts.at(-1);
  if (last) last.amount += open;
  const first = bottlesToUse(progress, product)[0];
  if (!last && first) parts.push({ bottle: first, amount: open });
  if (!last && !first) return [{ bottle: null, amount: stockText(amount, its.form), heldMore: false }];
  return parts.map(({ bottle: { lotId, place }, amount: each }) => ({
    bottle: { lotId, place },
    amount: stockText(stock(each), its.form),
    heldMore: false,
  }));
}

/** What is wrong with a pour: an amount that cannot be read, or more out of a bottle than the books have in it. */
export type PourFault = { part: number; kind: 'amount' | 'over-books' | 'twice'; message: string };

/** Everything that is wrong with the parts of one fill's pour. */
export function pourFaults(progress: MixProgress, fill: number, product: string, parts: readonly Part[]): PourFault[] {
  const its = productIn(progress.plan, product);
  return parts.flatMap((part, at): PourFault[] => {
    const amount = amountOf(part, its);
    if (!amount.ok) return [{ part: at, kind: 'amount', message: amount.message }];
    const { bottle } = part;
    if (!bottle) return [];
    const key = bottleKey(bottle);
    if (parts.findIndex((one) => one.bottle && bottleKey(one.bottle) === key) < at) {
      return [{ part: at, kind: 'twice', message: 'This bottle is named twice. Put it in one line.' }];
    }
    const known = its.bottles.find((one) => bottleKey(one) === key);
    const left = known ? leftBefore(progress, known, product, fill) : null;
    if (part.heldMore || left === null || amount.value <= left) return [];
    return [{ part: at, kind: 'over-books', message: overBooks(left, its) }];
  });
}

const overBooks = (left: number, { form }: PlanProduct): string =>
  left === 0
    ? 'The books have nothing left in this bottle. Take another, or say that it held more.'
    : `The books have only ${stockText(stock(left), form)} left in this bottle. Take the rest from another, or say that it held more.`;

/** All that was poured of one product, bottle by bottle in the order of use. Amounts µL or mg. */
export type PouredInAll = {
  product: PlanProduct;
  from: { lotId: string; place: number; amount: Stock; heldMore: boolean; ranOut?: boolean }[];
  elsewhere: Stock;
};

/**
 * Everything that went into the fills that were mixed, one line per product: the sum of what was typed, to the µL and mg.
 *
 * Refuses  an amount that cannot be read
 */
export function pouredInAll(progress: MixProgress, fills: number): Reading<PouredInAll[]> {
  const lines = new Map<string, PouredInAll>();
  for (const { product, parts } of partsInOrder(progress, fills)) {
    const its = productIn(progress.plan, product);
    const line = lines.get(product) ?? { product: its, from: [], elsewhere: stock(0) };
    lines.set(product, line);
    for (const part of parts) {
      const amount = amountOf(part, its);
      if (!amount.ok) return amount;
      add(line, part, amount.value);
    }
  }
  return read([...lines.values()].filter(({ from, elsewhere }) => from.length > 0 || elsewhere > 0));
}

function add(line: PouredInAll, { bottle, heldMore, ranOut }: Part, amount: Stock): void {
  if (!bottle) {
    line.elsewhere = stock(line.elsewhere + amount);
    return;
  }
  const known = line.from.find((one) => bottleKey(one) === bottleKey(bottle));
  const emptied = ranOut ? { ranOut } : {};
  if (known) {
    Object.assign(known, { amount: stock(known.amount + amount), heldMore: known.heldMore || heldMore, ...emptied });
  } else line.from.push({ lotId: bottle.lotId, place: bottle.place, amount, heldMore, ...emptied });
}

function partsInOrder(progress: MixProgress, fills: number): { product: string; parts: Part[] }[] {
  const poured = progress.pours
    .filter(({ fill, done }) => done && fill < fills)
    .sort((one, other) => one.fill - other.fill);
  return [...poured, ...acidParts(progress, fills)];
}

/** The acid of every fill, out of its bottles in their turn. The bottle that it came from held it, whatever the books say. */
function acidParts(progress: MixProgress, fills: number): { product: string; parts: Part[] }[] {
  const amounts = new Map<string, number>();
  for (const { fill, product, first, more } of progress.acids) {
    if (fill >= fills) continue;
    for (const text of [first, more]) {
      const amount = text.trim() === '' ? null : readStock(text, productIn(progress.plan, product));
      if (amount?.ok) amounts.set(product, (amounts.get(product) ?? 0) + amount.value);
    }
  }
  return [...amounts].map(([product, amount]) => ({
    product,
    // No fill is this one, so that what every fill's pours took is out of the bottles already.
    parts: partsOf(progress, { fill: -1, product, amount: stock(amount) }).map((part) => ({ ...part, heldMore: true })),
  }));
}
