import fc from 'fast-check';
import { DateTime } from 'luxon';
import { expect, test } from 'vitest';
import { addMinutes, Instant, instantOf, instantText, readCalendarInstant, readInstant } from '@/shared/time/instant';
import { atClock, clockOf } from '@/shared/time/zone';
import { day, instant, zone } from './typed';

const RUNS = { numRuns: 2_000 };
const FIRST = 86_400_000;
const LAST = 253_402_214_399_999;
const ZONES = Intl.supportedValuesOf('timeZone').map(zone);
const anyZone = fc.constantFrom(...ZONES);
/** Moments of four centuries, and of all the years there are. */
const moment = fc.oneof(fc.integer({ min: FIRST, max: 12_000_000_000_000 }), fc.integer({ min: FIRST, max: LAST }));

test('an instant written in any zone is read back as the same instant', () => {
  fc.assert(
    fc.property(moment, anyZone, (milliseconds, place) => {
      const text = instantText(instantOf(milliseconds), place);
      expect(readCalendarInstant(text)).toEqual({ ok: true, value: milliseconds });
    }),
    RUNS,
  );
});

test('an instant is written as another library writes it', () => {
  fc.assert(
    fc.property(fc.integer({ min: 631_152_000_000, max: 2_145_916_800_000 }), anyZone, (milliseconds, place) => {
      const theirs = DateTime.fromMillis(milliseconds, { zone: place }).toISO({ suppressMilliseconds: true });
      expect(instantText(instantOf(milliseconds), place)).toBe(theirs?.replace(/Z$/, '+00:00'));
    }),
    RUNS,
  );
});

test.each([
  ['2026-07-06T21:15:00+02:00', 'Europe/Berlin', '2026-07-06T21:15:00+02:00'],
  ['2026-07-06T19:15:00Z', 'Europe/Berlin', '2026-07-06T21:15:00+02:00'],
  ['2026-02-24T22:30Z', 'America/New_York', '2026-02-24T17:30:00-05:00'],
  ['2026-02-24T22:30:00.5Z', 'UTC', '2026-02-24T22:30:00.500+00:00'],
  ['2026-02-24T22:30:00,250000Z', 'UTC', '2026-02-24T22:30:00.250+00:00'],
  ['2026-02-24t22:30:00z', 'Asia/Kolkata', '2026-02-25T04:00:00+05:30'],
  ['2026-02-24T22:30:00-03', 'UTC', '2026-02-25T01:30:00+00:00'],
  ['2026-11-01T01:30:00-04:00', 'America/New_York', '2026-11-01T01:30:00-04:00'],
  ['2026-11-01T01:30:00-05:00', 'America/New_York', '2026-11-01T01:30:00-05:00'],
  ['1971-01-01T00:44:30Z', 'Africa/Monrovia', '1971-01-01T00:00:00-00:44:30'],
])('%s in %s is %s', (text, place, written) => {
  expect(instantText(instant(text), zone(place))).toBe(written);
});

test.each([
  ['2026-07-06T21:15:00', '"2026-07-06T21:15:00" does not say where that clock is. Add Z for UTC, or the offset'],
  ['2026-07-06T21:15', '"2026-07-06T21:15" does not say where that clock is. Add Z for UTC, or the offset'],
  ['2026-07-06', '"2026-07-06" is not a date and time.'],
  ['2026-07-06 21:15:00Z', '"2026-07-06 21:15:00Z" is not a date and time.'],
  ['2026-07-06T24:00:00Z', '"2026-07-06T24:00:00Z" is not a date and time.'],
  ['2026-07-06T21:60:00Z', '"2026-07-06T21:60:00Z" is not a date and time.'],
  ['2016-12-31T23:59:60Z', '"2016-12-31T23:59:60Z" ends in an offset that cannot be read.'],
  ['2026-02-30T21:15:00Z', '"2026-02-30T21:15:00Z" names a day that does not exist.'],
  ['2026-07-06T21:15:00+24:00', '"2026-07-06T21:15:00+24:00" ends in an offset that cannot be read.'],
  ['2026-07-06T21:15:00+0200', '"2026-07-06T21:15:00+0200" ends in an offset that cannot be read.'],
  ['2026-07-06T21:15:00 EST', '"2026-07-06T21:15:00 EST" ends in an offset that cannot be read.'],
  ['2026-07-06T21:15:00.1234Z', '"2026-07-06T21:15:00.1234Z" is finer than a thousandth of a second.'],
  ['1970-01-01T12:00:00Z', '"1970-01-01T12:00:00Z" is too far away. Give a year from 1971 to 2999.'],
  ['9999-12-31T00:00:00Z', '"9999-12-31T00:00:00Z" is too far away. Give a year from 1971 to 2999.'],
  ['1971-01-01T13:59:59+14:00', '"1971-01-01T13:59:59+14:00" is too far away.'],
  ['2999-12-31T12:00:00-12:00', '"2999-12-31T12:00:00-12:00" is too far away.'],
  ['0000-01-01T00:00:00Z', '"0000-01-01T00:00:00Z" is too far away. Give a year from 1971 to 2999.'],
  ['', '"" is not a date and time.'],
  ['1770000000000', '"1770000000000" is not a date and time.'],
])('%j is refused as an instant, with what to write instead', (text, beginning) => {
  const reading = readInstant(text);
  expect(reading.ok ? 'read' : reading.message.slice(0, beginning.length)).toBe(beginning);
  expect(reading.ok ? '' : reading.message).toMatch(/(Write|Add|Give) .*\.$/);
});

test('minutes added are minutes that pass, through every change of the clocks', () => {
  fc.assert(
    fc.property(moment, fc.integer({ min: 0, max: 60 * 24 * 400 }), anyZone, (milliseconds, minutes, place) => {
      fc.pre(milliseconds + minutes * 60_000 <= LAST);
      const before = instantOf(milliseconds);
      const after = addMinutes(before, minutes);
      expect(after - before).toBe(minutes * 60_000);
      // The wall clock may have moved by more or less than that, but only by what the offset moved.
      expect(wallOf(after, place) - wallOf(before, place)).toBe(
        after - before + offsetOf(after, place) - offsetOf(before, place),
      );
    }),
    RUNS,
  );
});

const theirs = (moment: Instant, place: string) => DateTime.fromMillis(moment, { zone: place });
const wallOf = (moment: Instant, place: string) =>
  theirs(moment, place).setZone('utc', { keepLocalTime: true }).toMillis();
const offsetOf = (moment: Instant, place: string) => theirs(moment, place).offset * 60_000;

test('twelve hours of keep-out over the spring change end an hour later on the wall, over the autumn change an hour earlier', () => {
  const place = zone('America/New_York');
  const ending = (date: string) => instantText(addMinutes(atClock(place, day(date), 20 * 60), 12 * 60), place);
  expect(ending('2026-03-07')).toBe('2026-03-08T09:00:00-04:00');
  expect(ending('2026-10-31')).toBe('2026-11-01T07:00:00-05:00');
  expect(ending('2026-06-01')).toBe('2026-06-02T08:00:00-04:00');
});

test('whole days of elapsed hours keep the wall clock where the clocks do not change', () => {
  const place = zone('Asia/Kolkata');
  fc.assert(
    fc.property(fc.integer({ min: FIRST, max: 4_000_000_000_000 }), fc.nat(400), (milliseconds, days) => {
      const before = clockOf(place, instantOf(milliseconds));
      expect(clockOf(place, addMinutes(instantOf(milliseconds), days * 1_440)).minuteOfDay).toBe(before.minuteOfDay);
    }),
    RUNS,
  );
});

test('part of a minute, and a moment out of range, are errors and not nearby moments', () => {
  expect(() => addMinutes(instantOf(FIRST), 0.5)).toThrow(RangeError);
  expect(() => addMinutes(instantOf(LAST), 1)).toThrow(RangeError);
  expect(() => instantOf(Number.NaN)).toThrow(RangeError);
  expect(Instant.safeParse(FIRST - 1).success).toBe(false);
  expect(Instant.safeParse(LAST).success).toBe(true);
});
