import { expect, test } from 'vitest';
import { clearStarts } from '@/lib/engine/keepout/clear-starts';
import { openingsOf } from '@/lib/engine/keepout/opening-hours';
import { addMinutes, type Instant, readInstant } from '@/shared/time/instant';
import { smallShop } from '../rules/small-shop';
import { WEEKDAYS } from './wall-clock-minutes';

const at = (text: string): Instant => {
  const reading = readInstant(`${text}:00Z`);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

/** The clear starts of a closed time on a shop that opens so every day; the clock is UTC. */
function startsFor(openings: [string, string][], start: string, minutes: number, earliest = '2026-02-20T00:00') {
  const openingHours = Object.fromEntries(WEEKDAYS.map((name) => [name, openings]));
  const shop = smallShop({ settings: { openingHours } });
  const planned = { from: at(start), to: addMinutes(at(start), minutes) };
  return clearStarts(openingsOf(shop), shop.zone, planned, at(earliest));
}

const DAYTIME: [string, string][] = [['09:00', '18:00']];
const WITH_LUNCH: [string, string][] = [
  ['09:00', '12:00'],
  ['13:00', '18:00'],
];

test('an hour fits a lunch hour exactly, from either side', () => {
  expect(startsFor(WITH_LUNCH, '2026-03-03T11:30', 60).after).toBe(at('2026-03-03T12:00'));
  expect(startsFor(WITH_LUNCH, '2026-03-03T13:30', 60).before).toBe(at('2026-03-03T12:00'));
  expect(startsFor(WITH_LUNCH, '2026-03-03T11:30', 61).after).toBe(at('2026-03-03T18:00'));
  expect(startsFor(WITH_LUNCH, '2026-03-03T13:30', 61).before).toBe(at('2026-03-03T07:59'));
});

test('a start before is named only while it is still to come', () => {
  const before = (earliest: string) => startsFor(DAYTIME, '2026-03-03T21:00', 750, earliest).before;
  expect(before('2026-03-03T20:30')).toBe(at('2026-03-03T20:30'));
  expect(before('2026-03-03T20:31')).toBeNull();
});

test('a start in time for the next opening is named only while it is still to come', () => {
  const inTime = (earliest: string) => startsFor(DAYTIME, '2026-03-03T21:00', 750, earliest).inTime;
  expect(inTime('2026-03-03T20:30')).toEqual({ opening: at('2026-03-04T09:00'), start: at('2026-03-03T20:30') });
  expect(inTime('2026-03-03T20:31')).toEqual({ opening: at('2026-03-04T09:00'), start: null });
});

test('a start at the very opening looks to the next one', () => {
  expect(startsFor(DAYTIME, '2026-03-03T09:00', 60).inTime).toEqual({
    opening: at('2026-03-04T09:00'),
    start: at('2026-03-04T08:00'),
  });
});

test('a shop that never shuts has no clear start and no next opening', () => {
  expect(startsFor([['00:00', '24:00']], '2026-03-03T21:00', 1)).toEqual({ before: null, after: null, inTime: null });
});
