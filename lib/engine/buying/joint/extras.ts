import { arrivalOn } from '../bought';
import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import type { Pack } from '../pack';
import { creditUnopened, ratePerDay } from '../pack-use';
import { isAtPriceOn } from '../price-periods';
import type { Bought } from '../shortest-path';
import type { Slots } from './slots';

/** More packs than this that nobody opens within the horizon are not looked at. */
export const MOST_SHUT = 60;

/**
 * Packs that are put into an order beside what is needed, so that it becomes large enough: as many of one kind as come
 * out cheapest when each micro of goods gives some of it back.
 *
 * Gives    their cost less the credit of what will still be used, and none where none pay
 */
export function extrasFor(
  part: Part,
  slots: Slots,
  horizon: Horizon,
  { slot, reward }: { slot: number; reward: number },
): { cost: number; bought: Bought[] } {
  let best: { cost: number; pack: Pack | null; count: number } = { cost: 0, pack: null, count: 0 };
  if (reward <= 0) return { cost: 0, bought: [] };
  const orderOn = slots.all[slot]?.day ?? horizon.start;
  for (const pack of part.packs) {
    if (pack.offer.supplier !== slots.all[slot]?.supplier || !isAtPriceOn(pack, orderOn)) continue;
    const [price, most] = [pack.levels[0]?.price ?? 0, packsFor(pack)];
    const costs = shutCosts(part, horizon, { pack, orderOn, price });
    for (let count = 1; count <= most && count <= costs.length; count++) {
      const cost = (costs[count - 1] ?? 0) - reward * count * price;
      if (cost < best.cost) best = { cost, pack, count };
    }
  }
  const { pack, count } = best;
  return { cost: best.cost, bought: pack ? Array.from({ length: count }, () => ({ pack, orderOn })) : [] };
}

export type Shut = { pack: Pack; orderOn: number; price: number };

/**
 * What one, two, three … packs cost that are never opened, less the credit of what will still be used. It is the least
 * that they can cost: as if they were all that is left.
 */
export function shutCosts(part: Part, horizon: Horizon, { pack, orderOn, price }: Shut): number[] {
  const byDay = known.get(pack) ?? new Map<number, Map<number, number[]>>();
  known.set(pack, byDay);
  const byPrice = byDay.get(orderOn) ?? new Map<number, number[]>();
  byDay.set(orderOn, byPrice);
  const costs = byPrice.get(price) ?? costsOf(part, horizon, pack, orderOn, price);
  byPrice.set(price, costs);
  return costs;
}

/** A pack belongs to one need, and is asked about again and again: by order day, then by price. */
const known = new WeakMap<Pack, Map<number, Map<number, number[]>>>();

function costsOf({ need }: Part, horizon: Horizon, pack: Pack, orderOn: number, price: number): number[] {
  if (price === 0) return [];
  const { lastDay, tied } = whileShut(pack, horizon, orderOn);
  const shut = Array.from({ length: MOST_SHUT }, () => ({ price, size: pack.size, lastDay }));
  let cost = 0;
  return creditUnopened(need, horizon, shut, 0).map((credit) => {
    cost += price * (1 + tied) - credit;
    return cost;
  });
}

/** The last day of a pack that is never opened, and what part of its price the capital is until then or the end. */
export function whileShut(pack: Pack, horizon: Horizon, orderOn: number): { lastDay: number; tied: number } {
  const lastDay = arrivalOn(pack, horizon, orderOn) + pack.unopenedDays;
  return { lastDay, tied: ratePerDay(horizon) * (Math.min(lastDay, horizon.end) - orderOn) };
}

/** As many as the largest thing that an order can be made large enough for. */
export function packsFor({ offer: { supplier }, levels }: Pack): number {
  const price = levels[0]?.price ?? 0;
  const wanted = Math.max(supplier.minimumOrder ?? 0, supplier.freeFreightOver ?? 0);
  let count = 0;
  while (count * price < wanted && count < MOST_SHUT) count += 1;
  return count;
}
