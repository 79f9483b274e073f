import type { Part } from '@/lib/engine/buying/baseline-policy';
import { costOfPurchase, type Purchase, purchaseOf } from '@/lib/engine/buying/bought';
import type { Horizon } from '@/lib/engine/buying/horizon';
import { placeAfter, toBuy } from '@/lib/engine/buying/need';
import { areTaken, ordersOf, totalOf } from '@/lib/engine/buying/orders';
import type { Bought } from '@/lib/engine/buying/shortest-path';

/*
 * The slow way to buy: try everything. It shares with the fast one what becomes of packs that are used one after
 * another, and nothing of how they are chosen.
 */

/**
 * Every way to meet a need: any packs in any turn, each ordered on any of some days, and so many more beside them that
 * nobody opens. Without days, each pack is ordered on the last day on which it still comes in time.
 */
export function everyPurchase(
  part: Part,
  horizon: Horizon,
  orderDays: readonly number[] | null,
  shut: number,
): Purchase[] {
  const found: Purchase[] = [];
  const tryOn = (bought: Bought[]) => {
    const purchase = purchaseOf(part.need, horizon, bought);
    if (purchase.covers) found.push(purchase);
    const covered = purchase.packs.at(-1)?.use.to ?? 0;
    const isUseless = purchase.packs.some(({ openedOn }) => openedOn === null);
    if (covered >= toBuy(part.need) || isUseless) return;
    for (const pack of part.packs) {
      const latest = pack.ways[placeAfter(part.need, covered, 0)]?.orderOn;
      for (const orderOn of orderDays ?? (latest === undefined ? [] : [latest])) tryOn([...bought, { pack, orderOn }]);
    }
  };
  tryOn([]);
  if (shut === 0) return found;
  const kinds = (orderDays ?? []).flatMap((orderOn) => part.packs.map((pack): Bought => ({ pack, orderOn })));
  const beside = mixturesOf(kinds, shut);
  return cheapestOf(found, packsAndRest).flatMap(({ packs }) =>
    beside.map((more) => purchaseOf(part.need, horizon, [...packs, ...more])),
  );
}

/** Every so many of some things and fewer, in their turn. */
function mixturesOf<Thing>(things: readonly Thing[], most: number): Thing[][] {
  if (most === 0) return [[]];
  return [[], ...things.flatMap((thing, at) => mixturesOf(things.slice(at), most - 1).map((more) => [thing, ...more]))];
}

/** What the packs of a purchase are, and what the last one leaves: more packs beside them then come to the same. */
const packsAndRest = ({ packs }: Purchase): string =>
  JSON.stringify([packs.map(({ pack, orderOn }) => `${pack.offer.id} ${orderOn}`).sort(), packs.at(-1)?.use]);

/** The days on which any order can still wait for nothing: those on which some pack must be ordered at the latest. */
export function orderDaysOf(parts: readonly Part[]): number[] {
  const days = parts.flatMap(({ packs }) => packs.flatMap(({ ways }) => ways.flatMap((way) => way?.orderOn ?? [])));
  return [...new Set(days)].sort((a, b) => a - b);
}

/** The least that several parts can cost together, by trying every purchase of each with every one of the others. */
export function leastTogether(parts: readonly Part[], horizon: Horizon, shut: number): number {
  const days = orderDaysOf(parts);
  const every = parts.map((part) => cheapestOf(everyPurchase(part, horizon, days, shut), goodsByOrder));
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

/** What a purchase is worth in each order: any plan does as well with the cheapest of those that are worth the same. */
function goodsByOrder({ packs }: Purchase): string {
  const goods = new Map<string, number>();
  for (const { pack, orderOn, price } of packs) {
    const key = `${pack.offer.supplier.id} ${orderOn}`;
    goods.set(key, (goods.get(key) ?? 0) + price);
  }
  return JSON.stringify([...goods].sort());
}

/** The cheapest purchase of each key. */
function cheapestOf(purchases: readonly Purchase[], keyOf: (purchase: Purchase) => string): Purchase[] {
  const best = new Map<string, Purchase>();
  for (const purchase of purchases) {
    const known = best.get(keyOf(purchase));
    if (!known || costOfPurchase(purchase) < costOfPurchase(known)) best.set(keyOf(purchase), purchase);
  }
  return [...best.values()];
}
