import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Plan } from '../engine/ahead/plan';
import { planInSteps } from '../engine/ahead/plan-ahead';
import { pricedOn } from '../engine/ahead/price-in-force';
import { WEEKS_AHEAD } from '../engine/ahead/weeks-ahead';
import type { Shop } from '../engine/shop';
import { keptWith } from './kept';
import { GIVING_WAY } from './pace';

type PlanOfDay = { today: Day; plan: Promise<Plan> };

/** Of each shop the newest: tomorrow there is another. */
const kept = keptWith<Shop, PlanOfDay>('plans');

/**
 * The weeks ahead of a shop, worked out once for the shop as it stands. Others are answered while they are worked out.
 *
 * Takes   a shop that nobody changes, such as the one of a snapshot, and the first day
 * Gives   the plan of as many weeks as pages look ahead
 * Throws  TooMuchAhead when the programs come to more than can be planned
 */
export function planKept(given: Shop, today: Day): Promise<Plan> {
  const shop = pricedKept(given, today);
  const known = kept.get(shop);
  if (known?.today === today) return known.plan;
  const plan = GIVING_WAY.through(planInSteps(shop, today, WEEKS_AHEAD));
  kept.set(shop, { today, plan });
  plan.catch(() => kept.delete(shop));
  return plan;
}

const priced = keptWith<Shop, { today: Day; shop: Shop }>('priced shops');

/** A shop with the prices in force on a day, the same one each time. */
export function pricedKept(shop: Shop, today: Day): Shop {
  const known = priced.get(shop);
  if (known?.today === today) return known.shop;
  const made = pricedOn(shop, today);
  priced.set(shop, { today, shop: made });
  priced.set(made, { today, shop: made });
  return made;
}
