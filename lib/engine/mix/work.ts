import { add, type Exact, exact, multiply } from '@/shared/quantity/exact';
import type { Shop } from '../shop';

/**
 * How long a mix takes that no program has planned, mixing and cleaning up with it.
 *
 *   minutes for each plant × plants + minutes for each batch
 *
 * Gives    null while one of them is unknown, or nobody said how many plants it is for
 * Units    minutes, exact
 */
export function unplannedMinutes({ minutesPerPlant, minutesPerBatch }: Shop, plants: number | null): Exact | null {
  if (minutesPerPlant === null || minutesPerBatch === null || plants === null) return null;
  return add(multiply(exact(minutesPerPlant), exact(plants)), exact(minutesPerBatch));
}

/** What to enter before that is known, as a sentence. */
export function toEnterForMinutes({ minutesPerPlant, minutesPerBatch }: Shop): string {
  if (minutesPerPlant === null) return 'Enter the minutes for each plant in Setup, the shop.';
  if (minutesPerBatch === null) return 'Enter the minutes for each batch in Setup, the shop.';
  return 'Say for which benches or plants it is: a volume alone does not tell how long spraying takes.';
}
