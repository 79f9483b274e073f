import { type Reading, read, unreadable } from '../outcome';
import { GIVE_A_YEAR } from './accepted-years';
import { asTyped } from './as-typed';
import { showClockTime } from './clock-time';
import { readDay } from './day';
import { addMinutes, type Instant, instantOf, isAcceptedInstant } from './instant';
import { atClock, clockOf, type Zone } from './zone';

/**
 * A day and a time of the shop's own clock, as a browser's field writes them: "2026-03-03T18:15".
 *
 * Gives    for a time that a change of the clocks skips or brings twice, what `atClock` gives
 * Refuses  what is not a day, a T and a time
 */
export function readLocalTime(text: string, zone: Zone): Reading<Instant> {
  const parts = /^(\d{4}-\d\d-\d\d)[T ]([01]\d|2[0-3]):([0-5]\d)(?::00(?:\.0+)?)?$/.exec(text.trim());
  if (!parts) return unreadable(`${asTyped(text)} is not a day and a time. Write it such as 2026-03-03T18:15.`);
  const [, dayText = '', hours, minutes] = parts;
  const day = readDay(dayText);
  if (!day.ok) return day;
  const value = atClock(zone, day.value, Number(hours) * 60 + Number(minutes));
  return isAcceptedInstant(value) ? read(value) : unreadable(`${asTyped(text)} is too far away. ${GIVE_A_YEAR}`);
}

/**
 * An instant as a browser's field of a day and a time wants it, on the shop's own clock: "2026-03-03T18:15".
 *
 * Rounds   down to the minute that is running
 */
export function localTimeText(instant: Instant, zone: Zone): string {
  const { day, minuteOfDay } = clockOf(zone, instant);
  return `${day}T${showClockTime(minuteOfDay)}`;
}

/** The next whole minute, or this one where it has just begun: the end of something, which may never read too early. */
export function nextMinute(instant: Instant): Instant {
  const past = instant % MINUTE;
  return past === 0 ? instant : instantOf(addMinutes(instant, 1) - past);
}

const MINUTE = 60_000;
