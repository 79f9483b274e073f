import { expect, test } from 'vitest';
import { phiReachesHarvest } from '@/lib/engine/rules/phi-reaches-harvest';
import { application, bench, once, planOf, product, recipe, type SmallShop } from './small-shop';

/** Today is Monday 2 March 2026; the bench is harvested on the 10th. */
const shop = (phiDays: number | null, rest: SmallShop = {}): SmallShop => ({
  products: [product('p1', { phiDays })],
  benches: [bench('b1', { harvestOn: '2026-03-10' })],
  ...rest,
});
const flags = (parts: SmallShop) =>
  phiReachesHarvest(planOf(parts)).map(({ severity, on, program, benches }) => [severity, on, program, benches]);

test.each([
  { on: '2026-03-03', phi: 7, fires: false, why: 'the interval has passed on the day of harvest' },
  { on: '2026-03-04', phi: 7, fires: true, why: 'a day too late' },
  { on: '2026-03-10', phi: 0, fires: false, why: 'an interval of 0 on the day itself' },
  { on: '2026-03-10', phi: 1, fires: true, why: 'an interval of a day on the day itself' },
  { on: '2026-03-11', phi: 30, fires: false, why: 'after the harvest' },
])('sprayed on $on with $phi days before harvest: $why', ({ on, phi, fires }) => {
  expect(flags(shop(phi, { programs: [once('g1', on)] }))).toEqual(fires ? [['stop', on, 'g1', ['b1']]] : []);
});

test('an unknown interval warns where a harvest is entered, and nowhere else', () => {
  const programs = [once('g1', '2026-03-03', { benches: ['b1', 'b2'] })];
  const benches = [bench('b1', { harvestOn: '2026-03-10' }), bench('b2')];
  expect(flags(shop(null, { programs, benches }))).toEqual([['warn', '2026-03-03', 'g1', ['b1']]]);
  expect(flags(shop(null, { programs, benches: [bench('b1'), bench('b2')] }))).toEqual([]);
});

test('a record counts until its harvest: once for a product, by its latest spraying', () => {
  const sprayed = (day: string, id = 'a1') => application(id, `${day}T18:00:00Z`, `${day}T18:30:00Z`);
  const stop = ['stop', '2026-03-02', null, ['b1']];
  expect(flags(shop(14, { applications: [sprayed('2026-02-24')] }))).toEqual([]);
  expect(flags(shop(14, { applications: [sprayed('2026-02-25')] }))).toEqual([stop]);
  const both = [sprayed('2026-02-26'), sprayed('2026-02-20', 'a2')];
  const flagged = phiReachesHarvest(planOf(shop(14, { applications: both })));
  expect(flagged).toHaveLength(1);
  expect(flagged[0]?.message).toBe(
    'The label of Product p1 asks for 14 days before harvest, and it was sprayed there on Thu 26 February. Bench b1 is harvested or sold on Tue 10 March. Harvest and sell nothing there before Thu 12 March, and enter that date.',
  );
  const past = shop(14, { applications: both, benches: [bench('b1', { harvestOn: '2026-03-01' })] });
  expect(flags(past)).toEqual([]);
});

test.each([
  { day: '2025-03-02', fires: false },
  { day: '2025-03-03', fires: true },
])('a record of $day with an unknown interval, a year on', ({ day, fires }) => {
  const applications = [application('a1', `${day}T18:00:00Z`, `${day}T18:30:00Z`)];
  expect(flags(shop(null, { applications }))).toEqual(fires ? [['warn', '2026-03-02', null, ['b1']]] : []);
});

test('a harvest date that is past is asked about once for a bench', () => {
  const parts = shop(7, {
    benches: [bench('b1', { harvestOn: '2026-03-01' })],
    programs: [once('g1', '2026-03-03'), once('g2', '2026-03-04')],
  });
  expect(flags(parts)).toEqual([['warn', '2026-03-03', 'g1', ['b1']]]);
  expect(flags({ ...parts, benches: [bench('b1', { harvestOn: '2026-03-02' })] })).toEqual([]);
  expect(flags({ ...parts, products: [product('p1', { phiDays: 0 })] })).toEqual([]);
});

test('every product is judged by its own interval, a stock solution by those it is made from', () => {
  const parts = shop(7, {
    products: [
      product('p1', { phiDays: 7 }),
      product('p2', { phiDays: 1 }),
      product('made', { phiDays: 0 }, { madeFrom: [{ product: 'p1', dose: '100 mL/L' }] }),
    ],
    recipes: [recipe('r1', 'p2', 'made')],
    programs: [once('g1', '2026-03-05')],
  });
  const [flag, ...more] = phiReachesHarvest(planOf(parts));
  expect(more).toEqual([]);
  expect(flag).toMatchObject({ severity: 'stop', product: 'p1' });
  expect(flag?.message).toBe(
    'Product made is made from Product p1. The label of Product p1 asks for 7 days before harvest: after this, until Thu 12 March. Bench b1 is harvested or sold on Tue 10 March. Spray it on Tue 3 March at the latest, use something with a shorter interval, or harvest on Thu 12 March or later.',
  );
});
