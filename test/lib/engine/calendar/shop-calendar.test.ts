import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import type { CalendarFacts } from '@/lib/engine/calendar/calendar-facts';
import { shopCalendar } from '@/lib/engine/calendar/shop-calendar';
import type { Shop } from '@/lib/engine/shop';
import { calendarFile } from '@/shared/ical/calendar-file';
import { readInstant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import {
  application,
  bench,
  day,
  type Fields,
  once,
  product,
  recipe,
  type SmallShop,
  smallShop,
} from '../rules/small-shop';

const instant = (text: string) => {
  const reading = readInstant(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

const factsOf = (shop: Shop, now: string, rest: Partial<CalendarFacts> = {}): CalendarFacts => ({
  ...{ shopId: 'shop1', createdOn: day('2026-01-01'), revision: 10, changedAt: instant('2026-02-20T10:00:00Z') },
  ...{ now: instant(now), today: dayOf(shop.zone, instant(now)), inDoubt: false },
  ...rest,
});

/** What an independent reader finds in the calendar of a shop, event by event. */
function readEvents(shop: Shop, now: string, rest: Partial<CalendarFacts> = {}) {
  const text = calendarFile('Shop', shopCalendar(shop, factsOf(shop, now, rest), 4));
  return ICAL.Component.fromString(text)
    .getAllSubcomponents('vevent')
    .map((component) => {
      const event = new ICAL.Event(component);
      const said = (name: string) => String(component.getFirstPropertyValue(name) ?? '');
      return {
        ...{ uid: event.uid, summary: event.summary, description: event.description, sequence: event.sequence },
        ...{ from: said('dtstart'), to: said('dtend'), status: said('status'), stamp: said('dtstamp') },
      };
    });
}

const parts: SmallShop = {
  settings: { timeZone: 'America/New_York' },
  products: [product('p1', { reiHours: 12 }), product('p2', { reiHours: null })],
  benches: [bench('b1'), bench('b2')],
  recipes: [recipe('r1', 'p1'), recipe('r2', 'p2')],
};
const NOW = '2026-03-02T15:00:00Z';
const shopWith = (rest: SmallShop): Shop => smallShop({ ...parts, ...rest });
const planned = (rest: Fields = {}) => shopWith({ programs: [once('g1', '2026-03-03', rest)] });

test('a planned spraying is two events: itself, and the keep-out from its start until its interval ends', () => {
  expect(readEvents(planned(), NOW)).toMatchObject([
    {
      uid: 'spraying/g1/2026-03-03@shop1',
      ...{ from: '2026-03-03T23:00:00Z', to: '2026-03-03T23:30:00Z', status: 'CONFIRMED' },
      summary: 'Spray Recipe r1 on Bench b1',
    },
    {
      uid: 'keep-out/g1/2026-03-03@shop1',
      ...{ from: '2026-03-03T23:00:00Z', to: '2026-03-04T11:30:00Z', status: 'CONFIRMED' },
      summary: 'KEEP OUT until Wed 4 Mar 06:30: Bench b1',
    },
  ]);
});

test('moved, it has its name still, its new time, and a higher sequence', () => {
  const before = readEvents(planned(), NOW);
  const moved = planned({ changes: [{ on: '2026-03-03', kind: 'moved', movedTo: '2026-03-05', startTime: '08:00' }] });
  const after = readEvents(moved, NOW, { revision: 11, changedAt: instant('2026-03-02T14:00:00Z') });
  expect(after.map(({ uid }) => uid)).toEqual(before.map(({ uid }) => uid));
  expect(after.map(({ from }) => from)).toEqual(['2026-03-05T13:00:00Z', '2026-03-05T13:00:00Z']);
  for (const [index, { sequence, stamp }] of after.entries()) {
    expect(sequence).toBeGreaterThan(before[index]?.sequence ?? Number.POSITIVE_INFINITY);
    expect(stamp).toBe('2026-03-02T14:00:00Z');
  }
});

test('skipped, it stays as cancelled under its name for thirty days, and nothing keeps people out for it', () => {
  const skipped = planned({ changes: [{ on: '2026-03-03', kind: 'skipped', reason: 'rain' }] });
  const cancelled = { uid: 'spraying/g1/2026-03-03@shop1', status: 'CANCELLED', from: '2026-03-03T23:00:00Z' };
  expect(readEvents(skipped, NOW)).toMatchObject([
    cancelled,
    { uid: 'keep-out/g1/2026-03-03@shop1', status: 'CANCELLED' },
  ]);
  expect(readEvents(skipped, '2026-04-02T15:00:00Z')).toHaveLength(2);
  expect(readEvents(skipped, '2026-04-03T15:00:00Z')).toEqual([]);
});

test('done, both events go on under their names with the times on record', () => {
  const done = shopWith({
    programs: [once('g1', '2026-03-01', { changes: [{ on: '2026-03-01', kind: 'done', application: 'a1' }] })],
    applications: [application('a1', '2026-03-01T23:10:00Z', '2026-03-01T23:40:00Z')],
  });
  expect(readEvents(done, NOW)).toMatchObject([
    { uid: 'spraying/g1/2026-03-01@shop1', from: '2026-03-01T23:10:00Z', to: '2026-03-01T23:40:00Z' },
    { uid: 'keep-out/g1/2026-03-01@shop1', from: '2026-03-01T23:10:00Z', to: '2026-03-02T11:40:00Z' },
  ]);
});

test('a record without a plan keeps people out under a name of its own, to the whole minute and not less', () => {
  const shop = shopWith({ applications: [application('a 1', '2026-03-01T23:10:00Z', '2026-03-01T23:40:00.001Z')] });
  expect(readEvents(shop, NOW)).toMatchObject([
    {
      uid: 'keep-out/record/a%201@shop1',
      summary: 'KEEP OUT until Mon 2 Mar 06:41: Bench b1',
      to: '2026-03-02T11:41:00Z',
    },
  ]);
});

test('what nobody knows the end of says so, and reaches a week ahead of whatever day it is', () => {
  const running = shopWith({ applications: [application('a1', '2026-01-01T23:10:00Z', null)] });
  for (const [now, to] of [
    [NOW, '2026-03-09T04:00:00Z'],
    ['2026-03-03T15:00:00Z', '2026-03-10T04:00:00Z'],
  ] as const) {
    expect(readEvents(running, now)).toMatchObject([{ summary: 'Not known: KEEP OUT of Bench b1', to }]);
  }
  const [earlier] = readEvents(running, NOW);
  const [later] = readEvents(running, '2026-03-03T15:00:00Z');
  expect(later?.sequence).toBeGreaterThan(earlier?.sequence ?? Number.POSITIVE_INFINITY);
  const unknown = readEvents(planned({ recipes: ['r2'] }), NOW)[1];
  expect(unknown).toMatchObject({ summary: 'Not known: KEEP OUT of Bench b1', to: '2026-03-04T05:00:00Z' });
});

test('a spraying that was due and that nobody recorded keeps people out, as it does on the board', () => {
  const [before, due] = ['2026-03-03T22:59:59.999Z', '2026-03-03T23:00:00Z'];
  expect(readEvents(planned(), before)[1]?.summary).toBe('KEEP OUT until Wed 4 Mar 06:30: Bench b1');
  const [spraying, keepOut] = readEvents(planned(), due);
  expect(keepOut).toMatchObject({ summary: 'Not known: KEEP OUT of Bench b1', to: '2026-03-10T04:00:00Z' });
  expect(spraying?.description).toContain('not on record');
  expect(keepOut?.sequence).toBe((readEvents(planned(), before)[1]?.sequence ?? 0) + 1);
});

test('a bench that something else keeps closed for longer is named', () => {
  const shop = shopWith({
    applications: [
      application('a1', '2026-03-01T20:00:00Z', '2026-03-01T20:30:00Z', { benches: ['b1', 'b2'] }),
      application('a2', '2026-03-01T22:00:00Z', '2026-03-01T22:30:00Z', { benches: ['b2'] }),
    ],
  });
  expect(readEvents(shop, NOW).map(({ summary }) => summary)).toEqual([
    'KEEP OUT until Mon 2 Mar 03:30: Bench b1 and Bench b2 (Bench b2 longer)',
    'KEEP OUT until Mon 2 Mar 05:30: Bench b2',
  ]);
});

test('a record entered in error is cancelled once that is confirmed, and not before', () => {
  const withdrawn = (rest: Fields) =>
    shopWith({ applications: [application('a1', '2026-03-01T20:00:00Z', '2026-03-01T20:30:00Z', rest)] });
  expect(readEvents(withdrawn({ withdrawn: true }), NOW)).toMatchObject([{ status: 'CANCELLED' }]);
  const open = withdrawn({ withdrawn: true, closedUntil: '2026-03-02T20:00:00Z' });
  expect(readEvents(open, NOW)).toMatchObject([{ status: 'CONFIRMED', to: '2026-03-02T20:00:00Z' }]);
});

test('in doubt of the clock or the records, every bench is kept out of', () => {
  const [doubt] = readEvents(planned(), NOW, { inDoubt: true });
  expect(doubt).toMatchObject({ summary: 'Not known: KEEP OUT of every bench', from: '2026-03-02T05:00:00Z' });
});

test('a spraying through a night in which the clocks change ends by time that has passed', () => {
  const shop = shopWith({ programs: [once('g1', '2026-03-07', { startTime: '23:30' })] });
  // Half an hour and twelve hours after 23:30 in winter time: 13:00 in summer time.
  expect(readEvents(shop, NOW)[1]).toMatchObject({ from: '2026-03-08T04:30:00Z', to: '2026-03-08T17:00:00Z' });
  expect(readEvents(shop, NOW)[1]?.summary).toContain('13:00 (UTC-04:00)');
});

test('nothing in it calls a bench safe, and no two events have one name', () => {
  const shop = shopWith({
    programs: [
      once('g1', '2026-02-20', { repeat: 'FREQ=WEEKLY' }),
      once('g 2', '2026-02-20', { repeat: 'FREQ=DAILY', recipes: ['r2', 'r1'], benches: ['b1', 'b2'] }),
      once('g', '2026-03-04', { id: 'g/2' }),
    ],
    applications: [application('a1', '2026-03-01T20:00:00Z', '2026-03-01T20:30:00Z')],
  });
  const events = readEvents(shop, NOW, { inDoubt: true });
  expect(events.length).toBeGreaterThan(60);
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length);
  expect(JSON.stringify(events)).not.toMatch(/\bsafe/i);
});
