/*
 * The calendar as pure integer arithmetic: no Date, no zone, no locale. Days are counted from 1970-01-01, which is day 0.
 * Years run from 1970 to 9999, so every number here is positive and division by rounding down is plain truncation.
 */

/** A day taken apart. Months run from 1 to 12, days from 1. */
export type Civil = { year: number; month: number; dayOfMonth: number };

/** Days in 400, 100 and 4 years of the Gregorian calendar, which repeats every 400 years. */
const DAYS_IN_400_YEARS = 146_097;
/** From 0000-03-01, where the arithmetic starts (so that a leap day ends its year), to 1970-01-01. */
const DAYS_TO_1970 = 719_468;

/** The number of a day that is known to exist. */
export function civilNumber(year: number, month: number, dayOfMonth: number): number {
  // Years are taken to begin in March. Five months from March on, and from August on, always last 153 days.
  const marchYear = month > 2 ? year : year - 1;
  const marchMonth = month > 2 ? month - 3 : month + 9;
  const dayOfYear = Math.trunc((153 * marchMonth + 2) / 5) + dayOfMonth - 1;
  const leapDays = Math.trunc(marchYear / 4) - Math.trunc(marchYear / 100) + Math.trunc(marchYear / 400);
  return marchYear * 365 + leapDays + dayOfYear - DAYS_TO_1970;
}

/** The day of a number. */
export function civilOf(number: number): Civil {
  const days = number + DAYS_TO_1970;
  const cycle = Math.trunc(days / DAYS_IN_400_YEARS);
  const dayOfCycle = days - cycle * DAYS_IN_400_YEARS;
  // A day is taken off for each leap day that has passed, then every year counts 365.
  const leapDays = Math.trunc(dayOfCycle / 1_460) - Math.trunc(dayOfCycle / 36_524) + Math.trunc(dayOfCycle / 146_096);
  const yearOfCycle = Math.trunc((dayOfCycle - leapDays) / 365);
  const dayOfYear = dayOfCycle - (365 * yearOfCycle + Math.trunc(yearOfCycle / 4) - Math.trunc(yearOfCycle / 100));
  const marchMonth = Math.trunc((5 * dayOfYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  return {
    year: cycle * 400 + yearOfCycle + (month <= 2 ? 1 : 0),
    month,
    dayOfMonth: dayOfYear - Math.trunc((153 * marchMonth + 2) / 5) + 1,
  };
}

const isLeapYear = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

const LENGTHS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** How many days a month has. Takes a month from 1 to 12. */
export const daysInMonth = (year: number, month: number): number =>
  month === 2 && isLeapYear(year) ? 29 : (LENGTHS[month - 1] ?? 0);

/** 0 for Monday to 6 for Sunday: 1970-01-01 was a Thursday. Days before it count too, so that no search back is lost. */
export const weekdayNumber = (number: number): number => (((number + 3) % 7) + 7) % 7;

export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;
