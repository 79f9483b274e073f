import { z } from 'zod';
import { type Reading, read, unreadable } from '../outcome';
import { GIVE_A_YEAR, isAcceptedYear } from './accepted-years';
import { asTyped } from './as-typed';
import { civilNumber, civilOf, daysInMonth, MONTHS, weekdayNumber } from './civil';

/**
 * A calendar day such as "2026-03-03", without a time and without a zone. Days compare and sort as text.
 *
 * Refuses  what is not year-month-day, days that do not exist, years outside 1971 to 2999
 */
export const Day = z
  .string()
  .refine((text) => faultIn(text) === null, { error: (issue) => faultIn(String(issue.input)) ?? 'Not a day.' })
  .brand<'Day'>();
export type Day = z.infer<typeof Day>;

/** A day from text, or a sentence that says what is wrong with it. */
export function readDay(text: string): Reading<Day> {
  const fault = faultIn(text);
  return fault === null ? read(text as Day) : unreadable(fault);
}

/** The same for any day that can be calculated with, from 1970 to 9999: how long a repeat goes on, what a program shows. */
export function readCalendarDay(text: string): Reading<Day> {
  const fault = calendarFault(text);
  return fault === null ? read(text as Day) : unreadable(fault);
}

function faultIn(text: string): string | null {
  const fault = calendarFault(text);
  if (fault !== null || isAcceptedYear(Number(text.slice(0, 4)))) return fault;
  return `${asTyped(text)} is too far away. ${GIVE_A_YEAR}`;
}

function calendarFault(text: string): string | null {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!parts) return `${asTyped(text)} is not a date. Write year-month-day, such as 2026-03-03.`;
  const [year, month, dayOfMonth] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  if (year < 1970) return `${asTyped(text)} is too far away. ${GIVE_A_YEAR}`;
  const name = MONTHS[month - 1];
  if (!name) return `${asTyped(text)} has no such month. Write year-month-day with a month from 01 to 12.`;
  const length = daysInMonth(year, month);
  if (dayOfMonth >= 1 && dayOfMonth <= length) return null;
  return `${asTyped(text)} is not a date: ${name} ${year} has ${length} days. Give a day from 01 to ${length}.`;
}

const ZERO = 48;

/** The day's number, counted from 1970-01-01. Neighbouring days differ by one. */
export function dayNumber(day: Day): number {
  const year = twoDigitsAt(day, 0) * 100 + twoDigitsAt(day, 2);
  return civilNumber(year, twoDigitsAt(day, 5), twoDigitsAt(day, 8));
}

/** A Day is always ten characters long with digits in known places: no slicing, because this is in the innermost loops. */
const twoDigitsAt = (day: Day, place: number): number =>
  (day.charCodeAt(place) - ZERO) * 10 + day.charCodeAt(place + 1) - ZERO;

/** 9999-12-31. */
const LAST_NUMBER = civilNumber(9999, 12, 31);
/** Days up to here are written once and kept: the year 2199 is further than any plan looks. */
const LAST_KEPT = civilNumber(2199, 12, 31);
const kept: (Day | undefined)[] = [];

/**
 * The day with a number counted from 1970-01-01.
 *
 * Throws  RangeError when it is not a whole number, or falls outside the years 1970 to 9999
 */
export function dayFromNumber(number: number): Day {
  const known = kept[number];
  if (known !== undefined) return known;
  if (!Number.isInteger(number) || number < 0 || number > LAST_NUMBER) {
    throw new RangeError(`day: number ${number} is outside the years 1970 to 9999`);
  }
  const { year, month, dayOfMonth } = civilOf(number);
  const day = `${year}-${twoDigits(month)}-${twoDigits(dayOfMonth)}` as Day;
  if (number <= LAST_KEPT) kept[number] = day;
  return day;
}

const twoDigits = (value: number): string => (value < 10 ? `0${value}` : `${value}`);

/** The day so many days later; earlier when negative. Throws RangeError outside the years 1970 to 9999. */
export const addDays = (day: Day, days: number): Day => dayFromNumber(dayNumber(day) + days);

/** How many days the second is after the first; negative when it is before. */
export const daysBetween = (from: Day, to: Day): number => dayNumber(to) - dayNumber(from);

/** The days of the week, Monday first, as the shop file writes them. */
export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/** The day of the week that a day falls on. */
export const weekdayOf = (day: Day): Weekday => WEEKDAYS[weekdayNumber(dayNumber(day))] ?? 'mon';

/**
 * The same date so many calendar years later.
 *
 * Rounds  29 February to 1 March where that year has none
 * Throws  RangeError past the year 9999
 */
export function addYears(day: Day, years: number): Day {
  const { year, month, dayOfMonth } = civilOf(dayNumber(day));
  const isThere = dayOfMonth <= daysInMonth(year + years, month);
  return dayFromNumber(civilNumber(year + years, isThere ? month : month + 1, isThere ? dayOfMonth : 1));
}
