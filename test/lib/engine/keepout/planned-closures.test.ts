import { expect, test } from 'vitest';
import { dayStrips } from '@/lib/engine/keepout/planned-closures';
import { application, bench, day, once, planOf, product, recipe, type SmallShop } from '../rules/small-shop';

const shop: SmallShop = {
  settings: { openingHours: { tue: [['09:00', '18:00']], sun: [['09:00', '17:00']] } },
  products: [product('p1', { reiHours: 12 }), product('p2', { reiHours: null })],
  benches: [bench('b1', { customers: true }), bench('b2')],
  recipes: [recipe('r1', 'p1'), recipe('r2', 'p2')],
};
const stripsOn = (date: string, parts: SmallShop, today = '2026-03-02') => {
  const plan = planOf({ ...shop, ...parts }, today);
  return dayStrips(plan.shop, plan.sprayings, day(date));
};

test('an evening spraying is drawn that day, and its closed time into the next morning', () => {
  const programs = [once('g1', '2026-03-02')];
  expect(stripsOn('2026-03-02', { programs })).toMatchObject({
    minutes: 1440,
    benches: [
      { open: [], spraying: [[1080, 1110]], closed: [[1110, 1440]], unknown: [] },
      { open: [], spraying: [], closed: [], unknown: [] },
    ],
  });
  expect(stripsOn('2026-03-03', { programs }).benches[0]).toMatchObject({
    open: [[540, 1080]],
    spraying: [],
    closed: [[0, 390]],
  });
  expect(stripsOn('2026-03-04', { programs }).benches[0]).toMatchObject({ closed: [], unknown: [] });
});

test('opening hours are drawn only where customers can reach the bench', () => {
  expect(stripsOn('2026-03-03', {}).benches.map(({ open }) => open)).toEqual([[[540, 1080]], []]);
});

test('records are drawn too, to the second; those without an end or an interval reach through every later day', () => {
  const recorded = [application('a1', '2026-03-02T18:00:00Z', '2026-03-02T18:30:30Z')];
  expect(stripsOn('2026-03-02', { applications: recorded }).benches[0]).toMatchObject({
    spraying: [[1080, 1110.5]],
    closed: [[1110.5, 1440]],
  });
  const running = [application('a1', '2026-03-02T18:00:00Z', null)];
  expect(stripsOn('2026-03-02', { applications: running }).benches[0]).toMatchObject({
    spraying: [],
    closed: [],
    unknown: [[1080, 1440]],
  });
  expect(stripsOn('2026-03-14', { applications: running }).benches[0]).toMatchObject({ unknown: [[0, 1440]] });
  const unknown = [application('a1', '2026-03-02T18:00:00Z', '2026-03-02T18:30:00Z', { recipe: 'r2' })];
  expect(stripsOn('2026-03-02', { applications: unknown }).benches[0]).toMatchObject({
    spraying: [[1080, 1110]],
    unknown: [[1110, 1440]],
  });
});

const newYork = (on: string): SmallShop => ({
  settings: { ...shop.settings, timeZone: 'America/New_York' },
  programs: [once('g1', on, { startTime: '00:30' })],
});

test('a day of 23 hours is 1,380 minutes long, and what comes after the change stands an hour sooner', () => {
  const strips = stripsOn('2026-03-08', newYork('2026-03-08'));
  expect(strips.minutes).toBe(1380);
  // 09:00 to 17:00 on the clock is the eighth to the sixteenth hour; twelve elapsed hours after 01:00 end at 14:00.
  expect(strips.benches[0]).toMatchObject({ open: [[480, 960]], spraying: [[30, 60]], closed: [[60, 780]] });
  expect(strips.hours.slice(0, 4)).toEqual([
    { clock: 0, at: 0 },
    { clock: 60, at: 60 },
    { clock: 180, at: 120 },
    { clock: 240, at: 180 },
  ]);
});

test('a day of 25 hours is 1,500 minutes long, and shows the repeated hour twice', () => {
  const strips = stripsOn('2026-11-01', newYork('2026-11-01'), '2026-10-31');
  expect(strips.minutes).toBe(1500);
  expect(strips.benches[0]).toMatchObject({ open: [[600, 1080]], spraying: [[30, 60]], closed: [[60, 780]] });
  expect(strips.hours.slice(0, 4).map(({ clock }) => clock)).toEqual([0, 60, 60, 120]);
  expect(strips.hours).toHaveLength(25);
});

test('a reopening at midnight leaves nothing on the next day', () => {
  const programs = [once('g1', '2026-03-02', { startTime: '11:30' })];
  expect(stripsOn('2026-03-02', { programs }).benches[0]).toMatchObject({ closed: [[720, 1440]] });
  expect(stripsOn('2026-03-03', { programs }).benches[0]).toMatchObject({ closed: [] });
});

test('a day with hours of its own says so, and is drawn with them', () => {
  const specialDays = [
    { on: '2026-03-03', name: 'Fair', hours: [['10:00', '14:00']] },
    { on: '2026-03-10', hours: [] },
  ];
  const parts = { settings: { ...shop.settings, specialDays } };
  expect(stripsOn('2026-03-03', parts)).toMatchObject({ special: { name: 'Fair', hours: [[600, 840]] } });
  expect(stripsOn('2026-03-03', parts).benches[0]?.open).toEqual([[600, 840]]);
  expect(stripsOn('2026-03-10', parts)).toMatchObject({ special: { name: null, hours: [] } });
  expect(stripsOn('2026-03-10', parts).benches[0]?.open).toEqual([]);
  expect(stripsOn('2026-03-17', parts)).toMatchObject({ special: null });
});
