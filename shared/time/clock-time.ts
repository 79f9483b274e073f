import { type Reading, read, unreadable } from '../outcome';
import { asTyped } from './as-typed';

/** The whole minutes of a day. As a time it is the midnight that ends the day, written 24:00. */
export const MINUTES_IN_DAY = 1_440;

/**
 * A time on the wall clock, in minutes since midnight: "17:30" is 1,050.
 *
 * Refuses  anything but hours and minutes on a 24-hour clock; 24:00, which is no time to start at
 */
export function readClockTime(text: string): Reading<number> {
  const minute = minuteOf(text);
  if (minute !== null && minute < MINUTES_IN_DAY) return read(minute);
  return unreadable(`${asTyped(text)} is not a time. Write hours and minutes from 00:00 to 23:59, such as 17:30.`);
}

/** A time at which something ends: as a clock time, and 24:00 besides for the end of the day. */
export function readClosingTime(text: string): Reading<number> {
  const minute = minuteOf(text);
  if (minute !== null) return read(minute);
  return unreadable(`${asTyped(text)} is not a time. Write hours and minutes from 00:00 to 24:00, such as 18:00.`);
}

function minuteOf(text: string): number | null {
  const parts = /^([01]\d|2[0-4]):([0-5]\d)$/.exec(text);
  if (!parts) return null;
  const minute = Number(parts[1]) * 60 + Number(parts[2]);
  return minute <= MINUTES_IN_DAY ? minute : null;
}

/** Minutes since midnight as a time on a 24-hour clock: 1,050 is "17:30", 1,440 is "24:00". */
export function showClockTime(minuteOfDay: number): string {
  const hours = Math.trunc(minuteOfDay / 60);
  return `${String(hours).padStart(2, '0')}:${String(minuteOfDay - hours * 60).padStart(2, '0')}`;
}
