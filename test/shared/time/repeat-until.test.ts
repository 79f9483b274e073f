import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, dayFromNumber } from '@/shared/time/day';
import { instantText } from '@/shared/time/instant';
import { occurrences, settleUntil, untilDay } from '@/shared/time/recurrence';
import { atClock } from '@/shared/time/zone';
import { day, repeat, zone } from './typed';

const RUNS = { numRuns: 2_000 };

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
