import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { isQuiet } from '@/lib/engine/alerts/quiet-hours';
import { instantOf, readInstant } from '@/shared/time/instant';
import { Zone } from '@/shared/time/zone';

const NEW_YORK = Zone.parse('America/New_York');
const at = (text: string) => {
  const reading = readInstant(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

test.each([
  ['21:59', false],
  ['22:00', true],
  ['23:59', true],
  ['00:00', true],
  ['05:59', true],
  ['06:00', false],
  ['12:00', false],
])('with quiet hours across midnight, %s is quiet: %s', (time, quiet) => {
  expect(isQuiet({ from: 22 * 60, until: 6 * 60 }, NEW_YORK, at(`2026-06-10T${time}:00-04:00`))).toBe(quiet);
});

test('quiet hours of one day begin and end in it', () => {
  const noon = { from: 12 * 60, until: 14 * 60 };
  expect(
    ['11:59', '12:00', '13:59', '14:00'].map((time) => isQuiet(noon, NEW_YORK, at(`2026-06-10T${time}:00-04:00`))),
  ).toEqual([...[false, true, true, false]]);
});

test('without quiet hours nothing is held', () => {
  expect(isQuiet(null, NEW_YORK, at('2026-06-10T03:00:00-04:00'))).toBe(false);
});

test.each(['2026-03-07', '2026-10-31'])(
  'in a night in which the clocks change, the wall decides, minute by minute',
  (day) => {
    const start = DateTime.fromISO(`${day}T18:00`, { zone: NEW_YORK });
    for (let minute = 0; minute < 18 * 60; minute += 1) {
      const moment = start.plus({ minutes: minute });
      const wall = moment.hour * 60 + moment.minute;
      const expected = wall >= 22 * 60 || wall < 2 * 60 + 30;
      const found = isQuiet({ from: 22 * 60, until: 2 * 60 + 30 }, NEW_YORK, instantOf(moment.toMillis()));
      expect({ moment: moment.toISO(), found }).toEqual({ moment: moment.toISO(), found: expected });
    }
  },
);
