import { addMinutes, type Instant } from '@/shared/time/instant';
import { unrecordedSprayings } from '../ahead/overdue';
import { keepOut } from '../keepout/keep-out';
import type { Shop } from '../shop';

/** What is entered of a spraying: its benches, its end, and the longest interval in minutes; null where nobody knows. */
export type LateEntry = { benches: readonly string[]; endedAt: Instant | null; rei: number | null };

/**
 * Until when the benches of a record stay closed that comes so late that its interval is over already, as long as nobody
 * has confirmed it. A wrong end would open a bench at once that people are kept out of, so the interval first counts from
 * the entry.
 *
 * Takes    the shop without the record, the record, and the moment it is entered
 * Gives    null where the interval is not over or is none, and where no bench of the record is kept out of without a known
 *          end: then the record opens nothing
 */
export function closedAfterLateEntry(shop: Shop, { benches, endedAt, rei }: LateEntry, now: Instant): Instant | null {
  if (endedAt === null || rei === null || rei === 0 || addMinutes(endedAt, rei) > now) return null;
  const states = keepOut(shop, now, unrecordedSprayings(shop, now));
  const isOpening = states.some(({ bench, state }) => state === 'unknown' && benches.includes(bench.id));
  return isOpening ? addMinutes(now, rei) : null;
}
