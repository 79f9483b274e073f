import { expect, test } from 'vitest';
import { replacedIn, solutionsIn } from '@/lib/views/solutions';
import { product, recipe, smallShop } from '../engine/rules/small-shop';

const SHOP = smallShop({
  products: [
    product('fe', {}, { name: 'Chelate', form: 'powder', contents: [{ substance: 'Fe', amount: 6, basis: '% w/w' }] }),
    product(
      's',
      {},
      {
        name: 'Chelate solution',
        madeFrom: [{ product: 'fe', dose: '72 g/L' }],
        contents: [{ substance: 'Fe', amount: 4.32, basis: 'g/L' }],
      },
    ),
    product('soap'),
  ],
  lots: [{ id: 'l1', product: 'fe', pack: '500 g', receivedOn: '2026-01-01' }],
  recipes: [recipe('r1', 'soap', { product: 'fe', dose: '0.36 g/L' }), recipe('r2', 'soap')],
});
const [FEED, PLAIN] = SHOP.recipes;
if (!FEED || !PLAIN) throw new Error('no recipes');

test('a line is offered the solution of its product, at the dose that is as strong', () => {
  expect(solutionsIn(SHOP, FEED)).toEqual([
    {
      recipe: { id: 'r1', name: 'Recipe r1' },
      ...{ line: 1, product: { id: 'fe', name: 'Chelate' }, dose: '0.36 g/L' },
      solution: { id: 's', name: 'Chelate solution', dose: '5 mL/L', isOnShelf: false },
    },
  ]);
  expect(solutionsIn(SHOP, PLAIN)).toEqual([]);
});

test('put in its place, the line says both doses, and the strength that stays', () => {
  const strength = [{ substance: 'Fe', mgPerL: 21.6 }];
  expect(replacedIn(SHOP, FEED, { line: 1, from: 's' })).toEqual({
    typed: { product: 's', dose: '5 mL/L' },
    replaced: {
      line: 1,
      was: { product: 'Chelate', dose: '0.36 g/L', strength },
      now: { product: 'Chelate solution', dose: '5 mL/L', strength },
    },
  });
});

test('a line that is not there, a product that is none of its solutions and nonsense in an address change nothing', () => {
  for (const asked of [
    { line: 0, from: 's' },
    { line: 1, from: 'soap' },
    { line: 7, from: 's' },
    { line: Number.NaN, from: '' },
  ]) {
    expect(replacedIn(SHOP, FEED, asked)).toBeNull();
  }
});
