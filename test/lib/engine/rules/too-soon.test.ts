import { expect, test } from 'vitest';
import { tooSoon } from '@/lib/engine/rules/too-soon';
import { application, bench, once, planOf, product, recipe } from './small-shop';

const weekly = [product('p1', { minDaysBetween: 7 })];

test.each([
  { gap: 'the same day', first: '2026-03-09', second: '2026-03-09', fires: true },
  { gap: 'six days', first: '2026-03-03', second: '2026-03-09', fires: true },
  { gap: 'seven days', first: '2026-03-02', second: '2026-03-09', fires: false },
])('$gap between two sprayings, where the label asks for seven', ({ first, second, fires }) => {
  const plan = planOf({ products: weekly, programs: [once('g1', first), once('g2', second, { startTime: '19:00' })] });
  expect(tooSoon(plan)).toMatchObject(
    fires ? [{ severity: 'stop', rule: 'too-soon', on: second, program: 'g2', benches: ['b1'], product: 'p1' }] : [],
  );
});

test('a record counts by the date on the shop clock, not in UTC', () => {
  // 23:30 on 2 March in New York is already 3 March in UTC.
  const parts = {
    settings: { timeZone: 'America/New_York' },
    products: weekly,
    programs: [once('g1', '2026-03-09')],
    applications: [application('a1', '2026-03-03T04:30:00Z', '2026-03-03T05:00:00Z')],
  };
  expect(tooSoon(planOf(parts))).toEqual([]);
  const later = [application('a1', '2026-03-03T05:30:00Z', '2026-03-03T06:00:00Z')];
  expect(tooSoon(planOf({ ...parts, applications: later }))).toMatchObject([{ program: 'g1' }]);
});

test('only the benches that had the product are named, with the day from which it is allowed again', () => {
  const plan = planOf({
    products: weekly,
    benches: [bench('b1'), bench('b2')],
    programs: [once('g1', '2026-03-07', { benches: ['b1', 'b2'] })],
    applications: [application('a1', '2026-03-04T18:00:00Z', '2026-03-04T18:30:00Z', { benches: ['b2'] })],
  });
  expect(tooSoon(plan)).toMatchObject([
    {
      benches: ['b2'],
      message:
        'Product p1 was sprayed on Bench b2 3 days before, on Wed 4 March. Its label asks for 7 days between. Move this to Wed 11 March or later.',
    },
  ]);
});

test('another product, another bench and a label that asks for nothing raise no flag', () => {
  const plan = planOf({
    products: [...weekly, product('p2')],
    benches: [bench('b1'), bench('b2')],
    recipes: [recipe('r1', 'p1'), recipe('r2', 'p2')],
    programs: [
      once('g1', '2026-03-03'),
      once('g2', '2026-03-04', { recipes: ['r2'] }),
      once('g3', '2026-03-05', { recipes: ['r2'] }),
      once('g4', '2026-03-06', { benches: ['b2'] }),
    ],
  });
  expect(tooSoon(plan)).toEqual([]);
});

test('a record from after the spraying does not count against it', () => {
  const plan = planOf({
    products: weekly,
    programs: [once('g1', '2026-03-03')],
    applications: [application('a1', '2026-03-03T19:00:00Z', null)],
  });
  expect(tooSoon(plan)).toEqual([]);
});

test('the latest application counts, not the first', () => {
  const programs = ['02', '05', '11'].map((date) => once(`g${date}`, `2026-03-${date}`));
  const flags = tooSoon(planOf({ products: weekly, programs }));
  expect(flags.map(({ program }) => program)).toEqual(['g05', 'g11']);
});
