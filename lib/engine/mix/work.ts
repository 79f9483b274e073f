import type { WorkTimes } from '@/shared/mix/work-minutes';

/** What to enter before it is known how long a mix takes that no program has planned, as a sentence. */
export function toEnterForMinutes({ minutesPerPlant, minutesPerBatch }: WorkTimes): string {
  if (minutesPerPlant === null) return 'Enter the minutes for each plant in Setup, the shop.';
  if (minutesPerBatch === null) return 'Enter the minutes for each batch in Setup, the shop.';
  return 'Say for which benches or plants it is: a volume alone does not tell how long spraying takes.';
}
