import { expect, test } from 'vitest';
import { mustNotMix } from '@/lib/engine/rules/must-not-mix';
import { type Fields, once, planOf, product, recipe } from './small-shop';

const sulfur = product(
  's',
  {},
  {
    name: 'Yellow dust',
    kind: 'fungicide',
    form: 'powder',
    formulation: 'WP',
    contents: [{ substance: 'sulfur', amount: 80, basis: '% w/w' }],
  },
);
const mixed = (oil: Fields, other: Fields = sulfur) =>
  mustNotMix(
    planOf({
      products: [product('oil', oil), other],
      recipes: [recipe('r1', 'oil', { product: 's', dose: '2 g/L' })],
      programs: [once('g1', '2026-03-03')],
    }),
  );

test.each(['s', 'Yellow Dust', 'SULFUR', 'Fungicide', 'wp'])('an entry "%s" means the dust', (entry) => {
  expect(mixed({ doNotMixWith: ['copper', entry] })).toMatchObject([
    { severity: 'stop', rule: 'must-not-mix', on: '2026-03-03', program: 'g1', benches: ['b1'], product: 'oil' },
  ]);
});

test.each(['sulf', 'sulfur dust', 'powder', 'insecticide'])('an entry "%s" does not', (entry) => {
  expect(mixed({ doNotMixWith: [entry] })).toEqual([]);
});

test('it holds in either direction, and the flag names the product whose label says it', () => {
  const careful = { ...sulfur, label: { rates: [], reiHours: 0, doNotMixWith: ['product oil'] } };
  expect(mixed({}, careful)).toMatchObject([{ product: 's' }]);
});

test('two labels that forbid each other are one flag, on the first in the recipe', () => {
  const careful = { ...sulfur, label: { rates: [], reiHours: 0, doNotMixWith: ['oil'] } };
  const flags = mixed({ doNotMixWith: ['sulfur'] }, careful);
  expect(flags).toMatchObject([{ product: 'oil' }]);
  expect(flags[0]?.message).toBe(
    'The label of Product oil says not to mix it with sulfur, and Yellow dust is that. Take Product oil or Yellow dust out of this recipe and spray it on its own.',
  );
});

test('a product never forbids itself, and three that forbid each other are three pairs', () => {
  const apart = ['p1', 'p2', 'p3'].map((id) => product(id, { doNotMixWith: ['insecticide'] }));
  const programs = [once('g1', '2026-03-03')];
  expect(mustNotMix(planOf({ products: apart, recipes: [recipe('r1', 'p1', 'p1')], programs }))).toEqual([]);
  const all = planOf({ products: apart, recipes: [recipe('r1', 'p1', 'p2', 'p3')], programs });
  expect(mustNotMix(all).map((flag) => flag.product)).toEqual(['p1', 'p1', 'p2']);
});
