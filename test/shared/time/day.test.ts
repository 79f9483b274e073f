import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { addDays, Day, dayFromNumber, dayNumber, daysBetween, readDay, WEEKDAYS, weekdayOf } from '@/shared/time/day';
import { day } from './typed';

const RUNS = { numRuns: 2_000 };
const LAST = 2_932_896;
const number = fc.integer({ min: 0, max: LAST });

test('every day from 1970 to 9999 comes back from its number, next to its neighbours', () => {
  let [year, month, dayOfMonth] = [1970, 1, 1];
  const lengths = (leap: boolean) => [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  let wrong = 0;
  for (let count = 0; count <= LAST; count++) {
    const text = `${year}-${String(month).padStart(2, '0')}-${String(dayOfMonth).padStart(2, '0')}`;
    const found = dayFromNumber(count);
    if (found !== text || dayNumber(found) !== count) wrong++;
    dayOfMonth++;
    const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
    if (dayOfMonth > (lengths(leap)[month - 1] ?? 0)) [month, dayOfMonth] = [month + 1, 1];
    if (month > 12) [year, month] = [year + 1, 1];
  }
  expect(wrong).toBe(0);
  expect(dayFromNumber(LAST)).toBe('9999-12-31');
});

test('days, weekdays and differences agree with another calendar library', () => {
  fc.assert(
    fc.property(number, fc.integer({ min: -4_000, max: 4_000 }), (start, step) => {
      fc.pre(start + step >= 0 && start + step <= LAST);
      const mine = dayFromNumber(start);
      const theirs = DateTime.fromISO(mine, { zone: 'utc' });
      expect(addDays(mine, step)).toBe(theirs.plus({ days: step }).toISODate());
      expect(daysBetween(mine, addDays(mine, step))).toBe(step);
      expect(weekdayOf(mine)).toBe(WEEKDAYS[theirs.weekday - 1]);
    }),
    RUNS,
  );
});

test('whatever is read as a day is one that the other library knows too, and the other way round', () => {
  const digits = (max: number, width: number) => fc.nat(max).map((value) => String(value).padStart(width, '0'));
  fc.assert(
    fc.property(fc.integer({ min: 1971, max: 2999 }), digits(14, 2), digits(33, 2), (year, month, dayOfMonth) => {
      const text = `${year}-${month}-${dayOfMonth}`;
      const known = DateTime.fromISO(text, { zone: 'utc' }).isValid;
      expect(readDay(text).ok).toBe(known);
      expect(Day.safeParse(text).success).toBe(known);
    }),
    RUNS,
  );
});

test('days sort as text in the order of the calendar', () => {
  fc.assert(
    fc.property(number, number, (a, b) => {
      expect(dayFromNumber(a) < dayFromNumber(b)).toBe(a < b);
    }),
    RUNS,
  );
});

test.each([
  ['2026-02-30', '"2026-02-30" is not a date: February 2026 has 28 days. Give a day from 01 to 28.'],
  ['2026-04-31', '"2026-04-31" is not a date: April 2026 has 30 days. Give a day from 01 to 30.'],
  ['2026-03-00', '"2026-03-00" is not a date: March 2026 has 31 days. Give a day from 01 to 31.'],
  ['1900-02-29', '"1900-02-29" is too far away. Give a year from 1971 to 2999.'],
  ['2100-02-29', '"2100-02-29" is not a date: February 2100 has 28 days. Give a day from 01 to 28.'],
  ['2026-13-01', '"2026-13-01" has no such month. Write year-month-day with a month from 01 to 12.'],
  ['2026-00-10', '"2026-00-10" has no such month. Write year-month-day with a month from 01 to 12.'],
  ['1969-12-31', '"1969-12-31" is too far away. Give a year from 1971 to 2999.'],
  ['1970-12-31', '"1970-12-31" is too far away. Give a year from 1971 to 2999.'],
  ['3000-01-01', '"3000-01-01" is too far away. Give a year from 1971 to 2999.'],
  ['9999-12-31', '"9999-12-31" is too far away. Give a year from 1971 to 2999.'],
  ['3/3/2026', '"3/3/2026" is not a date. Write year-month-day, such as 2026-03-03.'],
  ['2026-3-3', '"2026-3-3" is not a date. Write year-month-day, such as 2026-03-03.'],
  ['2026-03-03 ', '"2026-03-03 " is not a date. Write year-month-day, such as 2026-03-03.'],
  ['2026-03-03\n', '"2026-03-03\n" is not a date. Write year-month-day, such as 2026-03-03.'],
  ['2026-03-03T10:00', '"2026-03-03T10:00" is not a date. Write year-month-day, such as 2026-03-03.'],
  ['12026-03-03', '"12026-03-03" is not a date. Write year-month-day, such as 2026-03-03.'],
  ['', '"" is not a date. Write year-month-day, such as 2026-03-03.'],
])('%j is refused as a day, with what to write instead', (text, message) => {
  expect(readDay(text)).toEqual({ ok: false, message });
  expect(Day.safeParse(text).error?.issues.map((issue) => issue.message)).toEqual([message]);
});

test('a long text is cut short in the sentence that refuses it', () => {
  expect(readDay('x'.repeat(1_000_000))).toEqual({
    ok: false,
    message: `"${'x'.repeat(40)}…" is not a date. Write year-month-day, such as 2026-03-03.`,
  });
});

test('29 February is a day in every fourth year, but for three centuries of four', () => {
  for (let year = 1971; year <= 2999; year++) {
    const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
    expect({ year, leap: readDay(`${year}-02-29`).ok }).toEqual({ year, leap });
  }
});

test('a leap day is a day in 2028 and in 2000', () => {
  expect(readDay('2028-02-29')).toEqual({ ok: true, value: '2028-02-29' });
  expect(readDay('2000-02-29')).toEqual({ ok: true, value: '2000-02-29' });
  expect(addDays(day('2028-02-28'), 1)).toBe('2028-02-29');
});

test.each([-1, LAST + 1, 0.5, Number.NaN, Number.POSITIVE_INFINITY])('there is no day number %d', (value) => {
  expect(() => dayFromNumber(value)).toThrow(RangeError);
});

test('the week begins on Monday', () => {
  expect(WEEKDAYS[0]).toBe('mon');
  expect(weekdayOf(day('1970-01-01'))).toBe('thu');
  expect(weekdayOf(day('2026-03-02'))).toBe('mon');
  expect(weekdayOf(day('2026-03-08'))).toBe('sun');
});
