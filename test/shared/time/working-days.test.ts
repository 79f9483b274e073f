import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { addDays, type Day, dayFromNumber, WEEKDAYS, type Weekday, weekdayOf } from '@/shared/time/day';
import { arrivalOf, latestOrderDay, leadTaken, type WorkingDays } from '@/shared/time/working-days';
import { day } from './typed';

const RUNS = { numRuns: 2_000 };
const on = (weekdays: readonly Weekday[], closed: readonly Day[] = []): WorkingDays => ({
  weekdays: new Set(weekdays),
  closed: new Set(closed),
});
const MONDAY_TO_FRIDAY = on(['mon', 'tue', 'wed', 'thu', 'fri']);
const anyDay = fc
  .oneof(fc.integer({ min: 10_000, max: 60_000 }), fc.integer({ min: 19_990, max: 20_100 }))
  .map(dayFromNumber);
/** Weekdays, and around the middle of the days that are tried so many holidays that some of them matter. */
const anyWeek = fc
  .tuple(
    fc.subarray([...WEEKDAYS], { minLength: 1 }),
    fc.array(fc.integer({ min: 20_000, max: 20_090 }).map(dayFromNumber), { maxLength: 30 }),
    fc.boolean(),
  )
  .map(([weekdays, closed, hasHolidays]) => on(weekdays, hasHolidays ? closed : []));
const lead = fc.nat(60);

/** The same by counting the days one by one with another calendar library. */
function counted(from: string, leadDays: number, { weekdays, closed }: WorkingDays): string | null {
  const works = (at: DateTime) =>
    [...weekdays].some((weekday) => WEEKDAYS.indexOf(weekday) === at.weekday - 1) &&
    [...closed].every((day) => day !== at.toISODate());
  let at: DateTime = DateTime.fromISO(from, { zone: 'utc' });
  while (!works(at)) at = at.plus({ days: 1 });
  for (let left = leadDays; left > 0; ) {
    at = at.plus({ days: 1 });
    if (works(at)) left--;
  }
  return at.toISODate();
}

test('an order arrives on the day that counting one by one gives', () => {
  fc.assert(
    fc.property(anyDay, lead, anyWeek, (on, leadDays, working) => {
      expect(arrivalOf(on, leadDays, working)).toBe(counted(on, leadDays, working));
    }),
    RUNS,
  );
});

const isWorked = (day: Day, { weekdays, closed }: WorkingDays): boolean =>
  weekdays.has(weekdayOf(day)) && !closed.has(day);

test('the latest order day is a working day, arrives in time, and the next working day would not', () => {
  fc.assert(
    fc.property(anyDay, lead, anyWeek, (by, leadDays, working) => {
      const latest = latestOrderDay(by, leadDays, working);
      expect(isWorked(latest, working)).toBe(true);
      expect(arrivalOf(latest, leadDays, working) <= by).toBe(true);
      let next = addDays(latest, 1);
      while (!isWorked(next, working)) next = addDays(next, 1);
      expect(arrivalOf(next, leadDays, working) > by).toBe(true);
    }),
    RUNS,
  );
});

test.each([
  {
    name: 'five working days before a Friday is the Friday before',
    by: '2026-03-13',
    leadDays: 5,
    order: '2026-03-06',
  },
  { name: 'a lead of 0 arrives the same day', by: '2026-03-11', leadDays: 0, order: '2026-03-11' },
  {
    name: 'what is wanted by Sunday with a lead of 0 is ordered on Friday',
    by: '2026-03-15',
    leadDays: 0,
    order: '2026-03-13',
  },
  { name: 'what is wanted by Saturday must arrive on Friday', by: '2026-03-14', leadDays: 1, order: '2026-03-12' },
  { name: 'one working day before a Monday is Friday', by: '2026-03-16', leadDays: 1, order: '2026-03-13' },
])('$name', ({ by, leadDays, order }) => {
  expect(latestOrderDay(day(by), leadDays, MONDAY_TO_FRIDAY)).toBe(order);
});

test('an order placed on a day the supplier does not work is taken on the next working day', () => {
  expect(arrivalOf(day('2026-03-14'), 0, MONDAY_TO_FRIDAY)).toBe('2026-03-16');
  expect(arrivalOf(day('2026-03-14'), 1, MONDAY_TO_FRIDAY)).toBe('2026-03-17');
  expect(arrivalOf(day('2026-03-13'), 1, MONDAY_TO_FRIDAY)).toBe('2026-03-16');
});

test('a supplier who works on Wednesdays only delivers a week later for each day of lead', () => {
  const wednesdays = on(['wed']);
  expect(arrivalOf(day('2026-03-04'), 3, wednesdays)).toBe('2026-03-25');
  expect(latestOrderDay(day('2026-03-24'), 3, wednesdays)).toBe('2026-02-25');
});

test('a very long lead is answered at once', () => {
  const started = performance.now();
  for (let run = 0; run < 10_000; run++) arrivalOf(day('1970-01-05'), 2_000_000, MONDAY_TO_FRIDAY);
  expect(performance.now() - started).toBeLessThan(2_000);
});

test('no working day, and a lead that is no lead, are errors', () => {
  expect(() => arrivalOf(day('2026-03-04'), 1, on([]))).toThrow(RangeError);
  expect(() => latestOrderDay(day('2026-03-04'), -1, MONDAY_TO_FRIDAY)).toThrow(RangeError);
  expect(() => latestOrderDay(day('2026-03-04'), 1.5, MONDAY_TO_FRIDAY)).toThrow(RangeError);
  expect(latestOrderDay(day('1970-01-05'), 1, MONDAY_TO_FRIDAY)).toBe('1970-01-02');
  for (let leadDays = 3; leadDays < 30; leadDays++) {
    expect(() => latestOrderDay(day('1970-01-05'), leadDays, MONDAY_TO_FRIDAY)).toThrow(RangeError);
  }
});

test('the lead time that was taken is the shortest that would have promised the day it came', () => {
  fc.assert(
    fc.property(anyDay, fc.nat(60), anyWeek, (ordered, later, working) => {
      const arrived = addDays(ordered, later);
      const taken = leadTaken(ordered, arrived, working);
      expect(arrivalOf(ordered, taken, working) >= arrived).toBe(true);
      if (taken > 0) expect(arrivalOf(ordered, taken - 1, working) < arrived).toBe(true);
    }),
    RUNS,
  );
});

test('a holiday is no working day: not to order on, not to arrive on, and not in between', () => {
  // Friday 3 July 2026 is closed; Monday to Friday otherwise.
  const holiday = on(['mon', 'tue', 'wed', 'thu', 'fri'], [day('2026-07-03')]);
  expect(arrivalOf(day('2026-07-02'), 1, holiday)).toBe('2026-07-06');
  expect(arrivalOf(day('2026-07-03'), 0, holiday)).toBe('2026-07-06');
  expect(latestOrderDay(day('2026-07-06'), 1, holiday)).toBe('2026-07-02');
  expect(latestOrderDay(day('2026-07-03'), 0, holiday)).toBe('2026-07-02');
  expect(leadTaken(day('2026-07-02'), day('2026-07-06'), holiday)).toBe(1);
});
