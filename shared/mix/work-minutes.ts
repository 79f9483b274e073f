import { add, type Exact, exact, multiply } from '../quantity/exact';
import { wholeUp } from '../quantity/rounding';

/** What a shop says of how long work takes, in minutes; null when it was never entered. */
export type WorkTimes = { minutesPerPlant: number | null; minutesPerBatch: number | null };

/**
 * How long it takes to mix for some plants and to spray them, cleaning up with it.
 *
 *   minutes for each plant × plants + minutes for each batch
 *
 * Gives    null while one of them is unknown
 * Units    minutes, exact
 */
export function workMinutes({ minutesPerPlant, minutesPerBatch }: WorkTimes, plants: number | null): Exact | null {
  if (minutesPerPlant === null || minutesPerBatch === null || plants === null) return null;
  return add(multiply(exact(minutesPerPlant), exact(plants)), exact(minutesPerBatch));
}

/** The same in whole minutes, rounded up. */
export function workMinutesUp(times: WorkTimes, plants: number): number | null {
  const minutes = workMinutes(times, plants);
  return minutes && wholeUp<number>(minutes);
}
