import { z } from 'zod';
import { type Reading, read, unreadable } from '../outcome';
import { asTyped } from './as-typed';
import { type Day, dayFromNumber, dayNumber } from './day';
import { type Instant, instantOf } from './instant';
import { isKnownZone, momentAt, offsetAt } from './zone-offset';

const DAY = 86_400_000;
const MINUTE = 60_000;

/** A place's clock by its IANA name, such as "America/New_York", with its summer time past and planned. */
export const Zone = z
  .string()
  .refine(isKnownZone, { error: (issue) => unknownZone(String(issue.input)) })
  .brand<'Zone'>();
export type Zone = z.infer<typeof Zone>;

/** A zone from its name, kept as it was typed. Refuses names nobody knows, and bare offsets, which know no summer time. */
export function readZone(text: string): Reading<Zone> {
  return isKnownZone(text) ? read(text as Zone) : unreadable(unknownZone(text));
}

const unknownZone = (text: string): string =>
  /^[+\-−\d]/.test(text)
    ? `${asTyped(text)} is an offset, which knows no summer time. Name the place, such as "America/New_York".`
    : `${asTyped(text)} is not a time zone. Write a region and a city, such as "America/New_York" or "Europe/Berlin".`;

/**
 * The instant at which the shop's clock shows a time of a day.
 *
 * Takes   minutes since midnight, up to 1,440, which is the end of the day
 * Gives   for a time that a clock change skips, that time moved forward by what was skipped; for one that comes twice,
 *         the first
 * Throws  RangeError when the minutes are not whole or outside the day
 */
export function atClock(zone: Zone, day: Day, minuteOfDay: number): Instant {
  if (!Number.isInteger(minuteOfDay) || minuteOfDay < 0 || minuteOfDay > 1_440) {
    throw new RangeError(`clock: ${minuteOfDay} is not a minute of the day`);
  }
  return instantOf(momentAt(zone, dayNumber(day), minuteOfDay));
}

/** What the shop's calendar and clock show at an instant. Rounds down to the minute that is running. */
export function clockOf(zone: Zone, instant: Instant): { day: Day; minuteOfDay: number } {
  const wall = instant + offsetAt(zone, instant);
  const number = Math.floor(wall / DAY);
  return { day: dayFromNumber(number), minuteOfDay: Math.floor((wall - number * DAY) / MINUTE) };
}

/** The shop's calendar day at an instant. */
export const dayOf = (zone: Zone, instant: Instant): Day =>
  dayFromNumber(Math.floor((instant + offsetAt(zone, instant)) / DAY));
