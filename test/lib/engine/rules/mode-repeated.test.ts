import { expect, test } from 'vitest';
import { modeRepeated } from '@/lib/engine/rules/mode-repeated';
import { application, bench, once, planOf, product, recipe } from './small-shop';

const products = [
  product('a', { modes: ['IRAC 3A'] }),
  product('b', { modes: ['irac 3a', 'FRAC M2'] }),
  product('c', { modes: ['IRAC 5'] }),
  product('plain'),
];
const recipes = ['a', 'b', 'c', 'plain'].map((id) => recipe(id, id));
/** One program a day from 2 March on, each with the recipe that is named. */
const inTurn = (...names: string[]) =>
  names.map((name, at) => once(`g${at}`, `2026-03-0${at + 2}`, { recipes: [name] }));
const flagged = (...names: string[]) =>
  modeRepeated(planOf({ products, recipes, programs: inTurn(...names) })).map(({ program }) => program);

test.each([
  { names: ['a', 'a'], at: [], why: 'two in a row are allowed' },
  { names: ['a', 'a', 'a', 'a'], at: ['g2', 'g3'], why: 'the third and the fourth are not' },
  { names: ['a', 'a', 'c', 'a', 'a'], at: [], why: 'another group in between breaks the row' },
  { names: ['a', 'plain', 'a', 'plain', 'a'], at: ['g4'], why: 'what has no group neither counts nor breaks it' },
  { names: ['a', 'b', 'a'], at: ['g2'], why: 'a group is the same whatever the case' },
])('$names: $why', ({ names, at }) => {
  expect(flagged(...names)).toEqual(at);
});

test('records count, and the flag names the first product in the mix that brings the group', () => {
  const plan = planOf({
    products,
    benches: [bench('b1'), bench('b2')],
    recipes: [...recipes, recipe('both', 'plain', 'a', 'b')],
    programs: [once('g1', '2026-03-03', { recipes: ['both'], benches: ['b1', 'b2'] })],
    applications: ['02-10', '02-20'].map((date) =>
      application(date, `2026-${date}T18:00:00Z`, `2026-${date}T18:30:00Z`, { recipe: 'a', benches: ['b2'] }),
    ),
  });
  expect(modeRepeated(plan)).toMatchObject([
    {
      severity: 'warn',
      rule: 'mode-repeated',
      on: '2026-03-03',
      benches: ['b2'],
      product: 'a',
      message:
        'IRAC 3A (group 3) comes 3 times in a row on Bench b2, here with Product a. This shop allows 2 in a row. Use a product of another mode group here, or put one in between.',
    },
  ]);
});

test('the shop decides how many in a row', () => {
  const plan = planOf({ settings: { sameModeInARow: 1 }, products, recipes, programs: inTurn('a', 'b', 'c') });
  expect(modeRepeated(plan).map(({ program }) => program)).toEqual(['g1']);
});

test('a group of high risk is said apart from what the shop allows', () => {
  const both = product('both', { modes: ['FRAC 11', 'FRAC 3'] }, { kind: 'fungicide' });
  const messages = (...names: string[]) =>
    modeRepeated(
      planOf({
        products: [...products, both],
        recipes: [...recipes, recipe('both', 'both')],
        programs: inTurn(...names),
      }),
    ).map(({ message }) => message);
  expect(messages('both', 'both')).toEqual([
    'FRAC 11 comes 2 times in a row on Bench b1, here with Product both. FRAC 11 is of high resistance risk, so once in a row is the most. Use a product of another mode group here, or put one in between.',
  ]);
  expect(messages('both', 'both', 'both').at(-1)).toBe(
    'FRAC 11 comes 3 times in a row on Bench b1; FRAC 3 comes 3 times in a row on Bench b1, here with Product both. FRAC 11 is of high resistance risk, so once in a row is the most. This shop allows 2 in a row. Use a product of another mode group here, or put one in between.',
  );
});

test('what is multi-site, unknown or not classified is never a repetition, and breaks a row; what names no group does neither', () => {
  const between = (modes: string[]) => product('between', { modes });
  const flaggedWith = (modes: string[]) =>
    modeRepeated(
      planOf({
        products: [...products, between(modes)],
        recipes: [...recipes, recipe('between', 'between')],
        programs: inTurn('a', 'a', 'between', 'a'),
      }),
    ).map(({ program }) => program);
  expect(flaggedWith(['none'])).toEqual(['g3']);
  expect(flaggedWith(['not classified'])).toEqual(['g3']);
  expect(flaggedWith(['FRAC NC'])).toEqual([]);
  expect(flaggedWith(['FRAC M05'])).toEqual([]);
  expect(flaggedWith(['UN'])).toEqual([]);
});
