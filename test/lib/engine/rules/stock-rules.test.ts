import { expect, test } from 'vitest';
import { reiUnknown } from '@/lib/engine/rules/rei-unknown';
import { short } from '@/lib/engine/rules/short';
import { unknownCost } from '@/lib/engine/rules/unknown-cost';
import { bench, once, planOf, product, recipe } from './small-shop';

// 10 plants at 20 mL and 2 mL/L: a spraying takes 0.4 mL.
const programs = [once('g1', '2026-03-03'), once('g2', '2026-03-10')];
const lot = (rest: object) => ({
  id: 'l1',
  product: 'p1',
  pack: '1 L',
  receivedOn: '2026-01-05',
  paid: '10.00',
  ...rest,
});
const suppliers = [{ id: 's1', name: 'Supplier one' }];
const offers = [{ id: 'o1', supplier: 's1', product: 'p1', pack: '1 L', price: '20.00', leadDays: 2 }];

test.each([
  { remaining: '0.8 mL', fires: [] },
  { remaining: '0.799 mL', fires: ['g2'] },
  { remaining: '0.399 mL', fires: ['g1', 'g2'] },
])('$remaining for two sprayings of 0.4 mL', ({ remaining, fires }) => {
  const flags = short(planOf({ programs, lots: [lot({ remaining })] }));
  expect(flags.map(({ program }) => program)).toEqual(fires);
});

test('short says what is missing, when it runs out and by when to order', () => {
  const plan = planOf({ programs, lots: [lot({ remaining: '0.5 mL' })], suppliers, offers });
  expect(short(plan)).toMatchObject([
    {
      severity: 'stop',
      rule: 'short',
      on: '2026-03-10',
      benches: ['b1'],
      product: 'p1',
      message:
        '0.3 mL of Product p1 is missing for this: it takes 0.4 mL. The shelf runs out on Tue 10 March. Order by Fri 6 March, such as 1 L from Supplier one.',
    },
  ]);
});

test('an order that is already late says so, and without an offer short asks for one', () => {
  const late = planOf({ programs, lots: [], suppliers, offers });
  expect(short(late)[0]?.message).toContain('It had to be ordered by Fri 27 February, 3 days ago: order today');
  expect(short(planOf({ programs, lots: [] }))[0]?.message).toContain('enter an offer for Product p1');
});

test.each([
  {
    why: 'nobody noted the price',
    parts: { lots: [lot({ paid: null })] },
    enter: 'Enter what was paid for the 1 L received Mon 5 January.',
  },
  { why: 'nobody offers what is short', parts: { lots: [] }, enter: 'Enter an offer for Product p1, with its price.' },
  {
    why: 'plants have no mL',
    parts: { benches: [bench('b1', { plants: [{ name: 'ferns', count: 5 }] })] },
    enter: 'Enter the mL per plant of ferns on Bench b1',
  },
  {
    why: 'a powder is dosed by spoon',
    parts: {
      products: [product('p1', {}, { form: 'powder' })],
      recipes: [recipe('r1', { product: 'p1', dose: '1 tsp/gal' })],
    },
    enter: 'Weigh one level teaspoon of Product p1 and enter its grams.',
  },
  {
    why: 'a liquid is dosed by weight',
    parts: { recipes: [recipe('r1', { product: 'p1', dose: '1 g/L' })] },
    enter: 'Enter the density of Product p1 in g/mL',
  },
])('a cost is unknown, and the note says what to enter: $why', ({ parts, enter }) => {
  const flags = unknownCost(planOf({ programs: [once('g1', '2026-03-03')], ...parts }));
  expect(flags).toMatchObject([
    { severity: 'note', rule: 'unknown-cost', on: '2026-03-03', program: 'g1', product: 'p1', benches: ['b1'] },
  ]);
  expect(flags[0]?.message).toContain(enter);
});

test('a known cost raises no note, even when part of it has to be bought', () => {
  expect(unknownCost(planOf({ programs, suppliers, offers, lots: [lot({ remaining: '0.1 mL' })] }))).toEqual([]);
});

test('an empty recipe on plants without mL is one note about no product', () => {
  const plan = planOf({
    recipes: [{ id: 'r1', name: 'Water', ingredients: [] }],
    benches: [bench('b1', { plants: [{ name: 'ferns', count: 5 }] })],
    programs: [once('g1', '2026-03-03')],
  });
  expect(unknownCost(plan)).toMatchObject([{ product: null, severity: 'note' }]);
});

test('each product without an interval stops the spraying once; an interval of 0 is known', () => {
  const plan = planOf({
    products: [product('p1', { reiHours: null }), product('p2', { reiHours: 0 }), product('p3', { reiHours: null })],
    recipes: [recipe('r1', 'p1', 'p2', 'p3', 'p1')],
    programs: [once('g1', '2026-03-03')],
  });
  expect(reiUnknown(plan)).toMatchObject(
    ['p1', 'p3'].map((id) => ({
      severity: 'stop',
      rule: 'rei-unknown',
      on: '2026-03-03',
      product: id,
      benches: ['b1'],
    })),
  );
});
