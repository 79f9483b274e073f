import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { dayFromNumber } from '@/shared/time/day';
import { addMinutes, instantOf } from '@/shared/time/instant';
import {
  showClock,
  showDay,
  showDayLong,
  showDayOnPaper,
  showDayShort,
  showInstant,
  showUntil,
} from '@/shared/time/show-day';
import { day, instant, zone } from './typed';

const berlin = zone('Europe/Berlin');

test.each([
  ['2026-03-03', 'Tue 3 March', 'Tuesday 3 March', 'Tue 3 Mar'],
  ['2026-09-30', 'Wed 30 September', 'Wednesday 30 September', 'Wed 30 Sep'],
  ['2026-05-10', 'Sun 10 May', 'Sunday 10 May', 'Sun 10 May'],
])('%s is shown in words', (text, usual, long, short) => {
  expect([showDay(day(text)), showDayLong(day(text)), showDayShort(day(text))]).toEqual([usual, long, short]);
});

test('beside a day of another year a day is shown with its own', () => {
  expect(showDay(day('2025-12-31'), day('2026-01-01'))).toBe('Wed 31 December 2025');
  expect(showDayLong(day('2025-12-31'), day('2026-01-01'))).toBe('Wednesday 31 December 2025');
  expect(showDayShort(day('2026-12-31'), day('2026-01-01'))).toBe('Thu 31 Dec');
});

test('days are named as the platform names them in English', () => {
  const named = new Intl.DateTimeFormat('en-US', { timeZone: 'UTC', weekday: 'long', day: 'numeric', month: 'long' });
  fc.assert(
    fc.property(fc.nat(100_000), (number) => {
      const parts = new Map(named.formatToParts(number * 86_400_000).map(({ type, value }) => [type, value]));
      const words = `${parts.get('weekday')} ${parts.get('day')} ${parts.get('month')}`;
      expect(showDayLong(dayFromNumber(number))).toBe(words);
    }),
    { numRuns: 1_000 },
  );
});

test('a time is shown alone on its own day, and with its day beside another', () => {
  const evening = instant('2026-03-03T18:15:59+01:00');
  expect(showClock(evening, berlin)).toBe('18:15');
  expect(showClock(evening, berlin, day('2026-03-03'))).toBe('18:15');
  expect(showClock(evening, berlin, day('2026-03-02'))).toBe('Tue 3 Mar 18:15');
  expect(showClock(evening, berlin, day('2025-12-31'))).toBe('Tue 3 Mar 2026 18:15');
  expect(showInstant(evening, berlin)).toBe('Tue 3 March 18:15');
  expect(showInstant(evening, berlin, day('2025-12-31'))).toBe('Tue 3 March 2026 18:15');
});

test('on the night of a clock change the offset tells the two same times apart', () => {
  const first = instant('2026-10-25T00:30:00Z');
  expect(showClock(first, berlin)).toBe('02:30 (UTC+02:00)');
  expect(showClock(addMinutes(first, 60), berlin)).toBe('02:30 (UTC+01:00)');
  expect(showInstant(addMinutes(first, 60), berlin)).toBe('Sun 25 October 02:30 (UTC+01:00)');
  expect(showClock(instant('2026-10-24T23:30:00+02:00'), berlin)).toBe('23:30');
  expect(showClock(instant('2026-10-26T00:30:00+01:00'), berlin)).toBe('00:30');
  expect(showClock(instant('2026-03-29T03:30:00+02:00'), berlin)).toBe('03:30 (UTC+02:00)');
});

test('an end is shown rounded up to the minute, a moment rounded down', () => {
  expect(showUntil(instant('2026-03-03T18:15:00+01:00'), berlin)).toBe('18:15');
  expect(showUntil(instant('2026-03-03T18:15:00.001+01:00'), berlin)).toBe('18:16');
  expect(showUntil(instant('2026-03-03T23:59:30+01:00'), berlin, day('2026-03-03'))).toBe('Wed 4 Mar 00:00');
  expect(showClock(instant('2026-03-03T18:15:59.999+01:00'), berlin)).toBe('18:15');
});

test('an end is shown at the first whole minute that is not before it, wherever the shop is', () => {
  const places = fc.constantFrom(...Intl.supportedValuesOf('timeZone').map(zone));
  fc.assert(
    fc.property(fc.integer({ min: 600_000_000_000, max: 2_000_000_000_000 }), places, (milliseconds, place) => {
      const end = DateTime.fromMillis(milliseconds, { zone: place });
      const minute = end.startOf('minute');
      const expected = minute.toMillis() === milliseconds ? minute : minute.plus({ minutes: 1 });
      expect(showUntil(instantOf(milliseconds), place).slice(0, 5)).toBe(expected.toFormat('HH:mm'));
    }),
    { numRuns: 1_000 },
  );
});

test('on paper a day has its year, since nobody knows when it will be read', () => {
  expect(['2026-03-03', '2027-12-31'].map((text) => showDayOnPaper(day(text)))).toEqual(['3 Mar 2026', '31 Dec 2027']);
});
