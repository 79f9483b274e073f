import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clearStarts } from '@/lib/engine/keepout/clear-starts';
import { openingDuring, openingsOf } from '@/lib/engine/keepout/opening-hours';
import { addDays, Day, dayNumber } from '@/shared/time/day';
import { addMinutes, instantOf } from '@/shared/time/instant';
import { dayOf, readZone, type Zone } from '@/shared/time/zone';
import { runs } from '@/test/runs';
import { CHANGES, MINUTE, MINUTES_IN_DAY, type OpeningHours, openingsOn, WEEKDAYS, wallOf } from './wall-clock-minutes';

const zoneOf = (name: string): Zone => {
  const reading = readZone(name);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

const DAYS_BEFORE = 40;
/** How far a search reads the wall, either way. */
const DAYS_AROUND = 34;
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

/** A run of holidays around the change, and a day or two with hours of their own. */
const anySpecialDays = fc.record({
  away: fc.option(fc.record({ from: fc.integer({ min: -20, max: 10 }), days: fc.integer({ min: 1, max: 25 }) })),
  own: fc.array(fc.tuple(fc.integer({ min: -12, max: 12 }), opening), { maxLength: 2 }),
});

function specialDaysOf(
  change: string,
  { away, own }: { away: { from: number; days: number } | null; own: [number, [number, number]][] },
) {
  const special = new Map<Day, { name: string | null; hours: [number, number][] }>();
  const on = (days: number): Day => addDays(Day.parse(change), days);
  for (let day = 0; day < (away?.days ?? 0); day += 1)
    special.set(on((away?.from ?? 0) + day), { name: null, hours: [] });
  for (const [days, hours] of own) special.set(on(days), { name: 'Fair', hours: [hours] });
  return special;
}

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
  const change = CHANGES[place]?.[1] ?? '';
  return { wall, change, zone: zoneOf(wall.zone), span: { from, to: addMinutes(from, length) } };
}

test('a closed time meets opening hours exactly when one of its minutes reads as open on the wall', () => {
  fc.assert(
    fc.property(closedTime, anyHours, anySpecialDays, (closed, openingHours, days) => {
      const { wall, change, zone, span } = placed(closed);
      const specialDays = specialDaysOf(change, days);
      const openings = openingsOf({ zone, openingHours, specialDays });
      const found = openingDuring(openings, span, dayNumber(dayOf(zone, span.from)));
      expect(found !== null).toBe(openingsOn(wall, openingHours, specialDays, span.from, 7)(span.from, span.to));
    }),
    { numRuns: runs(500, 20_000) },
  );
});

test('the clear starts are clear, nothing nearer is, and the last in time for the next opening is the last', () => {
  const DAY = MINUTES_IN_DAY * MINUTE;
  fc.assert(
    fc.property(
      closedTime,
      anyHours,
      anySpecialDays,
      fc.integer({ min: 0, max: 15 }),
      (closed, openingHours, days, daysToCome) => {
        const { wall, change, zone, span: planned } = placed(closed);
        const specialDays = specialDaysOf(change, days);
        const length = planned.to - planned.from;
        const overlaps = openingsOn(wall, openingHours, specialDays, planned.from, DAYS_AROUND);
        if (!overlaps(planned.from, planned.to)) return;
        const earliest = instantOf(planned.from - daysToCome * DAY);
        const { before, after, inTime } = clearStarts(
          openingsOf({ zone, openingHours, specialDays }),
          zone,
          planned,
          earliest,
        );

        const isClear = (start: number) => !overlaps(start, start + length);
        const first = Math.max(earliest, planned.from - 14 * DAY);
        const nearest = (from: number, to: number, step: number): number | null => {
          for (let start = from; step > 0 ? start <= to : start >= to; start += step) if (isClear(start)) return start;
          return null;
        };
        expect(before).toBe(nearest(planned.from - MINUTE, first, -MINUTE));
        expect(after).toBe(nearest(planned.from + MINUTE, planned.from + 14 * DAY, MINUTE));

        let opens = planned.from + MINUTE;
        const opensAt = (at: number) => overlaps(at, at + MINUTE) && !overlaps(at - MINUTE, at);
        while (opens < planned.from + 29 * DAY && !opensAt(opens)) opens += MINUTE;
        // Beyond a month away the next opening is not looked for.
        if (!opensAt(opens)) return;
        const start = opens - length;
        expect(inTime).toEqual({ opening: opens, start: start >= first && isClear(start) ? start : null });
      },
    ),
    { numRuns: runs(300, 10_000) },
  );
});
