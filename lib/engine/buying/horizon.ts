import { type Exact, exact } from '@/shared/quantity/exact';
import { type Day, dayNumber } from '@/shared/time/day';
import type { Shop } from '../shop';

/** The days that are bought for, as day numbers, both ends included, and what the shop asks of every purchase. */
export type Horizon = {
  start: number;
  end: number;
  /** How many days that is: 7 for each week. */
  days: number;
  /** How many days before it is needed stock should be in. */
  safetyDays: number;
  /** What money tied up costs in a year, as a fraction of it. */
  capitalPerYear: Exact;
};

/** The days from one on, so many weeks, for a shop with its own safety days and cost of capital. */
export function horizonOf(
  { safetyDays, capitalPerYear }: Pick<Shop, 'safetyDays' | 'capitalPerYear'>,
  today: Day,
  weeks: number,
): Horizon {
  const start = dayNumber(today);
  const days = 7 * weeks;
  return { start, end: start + days - 1, days, safetyDays, capitalPerYear: exact(capitalPerYear) };
}
