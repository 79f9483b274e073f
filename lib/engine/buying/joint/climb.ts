import type { Prices } from './cheapest-column';
import type { Slot, Slots } from './slots';

/** How the orders looked lately: how much each part was in each, between not at all (0) and always (1), and its goods. */
export type Presence = { isIn: Float64Array[]; goods: Float64Array };

/** The orders of one choice of columns: the goods that each part has in them, micros. */
export type Filled = readonly ReadonlyMap<number, number>[];

/** Nothing in any order. */
export const noPresence = (parts: number, width: number): Presence => ({
  isIn: Array.from({ length: parts }, () => new Float64Array(width)),
  goods: new Float64Array(width),
});

/** Presence with the orders of one more choice: what was so before counts on, so that prices do not swing. */
export function blended(before: Presence, filled: Filled, weight: number): Presence {
  const goods = before.goods.map((value) => value * (1 - weight));
  const isIn = before.isIn.map((its, part) => {
    const next = its.map((value) => value * (1 - weight));
    for (const [slot, value] of filled[part] ?? []) {
      next[slot] = (next[slot] ?? 0) + weight;
      goods[slot] = (goods[slot] ?? 0) + weight * value;
    }
    return next;
  });
  return { isIn, goods };
}

/**
 * Prices of the orders a step further. Parts that are in an order more than others pay more for it, the others less; where
 * an order asks for a minimum and has less in it, goods give more back. Together the parts pay what the order costs and
 * what its goods can give back, no more and no less. Up such steps the proven bound climbs.
 *
 * Takes    the slots that each part may be in, what was in them, and how long the step is
 */
export function stepUp(
  slots: Slots,
  prices: readonly Prices[],
  mayUse: readonly ReadonlySet<number>[],
  presence: Presence | null,
  size: number,
): Prices[] {
  const reward = Float64Array.from(prices[0]?.reward ?? []);
  const next = prices.map(({ fixed }) => ({ fixed: new Float64Array(fixed.length), reward }));
  const all = usersBySlot(mayUse, slots.all.length);
  for (const [slot, one] of slots.all.entries()) {
    const users = all[slot] ?? [];
    if (users.length === 0) continue;
    const wanted = users.map((part) => (prices[part]?.fixed[slot] ?? 0) + size * (presence?.isIn[part]?.[slot] ?? 0));
    const { freight, minimum } = one;
    const given = minimum * (reward[slot] ?? 0) - size * filledShare(one, presence?.goods[slot] ?? 0);
    const shared = ontoSum(wanted, given, freight, minimum);
    for (const [index, value] of shared.asked.entries()) {
      const its = next[users[index] ?? 0];
      if (its) its.fixed[slot] = value;
    }
    if (minimum > 0) reward[slot] = shared.given / minimum;
  }
  return next;
}

/** How far the goods of an order go towards its minimum. */
const filledShare = ({ minimum }: Slot, goods: number): number => (minimum > 0 ? goods / minimum : 0);

/**
 * The first prices: what an order costs is shared equally by all who may be in it.
 *
 * Takes    how much of a freight that can become free the goods of such an order give back
 */
export function equalShares(slots: Slots, mayUse: readonly ReadonlySet<number>[], counts: number): Prices[] {
  const width = slots.all.length;
  const reward = Float64Array.from(slots.all, ({ freight, minimum, supplier }) =>
    freight === 0 && minimum > 0 ? Math.min(1, ((supplier.freightPerOrder ?? 0) * counts) / minimum) : 0,
  );
  const prices = mayUse.map(() => ({ fixed: new Float64Array(width), reward }));
  return stepUp(slots, prices, mayUse, null, 0);
}

/** How far apart the parts are on each order, squared and added up: how long a step has to be follows from it. */
export function spreadOf(slots: Slots, mayUse: readonly ReadonlySet<number>[], presence: Presence): number {
  let spread = 0;
  const all = usersBySlot(mayUse, slots.all.length);
  for (const [slot, one] of slots.all.entries()) {
    const filled = filledShare(one, presence.goods[slot] ?? 0);
    let [count, sum, squares] = one.minimum > 0 ? [1, filled, filled * filled] : [0, 0, 0];
    for (const part of all[slot] ?? []) {
      const is = presence.isIn[part]?.[slot] ?? 0;
      count += 1;
      sum += is;
      squares += is * is;
    }
    if (count > 0) spread += squares - (sum * sum) / count;
  }
  return spread;
}

/** The parts that may be in each order. It is asked for at every step, and changes only with the graphs. */
function usersBySlot(mayUse: readonly ReadonlySet<number>[], width: number): number[][] {
  const known = users.get(mayUse);
  if (known) return known;
  const bySlot = Array.from({ length: width }, (): number[] => []);
  for (const [part, its] of mayUse.entries()) for (const slot of its) bySlot[slot]?.push(part);
  users.set(mayUse, bySlot);
  return bySlot;
}

const users = new WeakMap<readonly ReadonlySet<number>[], number[][]>();

/**
 * The nearest values to some wanted ones that share an order out: each part is asked for no less than nothing, its goods
 * give back no less than nothing and no more than its minimum, and what is asked for is the freight and what is given.
 */
export function ontoSum(wanted: readonly number[], given: number, freight: number, minimum: number) {
  if (minimum === 0) return { asked: ontoFreight(wanted, freight), given: 0 };
  const back = (off: number) => Math.min(minimum, Math.max(0, given + off));
  const over = (off: number) => {
    let sum = -back(off) - freight;
    for (const value of wanted) sum += Math.max(0, value - off);
    return sum;
  };
  const most = Math.max(0, ...wanted.map(Math.abs), Math.abs(given)) + freight + minimum + 1;
  let [low, high] = [-most, most];
  for (let turn = 0; turn < HALVINGS; turn++) {
    const middle = (low + high) / 2;
    if (over(middle) > 0) low = middle;
    else high = middle;
  }
  // At the higher end no more is asked for than there is.
  return { asked: wanted.map((value) => Math.max(0, value - high)), given: back(high) };
}

/** The same where goods give nothing back: so much is taken off everyone that what stays adds up to the freight. */
function ontoFreight(wanted: readonly number[], freight: number): number[] {
  const falling = [...wanted].sort((a, b) => b - a);
  let [added, off] = [0, 0];
  for (const [index, value] of falling.entries()) {
    added += value;
    const each = (added - freight) / (index + 1);
    if (value - each > 0) off = each;
  }
  return wanted.map((value) => Math.max(0, value - off));
}

/** From any amount of money down to less than a micro. */
const HALVINGS = 70;

/** Prices half way between two. */
export function between(a: readonly Prices[], b: readonly Prices[]): Prices[] {
  const half = (one: Float64Array, other: Float64Array) => one.map((value, at) => (value + (other[at] ?? 0)) / 2);
  const reward = half(a[0]?.reward ?? new Float64Array(), b[0]?.reward ?? new Float64Array());
  return a.map(({ fixed }, part) => ({ fixed: half(fixed, b[part]?.fixed ?? fixed), reward }));
}
