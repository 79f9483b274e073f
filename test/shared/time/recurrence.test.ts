import fc from 'fast-check';
import { RRule } from 'rrule';
import { expect, test } from 'vitest';
import { addDays, type Day, dayFromNumber, dayNumber } from '@/shared/time/day';
import { occurrences } from '@/shared/time/recurrence';
import { dayByDay } from './day-by-day';
import { day, repeat } from './typed';

const RUNS = { numRuns: 2_000 };
const WEEKDAY_CODES = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];

const list = <T>(one: fc.Arbitrary<T>, most: number) =>
  fc.uniqueArray(one, { minLength: 1, maxLength: most }).map(String);
const part = (name: string, value: fc.Arbitrary<string | number>) =>
  fc.option(
    value.map((text) => `;${name}=${text}`),
    { nil: '' },
  );

const plainDays = list(fc.constantFrom(...WEEKDAY_CODES), 4);
const ordinal = fc.constantFrom(-5, -4, -3, -2, -1, 1, 2, 3, 4, 5);
const numberedDays = list(
  fc.tuple(ordinal, fc.constantFrom(...WEEKDAY_CODES)).map((pair) => pair.join('')),
  3,
);
const monthDays = list(fc.oneof(fc.integer({ min: 1, max: 31 }), fc.integer({ min: -31, max: -1 })), 4);

const start = fc.integer({ min: dayNumber(day('2015-01-01')), max: dayNumber(day('2030-12-31')) }).map(dayFromNumber);
const end = fc.oneof(
  fc.constant(''),
  fc.integer({ min: 1, max: 60 }).map((count) => `;COUNT=${count}`),
  start.map((last) => `;UNTIL=${last.replaceAll('-', '')}`),
);

const daily = fc.tuple(
  part('INTERVAL', fc.integer({ min: 1, max: 40 })),
  part('BYDAY', plainDays),
  part('BYMONTHDAY', monthDays),
  end,
);
const weekly = fc.tuple(part('INTERVAL', fc.integer({ min: 1, max: 9 })), part('BYDAY', plainDays), end);
const monthly = fc.tuple(
  part('INTERVAL', fc.integer({ min: 1, max: 14 })),
  // The reference takes a list of numbered and plain days as both at once, where the standard takes either: see below.
  part('BYDAY', fc.oneof(plainDays, numberedDays)),
  part('BYMONTHDAY', monthDays),
  end,
);
const anyRule = fc.oneof(
  daily.map((parts) => `FREQ=DAILY${parts.join('')}`),
  weekly.map((parts) => `FREQ=WEEKLY${parts.join('')}`),
  monthly.map((parts) => `FREQ=MONTHLY${parts.join('')}`),
);

/** The same rule, from its first day on, by the reference implementation. */
function reference(rule: string, startsOn: Day, from: Day, to: Day) {
  const at = (on: Day) => new Date(`${on}T00:00:00Z`);
  const parsed = new RRule({ ...RRule.parseString(rule), dtstart: at(startsOn), wkst: RRule.MO });
  return parsed
    .between(at(startsOn), at(to), true)
    .map((date, index) => ({ day: date.toISOString().slice(0, 10), index }))
    .filter((one) => one.day >= from);
}

const withoutEnd = (rule: string) => rule.replace(/;(COUNT|UNTIL)=\d+/, '');

test('a program comes back on the days, and with the numbers, that the reference implementation gives', () => {
  let days = 0;
  fc.assert(
    fc.property(
      anyRule,
      start,
      fc.integer({ min: -200, max: 500 }),
      fc.integer({ min: -1, max: 200 }),
      (rule, on, ahead, length) => {
        const from = addDays(on, ahead);
        const to = addDays(from, length);
        // The reference looks for the next day until the year 9999, so a rule without one keeps it busy for minutes.
        fc.pre(occurrences(repeat(withoutEnd(rule)), on, addDays(to, 1), addDays(to, 400)).length > 0);
        const found = occurrences(repeat(rule), on, from, to);
        days += found.length;
        expect(found).toEqual(reference(rule, on, from, to));
      },
    ),
    { numRuns: 1_200 },
  );
  // The comparison would prove nothing over empty lists.
  expect(days).toBeGreaterThan(1_200);
});

test('a program comes back on the days, and with the numbers, that looking at every single day gives', () => {
  fc.assert(
    fc.property(
      anyRule,
      start,
      fc.integer({ min: -300, max: 1_500 }),
      fc.integer({ min: -1, max: 400 }),
      (rule, on, ahead, length) => {
        const from = addDays(on, ahead);
        const to = addDays(from, length);
        expect(occurrences(repeat(rule), on, from, to)).toEqual(dayByDay(rule, on, from, to));
      },
    ),
    RUNS,
  );
});

test('two halves of a stretch hold together what the whole holds', () => {
  fc.assert(
    fc.property(anyRule, start, fc.nat(2_000), fc.nat(400), fc.nat(400), (rule, on, ahead, first, second) => {
      const [from, middle] = [addDays(on, ahead), addDays(on, ahead + first)];
      const to = addDays(middle, second);
      const read = repeat(rule);
      const halves = [...occurrences(read, on, from, middle), ...occurrences(read, on, addDays(middle, 1), to)];
      expect(halves).toEqual(occurrences(read, on, from, to));
    }),
    RUNS,
  );
});

test('numbers count up by one from the first day on, and days only go forward', () => {
  fc.assert(
    fc.property(anyRule, start, fc.nat(3_000), (rule, on, length) => {
      const found = occurrences(repeat(rule), on, dayFromNumber(0), addDays(on, length));
      expect(found.map((one) => one.index)).toEqual(found.map((_, place) => place));
      expect(
        found.every((one, place) => one.day >= on && (place === 0 || one.day > (found[place - 1]?.day ?? ''))),
      ).toBe(true);
    }),
    RUNS,
  );
});

const daysOf = (rule: string, on: string, to: string) =>
  occurrences(repeat(rule), day(on), day(on), day(to)).map((one) => one.day);

test.each([
  ['FREQ=WEEKLY;BYDAY=TU', '2026-03-03', '2026-03-20', ['2026-03-03', '2026-03-10', '2026-03-17']],
  ['FREQ=WEEKLY;BYDAY=TU', '2026-03-04', '2026-03-20', ['2026-03-10', '2026-03-17']],
  [
    'FREQ=WEEKLY;INTERVAL=2;BYDAY=MO,SU',
    '2026-03-05',
    '2026-03-31',
    ['2026-03-08', '2026-03-16', '2026-03-22', '2026-03-30'],
  ],
  ['FREQ=DAILY;INTERVAL=9', '2026-02-27', '2026-03-20', ['2026-02-27', '2026-03-08', '2026-03-17']],
  ['FREQ=DAILY;INTERVAL=2;BYDAY=MO', '2026-03-03', '2026-04-07', ['2026-03-09', '2026-03-23', '2026-04-06']],
  ['FREQ=MONTHLY', '2026-01-31', '2026-06-01', ['2026-01-31', '2026-03-31', '2026-05-31']],
  ['FREQ=MONTHLY;BYMONTHDAY=-1', '2026-01-31', '2026-04-01', ['2026-01-31', '2026-02-28', '2026-03-31']],
  ['FREQ=MONTHLY;BYDAY=2TU,-1FR', '2026-03-01', '2026-04-30', ['2026-03-10', '2026-03-27', '2026-04-14', '2026-04-24']],
  ['FREQ=MONTHLY;BYDAY=5MO', '2026-03-01', '2026-06-30', ['2026-03-30', '2026-06-29']],
  ['FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13', '2026-01-01', '2026-12-31', ['2026-02-13', '2026-03-13', '2026-11-13']],
  ['FREQ=MONTHLY;INTERVAL=12', '2024-02-29', '2033-01-01', ['2024-02-29', '2028-02-29', '2032-02-29']],
  ['FREQ=DAILY;COUNT=3', '2026-12-30', '2027-02-01', ['2026-12-30', '2026-12-31', '2027-01-01']],
  ['FREQ=DAILY;UNTIL=20261231', '2026-12-30', '2027-02-01', ['2026-12-30', '2026-12-31']],
  ['FREQ=WEEKLY;UNTIL=20260301', '2026-03-03', '2026-03-20', []],
  ['FREQ=MONTHLY;BYDAY=1MO;BYMONTHDAY=20', '2026-01-01', '9999-12-31', []],
  ['freq=weekly;byday=tu', '2026-03-03', '2026-03-12', ['2026-03-03', '2026-03-10']],
])('%s from %s to %s', (rule, on, to, days) => {
  expect(daysOf(rule, on, to)).toEqual(days);
});

test('a list of plain and numbered days means any of them, as the standard says', () => {
  expect(daysOf('FREQ=MONTHLY;BYDAY=MO,1TU', '2026-03-01', '2026-03-20')).toEqual([
    '2026-03-02',
    '2026-03-03',
    '2026-03-09',
    '2026-03-16',
  ]);
});

test('a rotation keeps its turn however late the shop looks', () => {
  const weekly = repeat('FREQ=WEEKLY;BYDAY=TU,FR');
  const found = occurrences(weekly, day('1990-01-03'), day('2026-03-03'), day('2026-03-06'));
  // 1990-01-05 was the first; 1,887 weeks lie between Tuesday 2 January 1990 and Tuesday 3 March 2026.
  expect(found).toEqual([
    { day: '2026-03-03', index: 2 * 1_887 - 1 },
    { day: '2026-03-06', index: 2 * 1_887 },
  ]);
});

test('a day is not an occurrence after the count has run out, even when nobody looked at the ones before', () => {
  const five = repeat('FREQ=WEEKLY;COUNT=5');
  expect(occurrences(five, day('2026-03-03'), day('2026-03-25'), day('2026-12-31'))).toEqual([
    { day: '2026-03-31', index: 4 },
  ]);
  expect(occurrences(five, day('2026-03-03'), day('2026-04-01'), day('2026-12-31'))).toEqual([]);
});

test('a program without a repeat happens once, on the day it starts', () => {
  const once = [{ day: '2026-03-03', index: 0 }];
  expect(occurrences(null, day('2026-03-03'), day('2026-03-03'), day('2026-03-03'))).toEqual(once);
  expect(occurrences(null, day('2026-03-03'), day('2026-03-04'), day('2026-12-31'))).toEqual([]);
  expect(occurrences(null, day('2026-03-03'), day('2026-01-01'), day('2026-03-02'))).toEqual([]);
});

test('nothing lies in a stretch that ends before it begins', () => {
  expect(occurrences(repeat('FREQ=DAILY'), day('2026-03-03'), day('2026-03-20'), day('2026-03-10'))).toEqual([]);
});

test('an old daily or weekly program is as quick to look at as a new one', () => {
  const started = performance.now();
  for (const rule of ['FREQ=DAILY', 'FREQ=DAILY;INTERVAL=3;BYDAY=MO', 'FREQ=WEEKLY;BYDAY=TU,FR']) {
    const read = repeat(rule);
    for (let run = 0; run < 2_000; run++) occurrences(read, day('1970-01-01'), day('9999-01-01'), day('9999-01-31'));
  }
  expect(performance.now() - started).toBeLessThan(2_000);
});
