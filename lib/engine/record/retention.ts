import { addYears, type Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import type { Shop } from '../shop';

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

type Version = { startedAt: Instant; endedAt: Instant | null };

/** The same for a record of a shop, counted from the latest end that any of its versions has. Takes at least one version. */
export function recordMayGoOn(
  versions: readonly Version[],
  { zone, keepRecordsYears }: Pick<Shop, 'zone' | 'keepRecordsYears'>,
): Day {
  const ends = versions.map(({ startedAt, endedAt }) => endedAt ?? startedAt);
  return mayGoOn(dayOf(zone, instantOf(Math.max(...ends))), keepRecordsYears);
}
