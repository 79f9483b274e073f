import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stageOfFormulation } from '@/lib/engine/mix/formulation';
import { orderOfAddition } from '@/lib/engine/mix/order';
import { type Fields, product, recipe, smallShop } from '../rules/small-shop';

/** The ingredients of a recipe of these products, each by its id, with a place in the recipe where one is given. */
function ingredients(products: Fields[], places: Record<string, number> = {}) {
  const lines = products.map(({ id, form }) => ({
    product: id,
    dose: form === 'powder' ? '1 g/L' : '1 mL/L',
    order: places[String(id)] ?? null,
  }));
  return smallShop({ products, recipes: [recipe('r1', ...lines)] }).recipes[0]?.ingredients ?? [];
}
const order = (products: Fields[], places: Record<string, number> = {}) =>
  orderOfAddition(ingredients(products, places)).map(({ ingredient }) => ingredient.product.id);
const why = (one: Fields, places: Record<string, number> = {}) => orderOfAddition(ingredients([one], places))[0]?.why;

const of = (id: string, rest: Fields = {}) => product(id, {}, rest);
const SHELF = {
  silicate: of('silicate', { kind: 'nutrient', formulation: 'SL', alkaliSilicate: true }),
  bag: of('bag', { form: 'powder', formulation: 'WP-SB' }),
  powder: of('powder', { form: 'powder', formulation: 'WP' }),
  flowable: of('flowable', { formulation: 'SC' }),
  oil: of('oil', { formulation: 'EC' }),
  soluble: of('soluble', { kind: 'nutrient', form: 'powder', formulation: 'SP' }),
  spreader: of('spreader', { kind: 'surfactant', formulation: 'SL' }),
  acid: of('acid', { kind: 'pH adjuster', formulation: 'SL' }),
};
const USUAL = ['silicate', 'bag', 'powder', 'flowable', 'oil', 'soluble', 'spreader', 'acid'];

test('whatever order the recipe names them in, the usual order of addition comes out', () => {
  fc.assert(
    fc.property(fc.shuffledSubarray(Object.values(SHELF), { minLength: 1 }), (products) => {
      const named = new Set(products.map(({ id }) => id));
      expect(order(products)).toEqual(USUAL.filter((id) => named.has(id)));
    }),
    { numRuns: 60 },
  );
});

test('an alkali silicate goes first and an acid last, whatever their formulation says', () => {
  expect(order([SHELF.acid, SHELF.bag, of('water glass', { formulation: 'EC', alkaliSilicate: true })])).toEqual([
    'water glass',
    'bag',
    'acid',
  ]);
  expect(why(SHELF.silicate)).toMatch(/plain water before everything else/);
  expect(why(SHELF.acid)).toMatch(/last, well diluted/);
});

test.each([
  ['WP', 'dry'],
  ['wdg', 'dry'],
  ['W.P.', 'dry'],
  ['WG', 'dry'],
  ['dry flowable', 'dry'],
  ['wettable powder', 'dry'],
  ['WP-SB', 'bag'],
  ['WP in water-soluble bags', 'bag'],
  ['SC', 'suspension'],
  ['F', 'suspension'],
  ['SE', 'suspension'],
  ['CS', 'suspension'],
  ['Flowable', 'suspension'],
  ['suspension concentrate', 'suspension'],
  ['EC', 'emulsion'],
  ['EW (emulsion)', 'emulsion'],
  ['emulsifiable concentrate', 'emulsion'],
  ['oil', 'emulsion'],
  ['SL', 'solution'],
  ['SG', 'solution'],
  ['soluble powder', 'solution'],
  ['UL', null],
  ['bait', null],
  ['', null],
])('the formulation %s belongs to the stage %s', (formulation, stage) => {
  expect(stageOfFormulation(formulation)).toBe(stage);
});

test.each([
  { one: { kind: 'fungicide', form: 'powder' }, stage: 'dry' },
  { one: { kind: 'fungicide' }, stage: 'suspension' },
  { one: { kind: 'insecticide', name: 'Neem oil' }, stage: 'emulsion' },
  { one: { contents: [{ substance: 'mineral oil', amount: 80, basis: '% w/w' }] }, stage: 'emulsion' },
  { one: { kind: 'nutrient', form: 'powder' }, stage: 'solution' },
  { one: { kind: 'other' }, stage: 'solution' },
])('without a formulation, $one goes by kind and form, and the sheet says so', ({ one, stage }) => {
  const [addition] = orderOfAddition(ingredients([of('p', one)]));
  expect(addition).toMatchObject({ stage, assumed: true, overriddenBy: null });
  expect(addition?.why).toMatch(/No formulation is entered for/);
});

test('a formulation that is not known here is named', () => {
  expect(why(of('p', { formulation: 'ZZ' }))).toMatch(/The formulation "ZZ" is not known here/);
});

test('a place in the recipe comes before one of the product, and both before the usual order, and the sheet says which', () => {
  const { powder, oil, acid } = SHELF;
  expect(order([powder, oil, acid], { acid: 1 })).toEqual(['acid', 'powder', 'oil']);
  expect(order([powder, oil, acid], { acid: 2 })).toEqual(['powder', 'acid', 'oil']);
  expect(order([powder, oil, acid], { powder: 900 })).toEqual(['oil', 'acid', 'powder']);
  expect(order([powder, oil, { ...acid, mixOrder: 1 }])).toEqual(['acid', 'powder', 'oil']);
  expect(order([powder, oil, { ...acid, mixOrder: 1 }], { acid: 3 })).toEqual(['powder', 'oil', 'acid']);
  expect(order([powder, oil, acid], { powder: 30, oil: 20, acid: 10 })).toEqual(['acid', 'oil', 'powder']);
  expect(why(acid, { acid: 0 })).toBe('This recipe gives Product acid this place; it would usually go in last.');
  expect(why({ ...acid, mixOrder: 1 })).toMatch(/^Product acid was given this place where it is entered/);
});

test('whatever places are given, everything is added once', () => {
  const places = fc.record(Object.fromEntries(USUAL.map((id) => [id, fc.option(fc.nat(12), { nil: undefined })])));
  fc.assert(
    fc.property(places, (given) => {
      const known = Object.entries(given).flatMap(([id, place]) => (place === undefined ? [] : [[id, place]]));
      expect(order(Object.values(SHELF), Object.fromEntries(known)).sort()).toEqual([...USUAL].sort());
    }),
    { numRuns: 40 },
  );
});
