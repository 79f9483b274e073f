import type { Instant } from '@/shared/time/instant';
import { clockOf, type Zone } from '@/shared/time/zone';

/** From one minute of the day, up to but not including another, which may be on the next day. */
export type QuietHours = { from: number; until: number };

/**
 * Whether nobody is to be disturbed: while the clock on the shop's wall reads quiet hours, whatever was done to it in the
 * night.
 */
export function isQuiet(quiet: QuietHours | null, zone: Zone, now: Instant): boolean {
  if (quiet === null) return false;
  const { minuteOfDay } = clockOf(zone, now);
  const { from, until } = quiet;
  return from < until ? minuteOfDay >= from && minuteOfDay < until : minuteOfDay >= from || minuteOfDay < until;
}
