import { addDays } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { atClock, dayOf, type Zone } from '@/shared/time/zone';

/** Half past three in the night, by the clock on the shop's wall. */
const QUIET_MINUTE = 3 * 60 + 30;

const [HOUR, DAY] = [3_600_000, 86_400_000];

/** From this age on, Today says that the last backup is old. */
const OLD_AFTER = 7 * DAY;

/**
 * Whether the daily backup is to be made now: the latest night's quiet time is over, and there is none since. So a
 * computer that is off at night makes it in the morning. After a try that failed an hour passes first.
 */
export function isBackupDue(zone: Zone, now: Instant, newest: number | null, lastTry: number | null): boolean {
  if (lastTry !== null && now - lastTry < HOUR) return false;
  const today = dayOf(zone, now);
  const tonight = atClock(zone, today, QUIET_MINUTE);
  const latest = tonight <= now ? tonight : atClock(zone, addDays(today, -1), QUIET_MINUTE);
  return newest === null || newest < latest;
}

/** Whether the last sound backup, or the shop itself where there is none, is older than a week. */
export const isBackupOld = (now: number, newest: number | null, shopSince: number): boolean =>
  now - (newest ?? shopSince) > OLD_AFTER;
