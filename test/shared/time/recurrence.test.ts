import fc from 'fast-check';
import { RRule } from 'rrule';
import { expect, test } from 'vitest';
import { addDays, type Day, dayFromNumber, dayNumber } from '@/shared/time/day';
import { instantText } from '@/shared/time/instant';
import { occurrences, readRepeat, settleUntil, untilDay } from '@/shared/time/recurrence';
import { atClock } from '@/shared/time/zone';
import { day, repeat, zone } from './typed';

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

test('a program comes back on the days, and with the numbers, that the reference implementation gives', () => {
  let days = 0;
  fc.assert(
    fc.property(
      anyRule,
      start,
      fc.integer({ min: -300, max: 1_500 }),
      fc.integer({ min: -1, max: 400 }),
      (rule, on, ahead, length) => {
        const from = addDays(on, ahead);
        const to = addDays(from, length);
        const found = occurrences(repeat(rule), on, from, to);
        days += found.length;
        expect(found).toEqual(reference(rule, on, from, to));
      },
    ),
    RUNS,
  );
  // The comparison would prove nothing over empty lists.
  expect(days).toBeGreaterThan(RUNS.numRuns);
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

test.each([
  // 17:30 in New York is 21:30 UTC in summer, 22:30 in winter.
  ['20260706T213000Z', 'America/New_York', 1_050, '2026-07-06'],
  ['20260706T212959Z', 'America/New_York', 1_050, '2026-07-05'],
  ['20260107T000000Z', 'America/New_York', 1_050, '2026-01-06'],
  ['20260106T150000Z', 'Asia/Tokyo', 0, '2026-01-07'],
  ['20260106T145959Z', 'Asia/Tokyo', 0, '2026-01-06'],
  // The clocks skip from 02:00 to 03:00, so 02:30 is 03:30, which is 07:30 UTC.
  ['20260308T073000Z', 'America/New_York', 150, '2026-03-08'],
  ['20260308T072900Z', 'America/New_York', 150, '2026-03-07'],
  // The whole of 30 December was skipped, so its 10:00 is the 31st's, and so is the last start before that.
  ['20111230T195900Z', 'Pacific/Apia', 600, '2011-12-29'],
  // One minute past midnight the clocks went back to 23:01, so the next day had already begun once.
  ['20101107T030000Z', 'America/St_Johns', 0, '2010-11-07'],
])('UNTIL=%s in %s, for a start at minute %d, means the last day is %s', (until, place, minute, last) => {
  const ending = repeat(`FREQ=DAILY;UNTIL=${until}`);
  expect(untilDay(ending, zone(place), minute)).toBe(last);
  expect(settleUntil(ending, zone(place), minute)).toMatchObject({ until: last, untilAt: null });
});

test('the last day that UNTIL means is the last whose start is not after it', () => {
  const places = fc.constantFrom(...Intl.supportedValuesOf('timeZone').map(zone));
  fc.assert(
    fc.property(
      places,
      fc.integer({ min: 20 * 365, max: 67 * 365 }),
      fc.nat(1_439),
      fc.nat(1_439),
      (place, number, at, minute) => {
        const moment = atClock(zone('UTC'), dayFromNumber(number), at);
        const until = instantText(moment, zone('UTC')).replace('+00:00', 'Z').replaceAll(/[-:]/g, '');
        const last = untilDay(repeat(`FREQ=DAILY;UNTIL=${until}`), place, minute);
        expect(last !== null && atClock(place, last, minute) <= moment).toBe(true);
        for (const later of [1, 2, 3]) {
          expect(last !== null && atClock(place, addDays(last, later), minute) > moment).toBe(true);
        }
      },
    ),
    RUNS,
  );
});

test('a repeat that ends on a day, or never, is settled as it is', () => {
  for (const rule of ['FREQ=DAILY', 'FREQ=DAILY;UNTIL=20260706']) {
    const read = repeat(rule);
    expect(settleUntil(read, zone('UTC'), 0)).toBe(read);
  }
  expect(untilDay(repeat('FREQ=DAILY'), zone('UTC'), 0)).toBe(null);
});

test('a repeat that ends at an instant must be settled before its days are asked for', () => {
  const open = repeat('FREQ=DAILY;UNTIL=20260706T213000Z');
  expect(() => occurrences(open, day('2026-07-01'), day('2026-07-01'), day('2026-07-31'))).toThrow(RangeError);
  const settled = settleUntil(open, zone('America/New_York'), 1_050);
  expect(occurrences(settled, day('2026-07-05'), day('2026-07-01'), day('2026-07-31')).map((one) => one.day)).toEqual([
    '2026-07-05',
    '2026-07-06',
  ]);
});

test('a repeat keeps what was typed, and every part of it', () => {
  expect(repeat('FREQ=MONTHLY;INTERVAL=2;BYDAY=+2TU,-1FR;BYMONTHDAY=-1,7;COUNT=12')).toEqual({
    text: 'FREQ=MONTHLY;INTERVAL=2;BYDAY=+2TU,-1FR;BYMONTHDAY=-1,7;COUNT=12',
    frequency: 'monthly',
    interval: 2,
    weekdays: [
      { weekday: 'tue', nth: 2 },
      { weekday: 'fri', nth: -1 },
    ],
    daysOfMonth: [-1, 7],
    count: 12,
    until: null,
    untilAt: null,
  });
});

test.each([
  ['', 'The repeat is empty. Write a rule such as FREQ=WEEKLY;BYDAY=TU.'],
  ['BYDAY=TU', '"BYDAY=TU" does not say how often. Begin with FREQ, as in FREQ=WEEKLY;BYDAY=TU.'],
  [
    'FREQ=YEARLY',
    'FREQ=YEARLY is not known here. Write DAILY, WEEKLY or MONTHLY. Once a year is FREQ=MONTHLY;INTERVAL=12.',
  ],
  ['FREQ=HOURLY', 'FREQ=HOURLY is not known here. Write DAILY, WEEKLY or MONTHLY.'],
  ['FREQ=', 'FREQ= is not known here. Write DAILY, WEEKLY or MONTHLY.'],
  ['FREQ=WEEKLY;WKST=SU', 'WKST is not known here: weeks begin on Monday. Leave it out.'],
  ['FREQ=WEEKLY;WKST=MO', 'WKST is not known here: weeks begin on Monday. Leave it out.'],
  ['RRULE:FREQ=WEEKLY', '"RRULE:FREQ" does not belong here. Write the rule alone, such as FREQ=WEEKLY;BYDAY=TU.'],
  ['FREQ=DAILY;FREQ=DAILY', '"FREQ" is given twice. Give it once.'],
  ['FREQ=DAILY;INTERVAL=2;interval=3', '"INTERVAL" is given twice. Give it once.'],
  ['FREQ=DAILY;INTERVAL=0', 'INTERVAL cannot be "0". Write a whole number from 1 to 99999.'],
  ['FREQ=DAILY;INTERVAL=1.5', 'INTERVAL cannot be "1.5". Write a whole number from 1 to 99999.'],
  ['FREQ=DAILY;INTERVAL=', 'INTERVAL cannot be "". Write a whole number from 1 to 99999.'],
  ['FREQ=DAILY;COUNT=-1', 'COUNT cannot be "-1". Write a whole number from 1 to 99999.'],
  ['FREQ=DAILY;COUNT=100000', 'COUNT cannot be "100000". Write a whole number from 1 to 99999.'],
  [
    'FREQ=DAILY;COUNT=2;UNTIL=20260706',
    'COUNT and UNTIL cannot stand together. Keep one: how many times, or until when.',
  ],
  [
    'FREQ=DAILY;UNTIL=20260706T213000Z;COUNT=2',
    'COUNT and UNTIL cannot stand together. Keep one: how many times, or until when.',
  ],
  [
    'FREQ=WEEKLY;BYMONTHDAY=1',
    'BYMONTHDAY cannot stand with FREQ=WEEKLY. Write FREQ=MONTHLY, or name the days of the week with BYDAY.',
  ],
  [
    'FREQ=WEEKLY;BYDAY=2TU',
    'A number in BYDAY, such as 2TU, counts within a month. Write FREQ=MONTHLY, or leave the number out.',
  ],
  [
    'FREQ=DAILY;BYDAY=-1FR',
    'A number in BYDAY, such as 2TU, counts within a month. Write FREQ=MONTHLY, or leave the number out.',
  ],
  ['FREQ=WEEKLY;BYDAY=TUE', 'BYDAY cannot hold "TUE". Write MO, TU, WE, TH, FR, SA or SU, with commas between.'],
  ['FREQ=WEEKLY;BYDAY=', 'BYDAY cannot hold "". Write MO, TU, WE, TH, FR, SA or SU, with commas between.'],
  ['FREQ=WEEKLY;BYDAY=TU,', 'BYDAY cannot hold "". Write MO, TU, WE, TH, FR, SA or SU, with commas between.'],
  [
    'FREQ=MONTHLY;BYDAY=6TU',
    'BYDAY cannot hold "6TU": a month has at most five of a day. Number from 1 to 5, or from -1 to -5.',
  ],
  [
    'FREQ=MONTHLY;BYDAY=0TU',
    'BYDAY cannot hold "0TU": a month has at most five of a day. Number from 1 to 5, or from -1 to -5.',
  ],
  ['FREQ=MONTHLY;BYMONTHDAY=0', 'BYMONTHDAY cannot hold "0". Write days from 1 to 31, or from -1 (the last) to -31.'],
  ['FREQ=MONTHLY;BYMONTHDAY=32', 'BYMONTHDAY cannot hold "32". Write days from 1 to 31, or from -1 (the last) to -31.'],
  [
    'FREQ=DAILY;UNTIL=2026-07-06',
    'UNTIL cannot be "2026-07-06". Write a day such as 20261031, or a time in UTC such as 20261031T220000Z.',
  ],
  [
    'FREQ=DAILY;UNTIL=20260706T213000',
    'UNTIL cannot be "20260706T213000". Write a day such as 20261031, or a time in UTC such as 20261031T220000Z.',
  ],
  [
    'FREQ=DAILY;UNTIL=20260230',
    'UNTIL: "2026-02-30" is not a date: February 2026 has 28 days. Give a day from 01 to 28.',
  ],
  [
    'FREQ=DAILY;UNTIL=20260706T253000Z',
    'UNTIL: "2026-07-06T25:30:00Z" is not a date and time. Write it such as 2026-07-06T21:15:00+02:00.',
  ],
  [
    'FREQ=DAILY;',
    '"" is no part of a repeat. Write NAME=VALUE pairs joined by semicolons: FREQ, INTERVAL, BYDAY, BYMONTHDAY, COUNT and UNTIL.',
  ],
  [
    'weekly',
    '"WEEKLY" is no part of a repeat. Write NAME=VALUE pairs joined by semicolons: FREQ, INTERVAL, BYDAY, BYMONTHDAY, COUNT and UNTIL.',
  ],
  [
    'FREQ=DAILY=2',
    '"FREQ=DAILY=2" is no part of a repeat. Write NAME=VALUE pairs joined by semicolons: FREQ, INTERVAL, BYDAY, BYMONTHDAY, COUNT and UNTIL.',
  ],
])('%j is refused as a repeat, with what to write instead', (text, message) => {
  expect(readRepeat(text)).toEqual({ ok: false, message });
});

test.each([
  'BYSECOND',
  'BYMINUTE',
  'BYHOUR',
  'BYYEARDAY',
  'BYWEEKNO',
  'BYMONTH',
  'BYSETPOS',
  'EXDATE',
  'X-ODD',
  'CONSTRUCTOR',
  ' BYDAY',
])('%j is refused by name', (name) => {
  expect(readRepeat(`FREQ=MONTHLY;${name}=1`)).toEqual({
    ok: false,
    message: `"${name}" is not known here. A repeat may hold FREQ, INTERVAL, BYDAY, BYMONTHDAY, COUNT and UNTIL.`,
  });
});

test('no text whatever stops the reading with an error', () => {
  const piece = fc.constantFrom(
    'FREQ',
    '=',
    ';',
    'DAILY',
    'MONTHLY',
    'BYDAY',
    'MO',
    ',',
    '-1',
    '99',
    'UNTIL',
    '20260706',
    'COUNT',
    'Z',
    'T',
  );
  fc.assert(
    fc.property(
      fc.oneof(
        fc.string(),
        fc.array(piece).map((pieces) => pieces.join('')),
      ),
      (text) => {
        const reading = readRepeat(text);
        expect(reading.ok || reading.message.endsWith('.')).toBe(true);
      },
    ),
    RUNS,
  );
});
