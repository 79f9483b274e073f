import { wholeWeeks } from '@/shared/quantity/rounding';
import { addDays, type Day, daysBetween } from '@/shared/time/day';
import { latestOrderDay } from '@/shared/time/working-days';
import type { Offer } from '../shop';
import type { Reorder } from './plan';

/**
 * The last working day on which an order still arrives before a product runs out, with the shop's safety days between.
 *
 *   needed on   = runs out on − safety days
 *   order by    = the latest working day whose order arrives by then
 *   weeks       = (order by − today) ÷ 7, rounded down: 0 is this week, negative is late
 *
 * Takes   the day of the first shortage, and the offer that is cheapest per unit
 * Gives   null when nothing runs out, nobody offers the product, or its lead time is unknown
 * Units   working days of the supplier for the lead time, calendar days for the rest
 */
export function reorderFor(runsOutOn: Day | null, offer: Offer | null, safetyDays: number, today: Day): Reorder | null {
  if (runsOutOn === null || offer === null || offer.leadDays === null) return null;
  const neededOn = addDays(runsOutOn, -safetyDays);
  const by = latestOrderDay(neededOn, offer.leadDays, offer.supplier.workingDays);
  return { by, weeks: wholeWeeks(daysBetween(today, by)), neededOn, offer };
}
