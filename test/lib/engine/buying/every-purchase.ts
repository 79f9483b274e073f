import { type Purchase, purchaseOf } from '@/lib/engine/buying/bought';
import type { Part } from '@/lib/engine/buying/habit';
import type { Horizon } from '@/lib/engine/buying/horizon';
import { placeAfter, toBuy } from '@/lib/engine/buying/need';
import { areTaken, ordersOf, totalOf } from '@/lib/engine/buying/orders';
import type { Bought } from '@/lib/engine/buying/shortest-path';

/*
 * The slow way to buy: try everything. It shares with the fast one what becomes of packs that are used one after
 * another, and nothing of how they are chosen.
 */

/**
 * Every way to meet a need: any packs in any turn, each ordered on any of some days. Those of one order stand together,
 * and in an order those of one offer. Without days, each pack is ordered on the last day on which it still comes in time.
 */
export function everyPurchase(
  part: Part,
  horizon: Horizon,
  orderDays: readonly number[] | null,
  shut: number,
): Purchase[] {
  const found: Purchase[] = [];
  const tryOn = (bought: Bought[], shutSoFar: number) => {
    const purchase = purchaseOf(part.need, horizon, bought);
    if (purchase.covers) found.push(purchase);
    const covered = purchase.packs.at(-1)?.use.to ?? 0;
    const isDone = covered >= toBuy(part.need);
    if (bought.length > 0 && !isDone && purchase.packs.some(({ openedOn }) => openedOn === null)) return;
    if (isDone && shutSoFar >= shut) return;
    for (const pack of part.packs) {
      const latest = pack.ways[placeAfter(part.need, covered, 0)]?.orderOn;
      for (const orderOn of orderDays ?? (latest === undefined ? [] : [latest])) {
        const next = [...bought, { pack, orderOn }];
        if (orderDays === null || standTogether(next)) tryOn(next, isDone ? shutSoFar + 1 : 0);
      }
    }
  };
  tryOn([], 0);
  return found;
}

/** Whether packs of one order, and of one offer in it, stand next to each other. */
function standTogether(bought: readonly Bought[]): boolean {
  const last = bought.at(-1);
  const before = bought.slice(0, -1);
  if (!last) return true;
  const isSameOrder = (one: Bought) =>
    one.orderOn === last.orderOn && one.pack.offer.supplier === last.pack.offer.supplier;
  const isSameLine = (one: Bought) => isSameOrder(one) && one.pack === last.pack;
  const endsWith = (is: (one: Bought) => boolean) => !before.some(is) || is(before.at(-1) ?? last);
  return endsWith(isSameOrder) && endsWith(isSameLine);
}

/** The days on which any order can still wait for nothing: those on which some pack must be ordered at the latest. */
export function orderDaysOf(parts: readonly Part[]): number[] {
  const days = parts.flatMap(({ packs }) => packs.flatMap(({ ways }) => ways.flatMap((way) => way?.orderOn ?? [])));
  return [...new Set(days)].sort((a, b) => a - b);
}

/** The least that several parts can cost together, by trying every purchase of each with every one of the others. */
export function leastTogether(parts: readonly Part[], horizon: Horizon, shut: number): number {
  const days = orderDaysOf(parts);
  const every = parts.map((part) => cheapestOfEach(everyPurchase(part, horizon, days, shut)));
  let least = Infinity;
  const choose = (at: number, chosen: Purchase[]): void => {
    if (at < parts.length) {
      for (const one of every[at] ?? []) choose(at + 1, [...chosen, one]);
      return;
    }
    const orders = ordersOf(chosen);
    if (areTaken(orders)) least = Math.min(least, totalOf(chosen, orders));
  };
  choose(0, []);
  return least;
}

/** Of purchases that are in the same orders for the same value, the cheapest: any plan does as well with that one. */
function cheapestOfEach(purchases: readonly Purchase[]): Purchase[] {
  const best = new Map<string, { purchase: Purchase; cost: number }>();
  for (const purchase of purchases) {
    const goods = new Map<string, number>();
    for (const { pack, orderOn, price } of purchase.packs) {
      const key = `${pack.offer.supplier.id} ${orderOn}`;
      goods.set(key, (goods.get(key) ?? 0) + price);
    }
    const key = JSON.stringify([...goods].sort());
    const cost = purchase.goods + purchase.capital - purchase.left;
    const known = best.get(key);
    if (!known || cost < known.cost) best.set(key, { purchase, cost });
  }
  return [...best.values()].map(({ purchase }) => purchase);
}
