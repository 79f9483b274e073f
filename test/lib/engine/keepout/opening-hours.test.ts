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

const opening = (earliest: number) =>
  fc
    .tuple(fc.integer({ min: earliest, max: 1_400 }), fc.integer({ min: 1, max: 600 }))
    .map(([opens, length]): [number, number] => [opens, Math.min(opens + length, MINUTES_IN_DAY)]);

/** Opening hours from some time of day on; on each weekday one opening or none. */
const hoursFrom = (earliest: number): fc.Arbitrary<OpeningHours> =>
  fc
    .tuple(...WEEKDAYS.map(() => fc.array(opening(earliest), { maxLength: 1 })))
    .map((days) => Object.fromEntries(WEEKDAYS.map((name, at) => [name, days[at] ?? []])) as OpeningHours);

/** A closed time that starts within a day and a half of a change of the clocks. */
const closedTime = fc.record({
  wall: fc.constantFrom(...walls),
  offset: fc.integer({ min: -36 * 60, max: 36 * 60 }),
  length: fc.oneof(fc.integer({ min: 0, max: 1_500 }), fc.integer({ min: 0, max: 9_000 })),
});

const spanOf = ({ wall, offset, length }: { wall: (typeof walls)[number]; offset: number; length: number }) => {
  const from = instantOf(wall.from + (DAYS_BEFORE * MINUTES_IN_DAY + offset) * MINUTE);
  return { from, to: addMinutes(from, length) };
};

test('a closed time meets opening hours exactly when one of its minutes reads as open on the wall', () => {
  fc.assert(
    // No clock changes after 04:00, so hours from then on are never skipped nor repeated.
    fc.property(closedTime, hoursFrom(240), (closed, openingHours) => {
      const zone = zoneOf(closed.wall.zone);
      const span = spanOf(closed);
      const found = openingDuring(openingsOf({ zone, openingHours }), span, dayNumber(dayOf(zone, span.from)));
      expect(found !== null).toBe(openingsOn(closed.wall, openingHours, span.from, 7)(span.from, span.to));
    }),
    { numRuns: 2_000 },
  );
});

test('whatever the clocks do at night, a closed minute that reads as open is never missed', () => {
  fc.assert(
    fc.property(closedTime, hoursFrom(0), (closed, openingHours) => {
      const zone = zoneOf(closed.wall.zone);
      const span = spanOf(closed);
      const found = openingDuring(openingsOf({ zone, openingHours }), span, dayNumber(dayOf(zone, span.from)));
      if (openingsOn(closed.wall, openingHours, span.from, 7)(span.from, span.to)) expect(found).not.toBeNull();
    }),
    { numRuns: 2_000 },
  );
});

test('the clear starts are clear, nothing nearer is, and the last in time for the next opening is the last', () => {
  const DAY = MINUTES_IN_DAY * MINUTE;
  fc.assert(
    fc.property(closedTime, hoursFrom(240), fc.integer({ min: 0, max: 15 }), (closed, openingHours, daysToCome) => {
      const zone = zoneOf(closed.wall.zone);
      const planned = spanOf(closed);
      const length = planned.to - planned.from;
      const overlaps = openingsOn(closed.wall, openingHours, planned.from, 28);
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
