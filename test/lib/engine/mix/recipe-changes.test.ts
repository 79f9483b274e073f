import { expect, test } from 'vitest';
import { type RecipeSaid, recipeChanges } from '@/lib/engine/mix/recipe-changes';

const line = (product: string, dose: string, rest = {}) => ({ product, dose, use: null, order: null, ...rest });
const said = (...ingredients: RecipeSaid['ingredients']): RecipeSaid => ({
  ...{ name: 'Feed', targetPh: null, useWithinHours: 8, ingredients },
});
const changes = (was: RecipeSaid, is: RecipeSaid) => recipeChanges(was, is, (id) => id.toUpperCase());

test('a version that says the same changed nothing', () => {
  expect(changes(said(line('a', '1 %')), said(line('a', '1 %')))).toEqual([]);
});

test('what a version changed is said line by line', () => {
  const was = said(line('a', '1 %'), line('b', '2 %', { use: 'foliar' }));
  const is = { ...said(line('a', '2 %', { order: 1 }), line('c', '1 g/L')), targetPh: 6.2, useWithinHours: null };
  expect(changes(was, { ...is, name: 'Rich feed' })).toEqual([
    'Called "Feed" before',
    'Target pH: 6.2',
    'Use within of 8 h taken out',
    'A from 1 % to 2 %',
    'Place of A in the mix: 1',
    'C added at 1 g/L',
    'B taken out',
  ]);
});

test('a product on two lines is compared line for line, and lines that changed places are said to have', () => {
  expect(changes(said(line('a', '1 %'), line('a', '2 %')), said(line('a', '1 %'), line('a', '3 %')))).toEqual([
    'A from 2 % to 3 %',
  ]);
  expect(changes(said(line('a', '1 %'), line('b', '1 %')), said(line('b', '1 %'), line('a', '1 %')))).toEqual([
    'Lines in another order',
  ]);
});
