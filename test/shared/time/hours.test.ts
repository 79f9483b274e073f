import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Minutes, minutes } from '@/shared/quantity/amounts';
import { hoursForDown, hoursForUp, minutesDown, minutesUp } from '@/shared/time/hours';

test.each([
  { hours: 0, up: 0, down: 0 },
  { hours: 0.01, up: 1, down: 0 },
  { hours: 12, up: 720, down: 720 },
  { hours: 12.5, up: 750, down: 750 },
  { hours: 1.1, up: 66, down: 66 },
  { hours: 12.083333, up: 725, down: 724 },
  { hours: 1e-7, up: 1, down: 0 },
])('$hours hours are $up minutes as an interval and $down minutes as a limit', ({ hours, up, down }) => {
  expect({ up: minutesUp(hours), down: minutesDown(hours) }).toEqual({ up, down });
});

test('every interval up to two weeks is written as hours that read back to it', () => {
  for (let each = 0; each <= 20_000; each++) {
    if (minutesUp(hoursForUp(minutes(each))) !== each) throw new Error(`interval of ${each} minutes`);
    if (minutesDown(hoursForDown(minutes(each))) !== each) throw new Error(`limit of ${each} minutes`);
  }
  expect(hoursForUp(725 as Minutes)).toBe(12.083333);
  expect(hoursForDown(725 as Minutes)).toBe(12.083334);
});

test('no interval is ever shortened, and no limit lengthened', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 8_784, noNaN: true }), (hours) => {
      expect(minutesUp(hours)).toBeGreaterThanOrEqual(hours * 60 * (1 - Number.EPSILON));
      expect(minutesUp(hours) - hours * 60).toBeLessThan(1.000001);
      expect(minutesDown(hours)).toBeLessThanOrEqual(hours * 60 * (1 + Number.EPSILON));
    }),
    { numRuns: 2_000 },
  );
});
