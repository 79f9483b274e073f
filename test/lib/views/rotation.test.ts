import { expect, test } from 'vitest';
import { rotationSeen } from '@/lib/views/rotation';
import { application, bench, once, planOf, product, recipe } from '../engine/rules/small-shop';

const plan = planOf(
  {
    settings: { sameModeInARow: 1 },
    products: [product('p1', { modes: ['FRAC 7'] }), product('p2', { modes: ['FRAC 11'] }), product('p3')],
    benches: ['b1', 'b2', 'b3'].map((id) => bench(id)),
    recipes: [recipe('r1', 'p1'), recipe('r2', 'p2'), recipe('r3', 'p3')],
    programs: [
      once('g1', '2026-03-03', { recipes: ['r1', 'r2'], repeat: 'FREQ=DAILY;COUNT=9' }),
      once('g2', '2026-03-05', { recipes: ['r3'], benches: ['b2'] }),
    ],
    // Two in a row that are on record already: nothing to be done about those.
    applications: ['2026-02-27', '2026-02-28'].map((day) => application(day, `${day}T18:00:00Z`, `${day}T18:30:00Z`)),
  },
  '2026-03-02',
  2,
);
const { benches } = rotationSeen({ shop: plan.shop, plan, today: plan.today });

test('a bench says in a line which groups it gets, and the first planned spraying that brings one too often', () => {
  expect(benches.map(({ id, groups, firstOver }) => ({ id, groups, firstOver }))).toEqual([
    { id: 'b1', groups: ['FRAC 7', 'FRAC 11'], firstOver: { on: '2026-03-03', group: 'FRAC 7', inARow: 3 } },
    { id: 'b2', groups: [], firstOver: null },
  ]);
});

test('opened, it shows what it had last and the six turns that come', () => {
  const [first] = benches;
  expect(first?.turns.map(({ on, recipe, isPlanned }) => `${on} ${recipe}${isPlanned ? ', planned' : ''}`)).toEqual([
    ...['2026-02-27 Recipe r1', '2026-02-28 Recipe r1', '2026-03-03 Recipe r1, planned'],
    ...['2026-03-04 Recipe r2, planned', '2026-03-05 Recipe r1, planned', '2026-03-06 Recipe r2, planned'],
    ...['2026-03-07 Recipe r1, planned', '2026-03-08 Recipe r2, planned'],
  ]);
});
