import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readRepeat } from '@/shared/time/recurrence';
import { repeat } from './typed';

const RUNS = { numRuns: 2_000 };

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
