import { costOfPurchase, type Purchase, purchaseOf } from '../bought';
import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import { areTaken, ordersOf, totalOf } from '../orders';
import type { Bought } from '../shortest-path';
import type { Slots } from './slots';

/** One way to meet one part's need: its packs, what they cost without their orders, and the goods in each order. */
export type Column = { purchase: Purchase; cost: number; goods: Map<number, number>; key: string };

/**
 * A column of some packs.
 *
 * Gives    null when they do not meet the need, or are ordered on a day that is not looked at
 */
export function columnOf({ need }: Part, slots: Slots, horizon: Horizon, bought: readonly Bought[]): Column | null {
  const [asGiven, byArrival] = [bought, inOrderOfArrival(horizon, bought)].map((one) => purchaseOf(need, horizon, one));
  if (!asGiven?.covers || !byArrival) return null;
  const isBetter = byArrival.covers && costOfPurchase(byArrival) <= costOfPurchase(asGiven);
  const purchase = isBetter ? byArrival : asGiven;
  const goods = new Map<number, number>();
  for (const { pack, orderOn, price } of purchase.packs) {
    const slot = slotAt(slots, pack.offer.supplier, orderOn);
    if (slot === null) return null;
    goods.set(slot, (goods.get(slot) ?? 0) + price);
  }
  return { purchase, cost: costOfPurchase(purchase), goods, key: keyOf(slots, goods) };
}

/** What comes first is used first, as a shelf is used; what comes together stays in its order. */
function inOrderOfArrival({ start }: Horizon, bought: readonly Bought[]): Bought[] {
  const arrival = ({ pack, orderOn }: Bought) => pack.arrivals[orderOn - start] ?? orderOn;
  return [...bought].sort((a, b) => arrival(a) - arrival(b));
}

function slotAt({ all, first, behind }: Slots, supplier: Slots['all'][number]['supplier'], day: number): number | null {
  const last = behind.get(supplier) ?? 0;
  for (let slot = first.get(supplier) ?? 0; slot < last; slot++) if (all[slot]?.day === day) return slot;
  return null;
}

/** Which orders a column is in, and for how much where that decides something: of two alike, the cheaper one will do. */
export function keyOf({ all }: Slots, goods: ReadonlyMap<number, number>): string {
  const parts = [...goods].sort(([a], [b]) => a - b);
  return parts
    .map(([slot, value]) => (all[slot]?.minimum || all[slot]?.freeOver ? `${slot}:${value}` : `${slot}`))
    .join(' ');
}

/** What a choice of columns comes to; without end when a supplier would not take one of its orders. */
export function totalOfChoice(columns: readonly Column[]): number {
  const purchases = columns.map(({ purchase }) => purchase);
  const orders = ordersOf(purchases);
  return areTaken(orders) ? totalOf(purchases, orders) : Infinity;
}
