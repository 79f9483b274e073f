import type { Part } from '../baseline-policy';
import { arrivalOn, costOfPurchase, type Purchase, purchaseOf } from '../bought';
import type { Horizon } from '../horizon';
import type { Need } from '../need';
import { areTaken, ordersOf, totalOf } from '../orders';
import type { Bought } from '../shortest-path';
import { type CandidateOrders, candidateOrderFor } from './candidate-orders';

/** One way to meet one part's need: its packs, what they cost without their orders, and the goods in each order. */
export type Column = { purchase: Purchase; cost: number; goods: Map<number, number>; key: string };

/** A pack and the slot of its order, as all parts count them. */
export type Ordered = Bought & { slot: number };

/** A column of some packs; null when they do not meet the need. */
export function columnOf(
  { need }: Part,
  slots: CandidateOrders,
  horizon: Horizon,
  ordered: readonly Ordered[],
): Column | null {
  const purchase = asTheyCome(need, horizon, ordered);
  if (!purchase.covers) return null;
  const slotOf = new Map(ordered.map(({ pack, orderOn, slot }) => [orderKey(pack.offer.supplier.id, orderOn), slot]));
  return columnIn(purchase, slots, (supplier, day) => slotOf.get(orderKey(supplier.id, day)) ?? null);
}

/**
 * The columns of a whole plan: each order is as large as the parts make it together, and so pays freight or does not.
 *
 * Gives    null for a part whose need is not met, or whose packs are ordered on a day that is not looked at
 */
export function columnsOf(
  parts: readonly Part[],
  slots: CandidateOrders,
  horizon: Horizon,
  plan: readonly (readonly Bought[])[],
): (Column | null)[] {
  const purchases = parts.map(({ need }, index) => asTheyCome(need, horizon, plan[index] ?? []));
  const slotOf = new Map(
    ordersOf(purchases).map(({ supplier, on, goods }) => [
      orderKey(supplier.id, on),
      candidateOrderFor(slots, supplier, on, goods),
    ]),
  );
  const placed = (purchase: Purchase) =>
    columnIn(purchase, slots, (supplier, day) => slotOf.get(orderKey(supplier.id, day)) ?? null);
  return purchases.map((purchase) => (purchase.covers ? placed(purchase) : null));
}

type Placing = (supplier: CandidateOrders['all'][number]['supplier'], day: number) => number | null;

const orderKey = (supplier: string, day: number): string => `${day} ${supplier}`;

function columnIn(purchase: Purchase, slots: CandidateOrders, slotOf: Placing): Column | null {
  const goods = new Map<number, number>();
  for (const { pack, orderOn, price } of purchase.packs) {
    const slot = slotOf(pack.offer.supplier, orderOn);
    if (slot === null) return null;
    goods.set(slot, (goods.get(slot) ?? 0) + price);
  }
  return { purchase, cost: costOfPurchase(purchase), goods, key: keyOf(slots, goods) };
}

/** What comes first is used first, as a shelf is used, unless the need cannot be met like that, or only at a higher cost. */
function asTheyCome(need: Need, horizon: Horizon, bought: readonly Bought[]): Purchase {
  const arrival = ({ pack, orderOn }: Bought) => arrivalOn(pack, horizon, orderOn);
  const asGiven = purchaseOf(need, horizon, bought);
  const isInTurn = bought.every((one, at) => at === 0 || arrival(bought[at - 1] ?? one) <= arrival(one));
  if (isInTurn || !asGiven.covers) return asGiven;
  const inTurn = bought.toSorted((a, b) => arrival(a) - arrival(b));
  const byArrival = purchaseOf(need, horizon, inTurn);
  return byArrival.covers && costOfPurchase(byArrival) <= costOfPurchase(asGiven) ? byArrival : asGiven;
}

/** Which orders a column is in, and for how much where that decides something: of two alike, the cheaper one will do. */
function keyOf({ all }: CandidateOrders, goods: ReadonlyMap<number, number>): string {
  const parts = [...goods].sort(([a], [b]) => a - b);
  const worth = (slot: number, value: number) => Math.min(value, all[slot]?.minimum ?? 0);
  return parts.map(([slot, value]) => (all[slot]?.minimum ? `${slot}:${worth(slot, value)}` : `${slot}`)).join(' ');
}

/** What a choice of columns comes to; without end when a supplier would not take one of its orders. */
export function totalOfChoice(columns: readonly Column[]): number {
  const purchases = columns.map(({ purchase }) => purchase);
  const orders = ordersOf(purchases);
  return areTaken(orders) ? totalOf(purchases, orders) : Infinity;
}

/** How many packs a choice of columns buys: of two that cost the same, fewer are better. */
export const packsIn = (columns: readonly Column[]): number =>
  columns.reduce((count, { purchase }) => count + purchase.packs.length, 0);
