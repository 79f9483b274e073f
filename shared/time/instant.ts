import { z } from 'zod';
import { type Reading, read, unreadable } from '../outcome';
import { FIRST_YEAR, GIVE_A_YEAR, LAST_YEAR } from './accepted-years';
import { asTyped } from './as-typed';
import { civilNumber, daysInMonth } from './civil';
import { dayFromNumber } from './day';
import type { Zone } from './zone';
import { offsetAt } from './zone-offset';

const DAY = 86_400_000;
const MINUTE = 60_000;
/** A day is left free at both ends, so that an instant has a day between 1970 and 9999 in every zone. */
const FIRST = DAY;
const LAST = civilNumber(9999, 12, 31) * DAY - 1;

/** A moment, the same everywhere: whole milliseconds since 1970-01-01T00:00 UTC. */
export const Instant = z.number().int().min(FIRST).max(LAST).brand<'Instant'>();
export type Instant = z.infer<typeof Instant>;

/** The last instant there is. As the end of something, it says that nobody knows the end. */
export const LAST_INSTANT = LAST as Instant;

/** Whether a number that should be an instant is one. */
export const isInstant = (milliseconds: number): milliseconds is Instant =>
  Number.isInteger(milliseconds) && milliseconds >= FIRST && milliseconds <= LAST;

/** An instant from milliseconds since 1970. Throws RangeError when they are not whole, or outside the years 1970 to 9999. */
export function instantOf(milliseconds: number): Instant {
  if (isInstant(milliseconds)) return milliseconds;
  throw new RangeError(`instant: ${milliseconds} ms is outside the years 1970 to 9999`);
}

const EXAMPLE = '2026-07-06T21:15:00+02:00';
const DATE_TIME = /^(\d{4})-(\d\d)-(\d\d)T([01]\d|2[0-3]):([0-5]\d)(?::([0-5]\d)(?:[.,](\d+))?)?(.*)$/i;
const OFFSET = /^([+-])([01]\d|2[0-3])(?::([0-5]\d)(?::([0-5]\d))?)?$/;

/**
 * A moment as ISO 8601 writes it, with Z or the offset of the clock it was read from: "2026-07-06T21:15:00+02:00".
 *
 * Refuses  a time without an offset, since it would be another moment in another place; what is finer than a
 *          millisecond, since dropping it could end an interval too soon; what is outside the years 1971 to 2999 in UTC
 */
export function readInstant(text: string): Reading<Instant> {
  const reading = readCalendarInstant(text);
  return !reading.ok || isAcceptedInstant(reading.value) ? reading : unreadable(tooFar(text));
}

/** Whether something of a shop may be at this moment. */
export const isAcceptedInstant = (moment: number): boolean => moment >= FIRST_ACCEPTED && moment < AFTER_ACCEPTED;

const FIRST_ACCEPTED = civilNumber(FIRST_YEAR, 1, 1) * DAY;
const AFTER_ACCEPTED = civilNumber(LAST_YEAR + 1, 1, 1) * DAY;

const tooFar = (text: string): string => `${asTyped(text)} is too far away. ${GIVE_A_YEAR}`;

/** The same for any moment that can be calculated with, from 1970 to 9999: until when a repeat goes on. */
export function readCalendarInstant(text: string): Reading<Instant> {
  const parts = DATE_TIME.exec(text);
  if (!parts) return unreadable(`${asTyped(text)} is not a date and time. Write it such as ${EXAMPLE}.`);
  const [, year, month, dayOfMonth, hours, minutes, seconds, decimals, zone] = parts;
  const day = readCivil(Number(year), Number(month), Number(dayOfMonth));
  if (day === null) return unreadable(`${asTyped(text)} names a day that does not exist. Write it such as ${EXAMPLE}.`);
  if (!zone) {
    return unreadable(
      `${asTyped(text)} does not say where that clock is. Add Z for UTC, or the offset, as in ${EXAMPLE}.`,
    );
  }
  const offset = readOffset(zone);
  if (offset === null) {
    return unreadable(
      `${asTyped(text)} ends in an offset that cannot be read. Write Z or hours and minutes, as in ${EXAMPLE}.`,
    );
  }
  const fraction = (decimals ?? '').replace(/0+$/, '');
  if (fraction.length > 3) {
    return unreadable(`${asTyped(text)} is finer than a thousandth of a second. Give at most three decimals.`);
  }
  const wall = (Number(hours) * 60 + Number(minutes)) * MINUTE + Number(seconds ?? 0) * 1_000;
  return inRange(text, day * DAY + wall + Number(fraction.padEnd(3, '0')) - offset);
}

const readCivil = (year: number, month: number, dayOfMonth: number): number | null => {
  const exists = month >= 1 && month <= 12 && dayOfMonth >= 1 && dayOfMonth <= daysInMonth(year, month);
  return exists ? civilNumber(year, month, dayOfMonth) : null;
};

function readOffset(text: string): number | null {
  if (text === 'Z' || text === 'z') return 0;
  const parts = OFFSET.exec(text);
  if (!parts) return null;
  const [, sign, hours, minutes = 0, seconds = 0] = parts;
  const size = ((Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds)) * 1_000;
  return sign === '-' ? -size : size;
}

const inRange = (text: string, moment: number): Reading<Instant> =>
  moment >= FIRST && moment <= LAST ? read(instantOf(moment)) : unreadable(tooFar(text));

/**
 * An instant as the clocks of a zone show it, with their offset at that moment: "2026-07-06T21:15:00+02:00". Seconds are
 * always written, milliseconds only where there are some. Reading it back gives the same instant.
 */
export function instantText(instant: Instant, zone: Zone): string {
  const offset = offsetAt(zone, instant);
  const wall = instant + offset;
  const day = Math.floor(wall / DAY);
  const rest = wall - day * DAY;
  const milliseconds = rest % 1_000;
  const decimals = milliseconds === 0 ? '' : `.${String(milliseconds).padStart(3, '0')}`;
  return `${dayFromNumber(day)}T${clockText((rest - milliseconds) / 1_000)}${decimals}${offsetText(offset)}`;
}

/** An offset in milliseconds as "+02:00"; with seconds only where a zone once had some, so that nothing is lost. */
export function offsetText(offset: number): string {
  const text = clockText(Math.abs(offset) / 1_000);
  return `${offset < 0 ? '-' : '+'}${text.endsWith(':00') ? text.slice(0, -3) : text}`;
}

const clockText = (seconds: number): string =>
  [Math.trunc(seconds / 3_600), Math.trunc(seconds / 60) % 60, seconds % 60]
    .map((part) => String(part).padStart(2, '0'))
    .join(':');

/**
 * The instant so many minutes later: elapsed time, which a change of the clocks neither shortens nor lengthens.
 *
 * Throws  RangeError when the minutes are not whole, or the result is past the year 9999
 */
export function addMinutes(instant: Instant, minutes: number): Instant {
  if (!Number.isInteger(minutes)) throw new RangeError(`instant: ${minutes} is not a whole number of minutes`);
  return instantOf(instant + minutes * MINUTE);
}

/** The later of two moments, where null says nothing. */
export const laterOf = (one: Instant | null, other: Instant | null): Instant | null =>
  one === null || (other !== null && other > one) ? other : one;
