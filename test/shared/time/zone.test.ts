import fc from 'fast-check';
import { DateTime } from 'luxon';
import { Temporal } from 'temporal-polyfill';
import { expect, test } from 'vitest';
import { type Day, dayFromNumber, dayNumber } from '@/shared/time/day';
import { instantOf, instantText } from '@/shared/time/instant';
import { atClock, clockOf, dayOf, readZone, Zone } from '@/shared/time/zone';
import { runs } from '@/test/runs';
import { day, zone } from './typed';

const MINUTE = 60_000;
const NAMES = Intl.supportedValuesOf('timeZone');
const anyZone = fc.constantFrom(...NAMES.map(zone));
const FROM = dayNumber(day('1990-01-01'));
const TO = dayNumber(day('2037-12-31'));
const anyDay = fc.integer({ min: FROM, max: TO }).map(dayFromNumber);
const anyMinute = fc.nat(1_440);

/** What the standard's own arithmetic makes of a wall-clock time. */
function standardAtClock(place: string, on: Day, minute: number): number {
  const wall = Temporal.PlainDate.from(on).toPlainDateTime().add({ minutes: minute });
  return wall.toZonedDateTime(place, { disambiguation: 'compatible' }).epochMilliseconds;
}

function standardClockOf(place: string, moment: number) {
  const { hour, minute, ...wall } = fieldsOf(Temporal.Instant.fromEpochMilliseconds(moment).toZonedDateTimeISO(place));
  return { day: wall.date, minuteOfDay: hour * 60 + minute };
}

const fieldsOf = (wall: Temporal.ZonedDateTime) => ({
  date: wall.toPlainDate().toString(),
  hour: wall.hour,
  minute: wall.minute,
});

/** The changes of a zone's clocks from the beginning of one year to the beginning of another. */
function changesOf(place: string, from: number, to: number): number[] {
  const found: number[] = [];
  let at: Temporal.ZonedDateTime | null = Temporal.Instant.from(`${from}-01-01T00:00Z`).toZonedDateTimeISO(place);
  const end = Date.UTC(to, 0, 1);
  for (;;) {
    at = at.getTimeZoneTransition('next');
    if (at === null || at.epochMilliseconds >= end) return found;
    found.push(at.epochMilliseconds);
  }
}

test('the shop’s clock agrees with the standard’s own arithmetic, anywhere, on any day, at any minute', () => {
  fc.assert(
    fc.property(anyZone, anyDay, anyMinute, (place, on, minute) => {
      const moment = atClock(place, on, minute);
      expect(moment).toBe(standardAtClock(place, on, minute));
      expect(clockOf(place, moment)).toEqual(standardClockOf(place, moment));
    }),
    { numRuns: runs(1_000, 30_000) },
  );
});

test('the shop’s clock agrees with another library, anywhere, on any day, at any minute', () => {
  fc.assert(
    fc.property(anyZone, anyDay, fc.nat(1_439), (place, on, minute) => {
      const moment = atClock(place, on, minute);
      const theirs = DateTime.fromMillis(moment, { zone: place });
      expect(clockOf(place, moment)).toEqual({
        day: theirs.toISODate(),
        minuteOfDay: theirs.hour * 60 + theirs.minute,
      });
      expect(dayOf(place, moment)).toBe(theirs.toISODate());
      // Of a time that comes twice that library picks either one; ours is the first of the two.
      const wall = DateTime.fromISO(`${on}T00:00`, { zone: 'utc' }).plus({ minutes: minute });
      const same = wall.setZone(place, { keepLocalTime: true }).getPossibleOffsets();
      expect(moment).toBe(Math.min(...same.map((one) => one.toMillis())));
    }),
    { numRuns: runs(1_000, 30_000) },
  );
});

test('every zone’s clock is right on both sides of its last changes, and a minute to either side of the gap', () => {
  for (const place of NAMES.map(zone)) {
    for (const change of changesOf(place, 2018, 2030)) {
      for (const minutes of [-61, -31, -1, 0, 1, 29, 59]) {
        const moment = instantOf(change + minutes * MINUTE);
        const clock = clockOf(place, moment);
        expect({ place, change, clock }).toEqual({ place, change, clock: standardClockOf(place, moment) });
        const back = atClock(place, clock.day, clock.minuteOfDay);
        expect({ place, change, minutes, back }).toEqual({
          place,
          change,
          minutes,
          back: standardAtClock(place, clock.day, clock.minuteOfDay),
        });
      }
    }
  }
});

test.each([
  'America/New_York',
  'Europe/Berlin',
  'Australia/Lord_Howe',
  'America/Santiago',
  'Asia/Beirut',
  'Africa/Casablanca',
])('every minute around every clock change of %s from 2024 to 2035 is right', (name) => {
  const place = zone(name);
  const changes = changesOf(name, 2024, 2036);
  expect(changes.length).toBeGreaterThan(20);
  let wrong = 0;
  for (const change of changes) {
    const { day: on, minuteOfDay } = clockOf(place, instantOf(change));
    for (let minute = minuteOfDay - 150; minute <= minuteOfDay + 150; minute++) {
      const shift = Math.floor(minute / 1_440);
      const near = dayFromNumber(dayNumber(on) + shift);
      const local = minute - shift * 1_440;
      const moment = atClock(place, near, local);
      if (moment !== standardAtClock(name, near, local)) wrong++;
      const elapsed = instantOf(change + (minute - minuteOfDay) * MINUTE);
      const [mine, standard] = [clockOf(place, elapsed), standardClockOf(name, elapsed)];
      if (mine.day !== standard.day || mine.minuteOfDay !== standard.minuteOfDay) wrong++;
    }
  }
  expect(wrong).toBe(0);
});

test.each([
  [
    'a skipped time moves forward by the skipped hour',
    'America/New_York',
    '2026-03-08',
    150,
    '2026-03-08T03:30:00-04:00',
  ],
  ['the last minute before the skip stays', 'America/New_York', '2026-03-08', 119, '2026-03-08T01:59:00-05:00'],
  ['a repeated time means the first', 'America/New_York', '2026-11-01', 90, '2026-11-01T01:30:00-04:00'],
  ['after the repeated hour there is only one', 'America/New_York', '2026-11-01', 120, '2026-11-01T02:00:00-05:00'],
  ['half an hour is skipped on an island', 'Australia/Lord_Howe', '2026-10-04', 135, '2026-10-04T02:45:00+11:00'],
  ['half an hour comes twice there', 'Australia/Lord_Howe', '2026-04-05', 105, '2026-04-05T01:45:00+11:00'],
  ['a midnight that is skipped', 'America/Santiago', '2026-09-06', 0, '2026-09-06T01:00:00-03:00'],
  [
    'the midnight that ends a day before one that is skipped',
    'America/Santiago',
    '2026-09-05',
    1_440,
    '2026-09-06T01:00:00-03:00',
  ],
  ['a midnight that is skipped elsewhere', 'Asia/Beirut', '2026-03-29', 15, '2026-03-29T01:15:00+03:00'],
  ['an hour before midnight that comes twice', 'Asia/Beirut', '2026-10-24', 1_410, '2026-10-24T23:30:00+03:00'],
  ['the midnight after it', 'Asia/Beirut', '2026-10-24', 1_440, '2026-10-25T00:00:00+02:00'],
  ['a whole day that is skipped', 'Pacific/Apia', '2011-12-30', 600, '2011-12-31T10:00:00+14:00'],
  ['the day before it', 'Pacific/Apia', '2011-12-29', 600, '2011-12-29T10:00:00-10:00'],
  ['the midnight that ends the day before it', 'Pacific/Apia', '2011-12-29', 1_440, '2011-12-31T00:00:00+14:00'],
  ['half hours ahead all year', 'Asia/Kolkata', '2026-07-01', 0, '2026-07-01T00:00:00+05:30'],
  ['quarter hours ahead all year', 'Asia/Kathmandu', '2026-07-01', 1_050, '2026-07-01T17:30:00+05:45'],
  ['winter time in summer', 'Europe/Dublin', '2026-01-15', 720, '2026-01-15T12:00:00+00:00'],
])('%s: %s %s, minute %d, is %s', (_, name, on, minute, written) => {
  expect(instantText(atClock(zone(name), day(on), minute), zone(name))).toBe(written);
});

test('a day ends when the next one begins', () => {
  fc.assert(
    fc.property(anyZone, anyDay, (place, on) => {
      const next = dayFromNumber(dayNumber(on) + 1);
      expect(atClock(place, on, 1_440)).toBe(atClock(place, next, 0));
    }),
    { numRuns: runs(700, 20_000) },
  );
});

test('a later time on the wall is never an earlier instant, except inside a skip', () => {
  fc.assert(
    fc.property(anyZone, anyDay, anyMinute, anyMinute, (place, on, a, b) => {
      const [first, second] = [atClock(place, on, Math.min(a, b)), atClock(place, on, Math.max(a, b))];
      const kept = clockOf(place, first).minuteOfDay === Math.min(a, b);
      expect(first <= second || !kept).toBe(true);
    }),
    { numRuns: runs(700, 20_000) },
  );
});

test.each([
  'America/New_York',
  'Europe/Berlin',
  'Pacific/Apia',
  'UTC',
  'Asia/Calcutta',
  'US/Eastern',
  'america/new_york',
])('%s is a zone, kept as it was typed', (name) => {
  expect(readZone(name)).toEqual({ ok: true, value: name });
  expect(Zone.parse(name)).toBe(name);
});

test.each(['+02:00', '-05:00', '+02', '02:00', '−05:00'])('%s is refused: an offset knows no summer time', (text) => {
  const message = `"${text}" is an offset, which knows no summer time. Name the place, such as "America/New_York".`;
  expect(readZone(text)).toEqual({ ok: false, message });
  expect(Zone.safeParse(text).error?.issues.map((issue) => issue.message)).toEqual([message]);
});

test.each(['', 'New York', 'America/Newyork', 'Eastern time', ' America/New_York', 'UTC+2', 'America/New_York\n'])(
  '%j is refused as a zone, with what to write instead',
  (text) => {
    const message = `"${text}" is not a time zone. Write a region and a city, such as "America/New_York" or "Europe/Berlin".`;
    expect(readZone(text)).toEqual({ ok: false, message });
  },
);

test.each([-1, 1_441, 0.5, Number.NaN])('minute %d is not in a day', (minute) => {
  expect(() => atClock(zone('UTC'), day('2026-03-03'), minute)).toThrow(RangeError);
});

test('more zones, days and minutes than are remembered still come out right', () => {
  // Spelled in many ways, a zone stays the same zone.
  const spellings = Array.from({ length: 300 }, (_, bits) =>
    [...'europe/berlin'].map((letter, place) => ((bits >> place) & 1 ? letter.toUpperCase() : letter)).join(''),
  );
  for (const spelling of spellings) {
    expect(instantText(atClock(zone(spelling), day('2026-07-01'), 720), zone(spelling))).toBe(
      '2026-07-01T12:00:00+02:00',
    );
  }
  const place = zone('Europe/Berlin');
  for (let number = 4_000; number < 50_000; number++) atClock(place, dayFromNumber(number), 720);
  expect(instantText(atClock(place, day('2026-12-01'), 720), place)).toBe('2026-12-01T12:00:00+01:00');
});
