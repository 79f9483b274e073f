import type { CandidateOrder, CandidateOrders } from './candidate-orders';
import type { DualPrices } from './pricing-problem';

/** The average of recent pricing solutions: by product and order, how often it took part (0 to 1), and the goods. */
export type Presence = { isIn: Float64Array[]; goods: Float64Array };

/** The orders of one solution: the goods of each product in them, micros. */
export type Filled = readonly ReadonlyMap<number, number>[];

/** Nothing in any order. */
export const noPresence = (parts: number, width: number): Presence => ({
  isIn: Array.from({ length: parts }, () => new Float64Array(width)),
  goods: new Float64Array(width),
});

/** The average with one more solution in it. Averaging keeps the dual prices from swinging. */
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
 * One step of subgradient ascent on the dual prices. Products that take part in an order more than others pay more for it;
 * an order short of its minimum raises the value of goods. The prices stay dual feasible: together the products pay
 * freight + minimum × goodsDual of each order.
 *
 * Takes    the orders that each product may use, the average of recent solutions, and the step length
 */
export function ascentStep(
  slots: CandidateOrders,
  prices: readonly DualPrices[],
  mayUse: readonly ReadonlySet<number>[],
  presence: Presence | null,
  size: number,
): DualPrices[] {
  const goodsDual = Float64Array.from(prices[0]?.goodsDual ?? []);
  const next = prices.map(({ orderDual }) => ({ orderDual: new Float64Array(orderDual.length), goodsDual }));
  const all = usersBySlot(mayUse, slots.all.length);
  for (const [slot, one] of slots.all.entries()) {
    const users = all[slot] ?? [];
    if (users.length === 0) continue;
    const wanted = users.map(
      (part) => (prices[part]?.orderDual[slot] ?? 0) + size * (presence?.isIn[part]?.[slot] ?? 0),
    );
    const { freight, minimum } = one;
    const given = minimum * (goodsDual[slot] ?? 0) - size * filledShare(one, presence?.goods[slot] ?? 0);
    const shared = ontoSum(wanted, given, freight, minimum);
    for (const [index, value] of shared.asked.entries()) {
      const its = next[users[index] ?? 0];
      if (its) its.orderDual[slot] = value;
    }
    if (minimum > 0) goodsDual[slot] = shared.given / minimum;
  }
  return next;
}

/** The goods of an order as a share of its minimum. */
const filledShare = ({ minimum }: CandidateOrder, goods: number): number => (minimum > 0 ? goods / minimum : 0);

/**
 * The first dual prices: the products that may use an order share its cost equally.
 *
 * Takes    the part of a freight that can become free which is put on the goods
 */
export function equalShares(
  slots: CandidateOrders,
  mayUse: readonly ReadonlySet<number>[],
  counts: number,
): DualPrices[] {
  const width = slots.all.length;
  const goodsDual = Float64Array.from(slots.all, ({ freight, minimum, supplier }) =>
    freight === 0 && minimum > 0 ? Math.min(1, ((supplier.freightPerOrder ?? 0) * counts) / minimum) : 0,
  );
  const prices = mayUse.map(() => ({ orderDual: new Float64Array(width), goodsDual }));
  return ascentStep(slots, prices, mayUse, null, 0);
}

/** The squared length of the subgradient: the step length is divided by it. */
export function spreadOf(slots: CandidateOrders, mayUse: readonly ReadonlySet<number>[], presence: Presence): number {
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
export function between(a: readonly DualPrices[], b: readonly DualPrices[]): DualPrices[] {
  const half = (one: Float64Array, other: Float64Array) => one.map((value, at) => (value + (other[at] ?? 0)) / 2);
  const goodsDual = half(a[0]?.goodsDual ?? new Float64Array(), b[0]?.goodsDual ?? new Float64Array());
  return a.map(({ orderDual }, part) => ({ orderDual: half(orderDual, b[part]?.orderDual ?? orderDual), goodsDual }));
}
