import type { Part } from '../baseline-policy';
import { arrivalOn } from '../bought';
import type { Horizon } from '../horizon';
import type { Pack } from '../pack';
import { creditUnopened, ratePerDay } from '../pack-use';
import { isAtPriceOn } from '../price-periods';
import type { Bought } from '../shortest-path';
import type { CandidateOrders } from './candidate-orders';

/** At most this many fillers of one offer in an order. */
export const MOST_FILLERS = 60;

/**
 * The best fillers of one kind for an order: the number with the least reduced cost.
 *
 * Gives    their reduced cost, less the credit of what will still be used; no packs where none pay
 */
export function fillersFor(
  part: Part,
  slots: CandidateOrders,
  horizon: Horizon,
  { slot, goodsDual }: { slot: number; goodsDual: number },
): { cost: number; bought: Bought[] } {
  let best: { cost: number; pack: Pack | null; count: number } = { cost: 0, pack: null, count: 0 };
  if (goodsDual <= 0) return { cost: 0, bought: [] };
  const orderOn = slots.all[slot]?.day ?? horizon.start;
  for (const pack of part.packs) {
    if (pack.offer.supplier !== slots.all[slot]?.supplier || !isAtPriceOn(pack, orderOn)) continue;
    const [price, most] = [pack.levels[0]?.price ?? 0, packsFor(pack)];
    const costs = unopenedCosts(part, horizon, { pack, orderOn, price });
    for (let count = 1; count <= most && count <= costs.length; count++) {
      const cost = (costs[count - 1] ?? 0) - goodsDual * count * price;
      if (cost < best.cost) best = { cost, pack, count };
    }
  }
  const { pack, count } = best;
  return { cost: best.cost, bought: pack ? Array.from({ length: count }, () => ({ pack, orderOn })) : [] };
}

export type Unopened = { pack: Pack; orderOn: number; price: number };

/**
 * The cost of one, two, three … fillers, less the credit of what will still be used: a lower bound, as if nothing else
 * were left at the end of the horizon.
 */
export function unopenedCosts(part: Part, horizon: Horizon, { pack, orderOn, price }: Unopened): number[] {
  const byDay = known.get(pack) ?? new Map<number, Map<number, number[]>>();
  known.set(pack, byDay);
  const byPrice = byDay.get(orderOn) ?? new Map<number, number[]>();
  byDay.set(orderOn, byPrice);
  const costs = byPrice.get(price) ?? costsOf(part, horizon, pack, orderOn, price);
  byPrice.set(price, costs);
  return costs;
}

/** Answers by pack, order day and price: the search asks for the same ones many times. */
const known = new WeakMap<Pack, Map<number, Map<number, number[]>>>();

function costsOf({ need }: Part, horizon: Horizon, pack: Pack, orderOn: number, price: number): number[] {
  if (price === 0) return [];
  const { lastDay, tied } = whileShut(pack, horizon, orderOn);
  const shut = Array.from({ length: MOST_FILLERS }, () => ({ price, size: pack.size, lastDay }));
  let cost = 0;
  return creditUnopened(need, horizon, shut, 0).map((credit) => {
    cost += price * (1 + tied) - credit;
    return cost;
  });
}

/** The last usable day of a filler, and the capital until then or the end of the horizon as a part of its price. */
export function whileShut(pack: Pack, horizon: Horizon, orderOn: number): { lastDay: number; tied: number } {
  const lastDay = arrivalOn(pack, horizon, orderOn) + pack.unopenedDays;
  return { lastDay, tied: ratePerDay(horizon) * (Math.min(lastDay, horizon.end) - orderOn) };
}

/** The number of packs that alone reach the highest threshold of their supplier. */
export function packsFor({ offer: { supplier }, levels }: Pack): number {
  const price = levels[0]?.price ?? 0;
  const wanted = Math.max(supplier.minimumOrder ?? 0, supplier.freeFreightOver ?? 0);
  let count = 0;
  while (count * price < wanted && count < MOST_FILLERS) count += 1;
  return count;
}
