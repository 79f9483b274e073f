import type { Supplier } from '../../shop';
import type { Part } from '../baseline-policy';
import type { UsedPack } from '../bought';
import type { Horizon } from '../horizon';
import type { Pack } from '../pack';
import { stillUsed, usableBehind } from '../pack-use';
import { isAtPriceOn } from '../price-periods';
import type { Bought } from '../shortest-path';
import { type CandidateOrders, twinOf } from './candidate-orders';
import { type Column, columnsOf, packsIn, totalOfChoice } from './column';
import { MOST_FILLERS, whileShut } from './fillers';

/** Fillers for one order: their value, their cost and the packs. Micros. */
type Fill = { goods: number; cost: number; packs: { part: number; pack: Pack }[] };

/**
 * Top up the orders of a plan with the cheapest fillers where that saves money: to the supplier's minimum, or to free
 * freight. Fillers that are already in an order are removed first; of equal costs the fewest packs are taken.
 *
 * Takes    one column of each product, and whether the time is over
 * Gives    the same plan where nothing pays
 */
export function topUpOrders(
  choice: readonly Column[],
  parts: readonly Part[],
  slots: CandidateOrders,
  horizon: Horizon,
  isOver: () => boolean,
): readonly Column[] {
  let [best, total] = [choice, totalOfChoice(choice)];
  for (const { supplier, day } of ordersToFill(choice, slots)) {
    if (isOver()) return best;
    const needed = best.map(({ purchase }) => purchase.packs.filter((one) => !isBeside(one, supplier, day)));
    const goods = needed.flat().reduce((sum, one) => sum + (isIn(one, supplier, day) ? one.price : 0), 0);
    for (const wanted of [0, supplier.minimumOrder ?? 0, supplier.freeFreightOver ?? 0]) {
      const fill = cheapestFill(parts, needed, horizon, { supplier, day, wanted: wanted - goods });
      const plan = needed.map((packs, part): Bought[] => [
        ...packs,
        ...(fill?.packs ?? []).flatMap((one) => (one.part === part ? { pack: one.pack, orderOn: day } : [])),
      ]);
      const columns = columnsOf(parts, slots, horizon, plan).flatMap((column) => column ?? []);
      const cost = columns.length < parts.length || !fill ? Infinity : totalOfChoice(columns);
      if (cost < total || (cost === total && packsIn(columns) < packsIn(best))) [best, total] = [columns, cost];
    }
  }
  return best;
}

const isIn = ({ pack, orderOn }: Bought, supplier: Supplier, day: number): boolean =>
  orderOn === day && pack.offer.supplier === supplier;

const isBeside = (one: UsedPack, supplier: Supplier, day: number): boolean =>
  one.openedOn === null && isIn(one, supplier, day);

/** The orders whose supplier has a minimum or free freight. */
function ordersToFill(choice: readonly Column[], slots: CandidateOrders): { supplier: Supplier; day: number }[] {
  const orders = new Set(choice.flatMap(({ goods }) => [...goods.keys()].map((slot) => twinOf(slots, slot)[0])));
  return [...orders].flatMap((order) => {
    const one = slots.all[order];
    return one && (one.supplier.minimumOrder ?? one.supplier.freeFreightOver) !== null ? one : [];
  });
}

type Wanted = { supplier: Supplier; day: number; wanted: number };

/** The cheapest fillers of at least a value; null when there are none. */
function cheapestFill(
  parts: readonly Part[],
  needed: readonly UsedPack[][],
  horizon: Horizon,
  order: Wanted,
): Fill | null {
  let fills: Fill[] = [{ goods: 0, cost: 0, packs: [] }];
  if (order.wanted > 0) {
    for (const [part, its] of parts.entries()) {
      const own = fillsOf(its, needed[part] ?? [], horizon, order).map(
        (fill): Fill => ({ ...fill, packs: fill.packs.map((pack) => ({ part, pack })) }),
      );
      const both = fills.flatMap((one) => own.map((other) => together(one, other)));
      fills = nearest(both, order.wanted);
    }
  }
  return fills.find(({ goods }) => goods >= order.wanted) ?? null;
}

const together = (a: Fill, b: Fill): Fill => ({
  goods: a.goods + b.goods,
  cost: a.cost + b.cost,
  packs: [...a.packs, ...b.packs],
});

/** At most this many sets are kept after each product. */
const MOST_FILLS = 150;

/** The sets that no other dominates by value, cost and number of packs; of those above the wanted value only the cheapest. */
function nearest<Any extends { goods: number; cost: number; packs: readonly unknown[] }>(
  fills: Any[],
  wanted: number,
): Any[] {
  const falling = fills.sort(
    (a, b) =>
      Math.min(b.goods, wanted) - Math.min(a.goods, wanted) || a.cost - b.cost || a.packs.length - b.packs.length,
  );
  const kept: Any[] = [];
  for (const fill of falling) {
    const last = kept.at(-1);
    const isFewer = fill.cost === last?.cost && fill.packs.length < last.packs.length;
    if (!last || fill.cost < last.cost || isFewer) kept.push(fill);
  }
  return kept.filter((_, at) => (at * MOST_FILLS) % kept.length < MOST_FILLS);
}

/** The sets of one product, dearest unit first, since those are credited first. */
function fillsOf(part: Part, needed: readonly UsedPack[], horizon: Horizon, { supplier, day, wanted }: Wanted) {
  const { need, packs } = part;
  const kinds = packs.filter((pack) => pack.offer.supplier === supplier && isAtPriceOn(pack, day));
  kinds.sort((a, b) => (b.levels[0]?.price ?? 0) / b.size - (a.levels[0]?.price ?? 0) / a.size);
  const before = needed.reduce((sum, { credit, use }) => sum + (credit > 0 ? stillUsed(need, horizon, use) : 0), 0);
  let fills = [{ goods: 0, cost: 0, used: before, packs: [] as Pack[] }];
  for (const pack of kinds) {
    const price = pack.levels[0]?.price ?? 0;
    const { lastDay, tied } = whileShut(pack, horizon, day);
    const mostUsed = usableBehind(need, horizon, lastDay);
    const more = fills.flatMap((fill) => {
      const all = [fill];
      for (let last = fill; last.goods < wanted && price > 0 && all.length <= MOST_FILLERS; ) {
        const used = Math.max(0, Math.min(pack.size, mostUsed - last.used));
        const cost = last.cost + price * (1 + tied - used / pack.size);
        last = { goods: last.goods + price, cost, used: last.used + used, packs: [...last.packs, pack] };
        all.push(last);
      }
      return all;
    });
    fills = nearest(more, wanted);
  }
  return fills;
}
