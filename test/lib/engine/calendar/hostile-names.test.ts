import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { shopCalendar } from '@/lib/engine/calendar/shop-calendar';
import { calendarFile } from '@/shared/ical/calendar-file';
import { instantOf } from '@/shared/time/instant';
import { figure } from '@/test/promises/figure';
import { bench, day, once, recipe, smallShop } from '../rules/small-shop';

const BEGINNINGS = [
  ...['', '\n', '\r', '\r\n', '\r\n ', '\\', '\\n', ';', ',', ':', '"', '\u2028', '\u0085', '\0', '\t', 'é', '🌱'],
  ...['=', 'a'.repeat(74), '漢'.repeat(25), '\ud83c'],
];
const ENDINGS = [
  'BEGIN:VEVENT',
  'END:VEVENT\r\nEND:VCALENDAR',
  'DTSTART:19700101T000000Z',
  '\r\nUID:other',
  'END:VEVENT\nBEGIN:VEVENT\nUID:x\nDTSTART:19700101T000000Z\nEND:VEVENT',
  'ATTACH:http://127.0.0.1/',
  ';VALUE=DATE:20260101',
  'plain',
  'a\\;b\\,c\\\\d\\ne',
  '<script>alert(1)</script>',
  '%0d%0aBEGIN:VALARM',
  '"quoted, and; more"',
  '👩‍🌾'.repeat(12),
  '\u202Egnirps',
  `${' '.repeat(80)}x`,
];
const HOSTILE = BEGINNINGS.flatMap((first) => ENDINGS.map((rest) => first + rest));

/** What an independent reader may find of some words: breaks of lines are one, and what no file holds is gone. */
const legible = (words: string): string =>
  words.replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n').replace(/[^\P{Cc}\t\n]|\p{Cs}/gu, '');

const shop = smallShop({
  benches: [bench('b1')],
  recipes: [recipe('r1', 'p1')],
  programs: [once('g1', '2026-03-03')],
});
const now = instantOf(Date.UTC(2026, 2, 2, 12));
const facts = {
  ...{ shopId: 's', createdOn: day('2026-01-01'), revision: 1, changedAt: now, now, today: day('2026-03-02') },
  inDoubt: false,
};

test('there are 300 hostile names and more', () => {
  expect(new Set(HOSTILE).size).toBeGreaterThanOrEqual(300);
});

test('whatever a bench, a recipe and the shop are called, the calendar has the same events, and says the name', () => {
  const calm = shopCalendar(shop, facts, 2).length;
  for (const name of HOSTILE) {
    for (const one of shop.benches) one.name = name;
    for (const one of shop.recipes) one.name = name;
    const calendar = ICAL.Component.fromString(calendarFile(name, shopCalendar(shop, facts, 2)));
    const events = calendar.getAllSubcomponents('vevent');
    expect({ name, events: events.length, all: calendar.getAllSubcomponents().length }).toEqual({
      ...{ name, events: calm, all: calm },
    });
    const [spraying] = events.map((event) => String(event.getFirstPropertyValue('summary')));
    expect(spraying).toBe(`Spray ${legible(name)} on ${legible(name)}`);
    expect(events.flatMap((event) => event.getAllProperties('attach'))).toEqual([]);
  }
  figure(29, `${HOSTILE.length} names in a calendar: the same events each time`);
});
