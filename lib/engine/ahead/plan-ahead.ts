import { atOnce, type Steps } from '@/shared/steps';
import type { Day } from '@/shared/time/day';
import { flagsInSteps } from '../rules/all-rules';
import type { Shop } from '../shop';
import type { Plan } from './plan';
import { projectionInSteps } from './projection';

/**
 * The weeks ahead, with everything in them that breaks a rule.
 *
 * Takes   the shop as it stands, the first day, and how many weeks (today … today + 7 × weeks − 1)
 */
export const planAhead = (shop: Shop, today: Day, weeks: number): Plan => atOnce(planInSteps(shop, today, weeks));

/** The same with pauses. */
export function* planInSteps(shop: Shop, today: Day, weeks: number): Steps<Plan> {
  const projection = yield* projectionInSteps(shop, today, weeks);
  yield;
  return { ...projection, flags: yield* flagsInSteps(projection) };
}
