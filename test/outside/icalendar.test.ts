import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { calendarFile, utcTime } from '@/shared/ical/calendar-file';
import { contentLine, textValue } from '@/shared/ical/content-line';
import { readInstant } from '@/shared/time/instant';

/*
 * The calendar file against RFC 5545, Internet Calendaring and Scheduling Core Object Specification,
 * https://www.rfc-editor.org/rfc/rfc5545
 */

const instant = (text: string) => {
  const reading = readInstant(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

const EVENT = {
  uid: 'a@b',
  startsAt: instant('2026-03-01T09:00:00Z'),
  endsAt: instant('2026-03-01T10:00:00Z'),
  ...{ summary: 'Spray', description: '', cancelled: false, sequence: 3 },
  changedAt: instant('2026-02-28T08:00:00Z'),
};

test('a line has at most 75 octets, so a further one carries 74 beside its space (section 3.1)', () => {
  const [first, second, third] = contentLine('X', 'a'.repeat(300)).split('\r\n');
  expect(first).toHaveLength(75);
  expect(second).toMatch(/^ a{74}$/);
  expect(third).toMatch(/^ a{74}$/);
});

test('the folded example of section 3.1 reads as its text says, and so does ours for an independent reader', () => {
  const folded = 'DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n';
  const words = 'This is a long description that exists on a long line.';
  const read = (lines: string) =>
    ICAL.Component.fromString(`BEGIN:VEVENT\r\n${lines}END:VEVENT`).getFirstPropertyValue('description');
  expect(read(folded)).toBe(words);
  expect(read(contentLine('DESCRIPTION', textValue(`${words} ${words}`)))).toBe(`${words} ${words}`);
});

test('a backslash, a semicolon, a comma and a line break are escaped (section 3.3.11)', () => {
  expect(textValue('a;b,c\\d\ne')).toBe('a\\;b\\,c\\\\d\\ne');
});

test('a time in UTC is written YYYYMMDDTHHMMSSZ (section 3.3.5, form 2)', () => {
  // The example of the section itself.
  expect(utcTime(instant('1998-01-19T07:00:00Z'))).toBe('19980119T070000Z');
});

test('what a calendar and an event must have is there, once (sections 3.6 and 3.6.1, the list from memory)', () => {
  const lines = calendarFile('Shop', [EVENT]).split('\r\n');
  for (const name of ['UID', 'DTSTAMP', 'DTSTART', 'PRODID', 'VERSION']) {
    expect({ name, times: lines.filter((line) => line.startsWith(`${name}:`)).length }).toEqual({ name, times: 1 });
  }
  expect(lines.filter((line) => line === 'VERSION:2.0')).toHaveLength(1);
});

test('a calendar has at least one component, also when there is no event (section 3.6)', () => {
  const calendar = ICAL.Component.fromString(calendarFile('Shop', []));
  expect(calendar.getAllSubcomponents()).toHaveLength(1);
  expect(calendar.getAllSubcomponents('vevent')).toHaveLength(0);
});

test('an end comes after its start, and what lasts no time has none (section 3.8.2.2)', () => {
  const at = (endsAt: typeof EVENT.endsAt) => calendarFile('Shop', [{ ...EVENT, endsAt }]);
  expect(at(EVENT.endsAt)).toContain('DTEND:20260301T100000Z');
  expect(at(instant('2026-03-01T09:00:01Z'))).toContain('DTEND:20260301T090100Z');
  expect(at(EVENT.startsAt)).not.toContain('DTEND');
});
