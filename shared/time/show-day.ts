import { civilOf, MONTHS, weekdayNumber } from './civil';
import { showClockTime } from './clock-time';
import { addDays, Day, dayNumber } from './day';
import { addMinutes, type Instant, instantOf, offsetText } from './instant';
import { atClock, clockOf, dayOf, type Zone } from './zone';
import { offsetAt } from './zone-offset';

const WEEKDAY_NAMES = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** Beside this day of long ago, every other has its year: for what is kept, and for paper. */
export const IN_ANY_YEAR = Day.parse('1971-01-01');

/** A day in a sentence or a table: "Tue 3 March". Beside a day of another year, with its year: "Tue 3 March 2026". */
export const showDay = (day: Day, beside: Day | null = null): string => dayInWords(day, beside, 3, 9);

/** A day as a heading: "Tuesday 3 March", with its year beside a day of another year. */
export const showDayLong = (day: Day, beside: Day | null = null): string => dayInWords(day, beside, 9, 9);

/** A day where room is short: "Tue 3 Mar", with its year beside a day of another year. */
export const showDayShort = (day: Day, beside: Day | null = null): string => dayInWords(day, beside, 3, 3);

/** A day on paper, which is read in any year: "3 Mar 2026". */
export function showDayOnPaper(day: Day): string {
  const { year, month, dayOfMonth } = civilOf(dayNumber(day));
  return `${dayOfMonth} ${(MONTHS[month - 1] ?? '').slice(0, 3)} ${year}`;
}

function dayInWords(day: Day, beside: Day | null, weekdayLetters: number, monthLetters: number): string {
  const number = dayNumber(day);
  const { year, month, dayOfMonth } = civilOf(number);
  const weekday = WEEKDAY_NAMES[weekdayNumber(number)] ?? '';
  const words = [weekday.slice(0, weekdayLetters), dayOfMonth, (MONTHS[month - 1] ?? '').slice(0, monthLetters)];
  if (beside !== null && beside.slice(0, 4) !== day.slice(0, 4)) words.push(year);
  return words.join(' ');
}

/**
 * The time at an instant: "18:15"; beside another day, with its own: "Wed 4 Mar 06:15". On a day when the clocks change,
 * the offset too, since a time may come twice: "01:30 (UTC-05:00)".
 *
 * Rounds  down to the minute that is running; for the end of an interval use `showUntil`
 */
export function showClock(instant: Instant, zone: Zone, beside: Day | null = null): string {
  const { day, minuteOfDay } = clockOf(zone, instant);
  const date = beside === null || beside === day ? '' : `${showDayShort(day, beside)} `;
  return `${date}${showClockTime(minuteOfDay)}${changingOffset(instant, zone, day)}`;
}

/**
 * The time until which something lasts, such as a bench being closed.
 *
 * Rounds  up to the next whole minute, because a time read from a screen may never end an interval too soon
 */
export function showUntil(instant: Instant, zone: Zone, beside: Day | null = null): string {
  return showClock(wholeMinute(instant, zone), zone, beside);
}

/** The same with its weekday and date, and the year beside a day of another year: "Tue 3 March 18:15". */
export function showDayUntil(instant: Instant, zone: Zone, beside: Day | null = null): string {
  return showInstant(wholeMinute(instant, zone), zone, beside);
}

/** The minute that begins at an instant, or the next one. */
function wholeMinute(instant: Instant, zone: Zone): Instant {
  const past = (instant + offsetAt(zone, instant)) % 60_000;
  return past === 0 ? instant : instantOf(addMinutes(instant, 1) - past);
}

/** A day and a time: "Tue 3 March 18:15"; the year beside a day of another year; the offset where the clocks change. */
export function showInstant(instant: Instant, zone: Zone, beside: Day | null = null): string {
  return `${showDay(dayOf(zone, instant), beside)} ${showClock(instant, zone)}`;
}

function changingOffset(instant: Instant, zone: Zone, day: Day): string {
  const offset = offsetAt(zone, instant);
  const steady = [day, addDays(day, 1)].every((edge) => offsetAt(zone, atClock(zone, edge, 0)) === offset);
  return steady ? '' : ` (UTC${offsetText(offset)})`;
}
