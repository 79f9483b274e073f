import { addYears, type Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import type { Shop } from '../shop';

/** The fewest years for which a record is kept, whatever a shop sets: 40 CFR 170.311(b)(6), 7 CFR 110.3(c). */
const FEWEST_YEARS = 2;

/**
 * The first day on which a record need no longer be kept: so many calendar years after the day on which its interval had
 * passed.
 *
 * Takes    that day, and the years that the shop sets
 * Rounds   29 February to 1 March where that year has none, so that no record goes a day early
 */
export const mayGoOn = (ended: Day, years: number): Day => addYears(ended, Math.max(years, FEWEST_YEARS));

type Version = {
  startedAt: Instant;
  endedAt: Instant | null;
  products: readonly { reiMinutes: number | null }[];
};

/**
 * The same for a record of a shop, counted from the day on which the longest interval of any of its versions had passed.
 * An interval that nobody knows adds nothing: then it is the end of the spraying. Takes at least one version.
 *
 * Source  40 CFR 170.311(b)(6) counts the two years from the day on which the restricted-entry interval expires
 */
export function recordMayGoOn(
  versions: readonly Version[],
  { zone, keepRecordsYears }: Pick<Shop, 'zone' | 'keepRecordsYears'>,
): Day {
  return mayGoOn(dayOf(zone, instantOf(Math.max(...versions.map(passedAt)))), keepRecordsYears);
}

const MINUTE = 60_000;

function passedAt({ startedAt, endedAt, products }: Version): number {
  const longest = Math.max(0, ...products.map(({ reiMinutes }) => reiMinutes ?? 0));
  return (endedAt ?? startedAt) + longest * MINUTE;
}
