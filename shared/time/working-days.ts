import { wholeWeeks } from '../quantity/rounding';
import { weekdayNumber } from './civil';
import { type Day, dayFromNumber, dayNumber, WEEKDAYS, type Weekday } from './day';

/** The days that count for orders: the weekdays on which a supplier works, less the days on which one side is closed. */
export type WorkingDays = { weekdays: ReadonlySet<Weekday>; closed: ReadonlySet<Day> };

/**
 * The day an order arrives: so many working days after the working day it was placed on. Placed on a day that is none,
 * it is taken on the next working day. A lead of 0 arrives the same day.
 *
 * Throws  RangeError when the lead is negative or not whole, or the supplier works on no day
 */
export function arrivalOf(orderedOn: Day, leadDays: number, working: WorkingDays): Day {
  const week = weekOf(working, leadDays);
  return dayFromNumber(walk(week, nearest(week, dayNumber(orderedOn), 1), leadDays, 1));
}

/**
 * The latest working day on which an order can be placed to arrive on a day or before.
 *
 * Throws  RangeError when the lead is negative or not whole, or the supplier works on no day
 */
export function latestOrderDay(arriveBy: Day, leadDays: number, working: WorkingDays): Day {
  const week = weekOf(working, leadDays);
  return dayFromNumber(walk(week, nearest(week, dayNumber(arriveBy), -1), leadDays, -1));
}

/**
 * How long an order really took: the shortest lead time that would have promised it for the day it came, or sooner.
 *
 * Gives   0 for what came on the day it was taken, or before
 * Throws  RangeError when the supplier works on no day
 */
export function leadTaken(orderedOn: Day, arrivedOn: Day, working: WorkingDays): number {
  const week = weekOf(working, 0);
  const [taken, arrived] = [nearest(week, dayNumber(orderedOn), 1), dayNumber(arrivedOn)];
  if (arrived <= taken) return 0;
  const weeks = week.closed.size > 0 ? 0 : wholeWeeks(arrived - taken);
  let [lead, day] = [weeks * week.perWeek, taken + 7 * weeks];
  for (; day < arrived; lead++) day = nearest(week, day + 1, 1);
  return lead;
}

/** Which days of the week are worked, Monday first, and how many; and the numbers of the days that are closed all the same. */
type WorkingWeek = { works: boolean[]; perWeek: number; closed: ReadonlySet<number> };

/** What is known of some working days, since the same ones are asked about day by day. */
const weeks = new WeakMap<WorkingDays, WorkingWeek>();

function weekOf(working: WorkingDays, leadDays: number): WorkingWeek {
  const { weekdays, closed } = working;
  if (weekdays.size === 0) throw new RangeError('working days: a supplier who works on no day delivers nothing');
  if (!Number.isInteger(leadDays) || leadDays < 0) throw new RangeError(`working days: ${leadDays} is no lead time`);
  const known = weeks.get(working) ?? {
    works: WEEKDAYS.map((weekday) => weekdays.has(weekday)),
    perWeek: weekdays.size,
    closed: new Set([...closed].map(dayNumber)),
  };
  weeks.set(working, known);
  return known;
}

const isWorked = ({ works, closed }: WorkingWeek, number: number): boolean =>
  works[weekdayNumber(number)] === true && !closed.has(number);

/** The day itself if it is worked, or else the next one that is, forwards (1) or back (−1). */
function nearest(week: WorkingWeek, number: number, direction: 1 | -1): number {
  let day = number;
  while (!isWorked(week, day)) day += direction;
  return day;
}

/**
 * So many working days on from a working day. Where nothing is closed whole weeks are jumped, so that a long lead costs no
 * more than a short one.
 */
function walk(week: WorkingWeek, from: number, leadDays: number, direction: 1 | -1): number {
  const weeks = week.closed.size > 0 ? 0 : Math.floor(leadDays / week.perWeek);
  let day = from + direction * 7 * weeks;
  for (let left = leadDays - weeks * week.perWeek; left > 0; left--) day = nearest(week, day + direction, direction);
  return day;
}
