import type { Day } from '@/shared/time/day';
import { flagsOf } from '../rules/all-rules';
import type { Shop } from '../shop';
import type { Plan } from './plan';
import { projectionOf } from './projection';

/**
 * The weeks ahead, with everything in them that breaks a rule.
 *
 * Takes   the shop as it stands, the first day, and how many weeks (today … today + 7 × weeks − 1)
 */
export function planAhead(shop: Shop, today: Day, weeks: number): Plan {
  const projection = projectionOf(shop, today, weeks);
  return { ...projection, flags: flagsOf(projection) };
}
