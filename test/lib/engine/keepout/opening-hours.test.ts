import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clearStarts } from '@/lib/engine/keepout/clear-starts';
import { openingDuring, openingsOf } from '@/lib/engine/keepout/opening-hours';
import { dayNumber } from '@/shared/time/day';
import { addMinutes, instantOf } from '@/shared/time/instant';
import { dayOf, readZone, type Zone } from '@/shared/time/zone';
import { CHANGES, MINUTE, MINUTES_IN_DAY, type OpeningHours, openingsOn, WEEKDAYS, wallOf } from './wall-clock-minutes';

const zoneOf = (name: string): Zone => {
  const reading = readZone(name);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

const DAYS_BEFORE = 30;
const walls = CHANGES.map(([zone, on]) => {
  const first = new Date(Date.parse(`${on}T00:00:00Z`) - DAYS_BEFORE * MINUTES_IN_DAY * MINUTE);
  return wallOf(zone, first.toISOString().slice(0, 10), 2 * DAYS_BEFORE);
});

const opening = fc
  .tuple(fc.integer({ min: 0, max: 1_400 }), fc.integer({ min: 1, max: 600 }))
  .map(([opens, length]): [number, number] => [opens, Math.min(opens + length, MINUTES_IN_DAY)]);

/** On each weekday one opening or none, at night too, when clocks change. */
const anyHours: fc.Arbitrary<OpeningHours> = fc
  .tuple(...WEEKDAYS.map(() => fc.array(opening, { maxLength: 1 })))
  .map((days) => Object.fromEntries(WEEKDAYS.map((name, at) => [name, days[at] ?? []])) as OpeningHours);

/** A closed time that starts within a day and a half of a change of the clocks. */
const closedTime = fc.record({
  place: fc.nat(CHANGES.length - 1),
  offset: fc.integer({ min: -36 * 60, max: 36 * 60 }),
  length: fc.oneof(fc.integer({ min: 0, max: 1_500 }), fc.integer({ min: 0, max: 9_000 })),
});

/** The wall that a closed time is read from, its zone, and its two ends. */
function placed({ place, offset, length }: { place: number; offset: number; length: number }) {
  const wall = walls[place];
  if (!wall) throw new Error('there is a wall for every change');
  const from = instantOf(wall.from + (DAYS_BEFORE * MINUTES_IN_DAY + offset) * MINUTE);
  return { wall, zone: zoneOf(wall.zone), span: { from, to: addMinutes(from, length) } };
}

test('a closed time meets opening hours exactly when one of its minutes reads as open on the wall', () => {
  fc.assert(
    fc.property(closedTime, anyHours, (closed, openingHours) => {
      const { wall, zone, span } = placed(closed);
      const found = openingDuring(openingsOf({ zone, openingHours }), span, dayNumber(dayOf(zone, span.from)));
      expect(found !== null).toBe(openingsOn(wall, openingHours, span.from, 7)(span.from, span.to));
    }),
    { numRuns: 2_000 },
  );
});

test('the clear starts are clear, nothing nearer is, and the last in time for the next opening is the last', () => {
  const DAY = MINUTES_IN_DAY * MINUTE;
  fc.assert(
    fc.property(closedTime, anyHours, fc.integer({ min: 0, max: 15 }), (closed, openingHours, daysToCome) => {
      const { wall, zone, span: planned } = placed(closed);
      const length = planned.to - planned.from;
      const overlaps = openingsOn(wall, openingHours, planned.from, 28);
      if (!overlaps(planned.from, planned.to)) return;
      const earliest = instantOf(planned.from - daysToCome * DAY);
      const { before, after, inTime } = clearStarts(openingsOf({ zone, openingHours }), zone, planned, earliest);

      const isClear = (start: number) => !overlaps(start, start + length);
      const first = Math.max(earliest, planned.from - 14 * DAY);
      const nearest = (from: number, to: number, step: number): number | null => {
        for (let start = from; step > 0 ? start <= to : start >= to; start += step) if (isClear(start)) return start;
        return null;
      };
      expect(before).toBe(nearest(planned.from - MINUTE, first, -MINUTE));
      expect(after).toBe(nearest(planned.from + MINUTE, planned.from + 14 * DAY, MINUTE));

      let opens = planned.from + MINUTE;
      while (!overlaps(opens, opens + MINUTE) || overlaps(opens - MINUTE, opens)) opens += MINUTE;
      const start = opens - length;
      expect(inTime).toEqual({ opening: opens, start: start >= first && isClear(start) ? start : null });
    }),
    { numRuns: 1_000 },
  );
});
