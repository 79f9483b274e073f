import { addYears, type Day } from '@/shared/time/day';

/** The fewest years for which a record is kept, whatever a shop sets: 40 CFR 170.311(b)(1). */
export const FEWEST_YEARS = 2;

/**
 * The first day on which a record need no longer be kept: so many calendar years after the day on which its spraying
 * ended.
 *
 * Takes    the day on which it ended, or began where nobody noted the end; and the years that the shop sets
 * Rounds   29 February to 1 March where that year has none, so that no record goes a day early
 */
export const mayGoOn = (ended: Day, years: number): Day => addYears(ended, Math.max(years, FEWEST_YEARS));
