import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  draftOfRecipe,
  fieldOfRecipePath,
  fieldsOfRecipe,
  RecipeForm,
  recipeInFields,
  recipeOfDraft,
} from '@/shared/forms/recipe';
import { idFor } from '@/shared/forms/sent-fields';
import type { ShopFile } from '@/shared/shop-file/contract';

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const word = fc.constantFrom('soap', 'Neem & oil', '0', 'ornamentals, foliar', 'ß "x"');

const anyRecipe: fc.Arbitrary<ShopFile['recipes'][number]> = fc.record({
  id: fc.constant('r1'),
  name: word,
  targetPh: maybe(fc.double({ min: 0, max: 14, noNaN: true }).map((pH) => pH + 0)),
  useWithinHours: maybe(fc.double({ min: 0, max: 8784, noNaN: true }).map((hours) => hours + 0)),
  ingredients: fc.array(
    fc.record({
      product: fc.constantFrom('p1', 'p2'),
      dose: fc.constantFrom('2 tsp/gal', '8 fl oz/100 gal', '4 fl oz/1000 sq ft', '40 ppm spinosad'),
      use: maybe(word),
      order: maybe(fc.nat(1000)),
    }),
    { minLength: 1, maxLength: 12 },
  ),
});

test('a recipe that goes into its form and comes back unchanged is the same recipe', () => {
  fc.assert(
    fc.property(anyRecipe, (recipe) => {
      const back = recipeInFields(fieldsOfRecipe(draftOfRecipe(recipe)));
      expect(recipeOfDraft('r1', back)).toEqual({ recipe, faults: [] });
    }),
  );
});

test('a line in which nothing stands is no ingredient, and faults still find the line they are about', () => {
  const draft = recipeInFields({
    name: 'Feed',
    'lines[0].product': '',
    'lines[0].dose': ' ',
    'lines[1].product': 'p1',
    'lines[1].dose': 'two spoons',
  });
  expect(recipeOfDraft('r1', draft).recipe.ingredients).toHaveLength(1);
  expect(fieldOfRecipePath(draft, 'recipes[0].ingredients[0].dose')).toBe('lines[1].dose');
  expect(fieldOfRecipePath(draft, 'recipes[0].targetPh')).toBe('targetPh');
  expect(fieldOfRecipePath(draft, 'programs[3].benches')).toBe('programs[3].benches');
});

test('a half-filled line, a pH in words and an empty recipe each say what to write', () => {
  const half = recipeInFields({ name: '', targetPh: '6,2', 'lines[0].product': 'p1', 'lines[1].dose': '1 %' });
  const { faults } = recipeOfDraft('r1', half);
  expect(faults.map(({ path }) => path)).toEqual(['lines[0].dose', 'lines[1].product', 'name', 'targetPh']);
  expect(faults.at(-1)?.message).toContain('6.2');
  const empty = recipeOfDraft('r1', recipeInFields({ name: 'Water' }));
  expect(empty.faults).toEqual([
    { path: 'lines[0].product', message: expect.stringContaining('Nothing goes into it') },
  ]);
});

test('a form with a field that no page of ours has is refused whole', () => {
  const command = { commandId: 'a'.repeat(32), name: 'Feed' };
  expect(RecipeForm.safeParse(command).success).toBe(true);
  expect(RecipeForm.safeParse({ ...command, 'lines[0].price': '1' }).success).toBe(false);
  expect(RecipeForm.safeParse({ name: 'Feed' }).success).toBe(false);
  expect(RecipeForm.safeParse({ ...command, name: ['Feed', 'Food'] }).success).toBe(false);
});

test('an id is readable, the same each time the form is sent, and never a word of an address', () => {
  expect(idFor('Neem & soap, Ünruly', '0f3a'.repeat(8), 'recipe')).toBe('neem-soap-unruly-0f3a');
  expect(idFor('new', '0f3a'.repeat(8), 'recipe')).toBe('new-0f3a');
  expect(idFor('!!', '0f3a'.repeat(8), 'recipe')).toBe('recipe-0f3a');
});
