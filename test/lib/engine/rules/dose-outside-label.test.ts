import { expect, test } from 'vitest';
import { doseOutsideLabel } from '@/lib/engine/rules/dose-outside-label';
import { bench, once, planOf, product, recipe } from './small-shop';

const foliar = { use: 'foliar', min: '8 mL/gal', max: '20 mL/gal' };
const drench = { use: 'drench', min: '30 mL/gal', max: '60 mL/gal' };

type Line = { dose: string; use?: string };
/** The severities and messages for a product with these rates, dosed so. */
function judged(rates: object[], lines: Line | Line[], rest = {}) {
  const ingredients = [lines].flat().map((line) => ({ product: 'p1', ...line }));
  const plan = planOf({
    products: [product('p1', { rates }, rest)],
    recipes: [recipe('r1', ...ingredients)],
    programs: [once('g1', '2026-03-03')],
  });
  return doseOutsideLabel(plan);
}

test.each([
  { dose: '20 mL/gal', is: [] },
  { dose: '20.001 mL/gal', is: ['stop'] },
  { dose: '8 mL/gal', is: [] },
  { dose: '7.999 mL/gal', is: ['warn'] },
  // 4 teaspoons are 19.7 mL and 5 are 24.6 mL: other units are compared exactly.
  { dose: '4 tsp/gal', is: [] },
  { dose: '5 tsp/gal', is: ['stop'] },
  { dose: '2.1 mL/L', is: ['warn'] },
])('$dose against 8 to 20 mL/gal: $is', ({ dose, is }) => {
  expect(judged([foliar], { dose, use: 'foliar' }).map(({ severity }) => severity)).toEqual(is);
  expect(
    judged([foliar], { dose }).map(({ severity }) => severity),
    'the only rate needs no use',
  ).toEqual(is);
});

test('exactly at the maximum is inside, even where the two are written in units that no double holds', () => {
  expect(judged([{ use: 'foliar', max: '1/2 fl oz/gal' }], { dose: '3 tsp/gal' })).toEqual([]);
  expect(judged([{ use: 'foliar', min: '1 tbsp/gal' }], { dose: '3 tsp/gal' })).toEqual([]);
});

test('a flag says the dose, the range and what to do', () => {
  expect(judged([foliar], { dose: '25 mL/gal' })).toMatchObject([
    {
      severity: 'stop',
      rule: 'dose-outside-label',
      on: '2026-03-03',
      program: 'g1',
      benches: ['b1'],
      product: 'p1',
      message:
        'Product p1 is dosed at 25 mL/gal; its label allows 8 mL/gal to 20 mL/gal for "foliar". Use 20 mL/gal or less.',
    },
  ]);
  expect(judged([foliar], { dose: '5 mL/gal' })[0]?.message).toBe(
    'Product p1 is dosed at 5 mL/gal; its label asks for 8 mL/gal to 20 mL/gal for "foliar". Use 8 mL/gal or more.',
  );
});

test('a product without rates is not judged', () => {
  expect(judged([], { dose: '500 mL/L', use: 'anything' })).toEqual([]);
});

test('a use that the label lacks is a warning, whatever the dose, and its case does not matter', () => {
  expect(judged([foliar, drench], { dose: '12 mL/gal', use: 'fogging' })).toMatchObject([
    { severity: 'warn', message: expect.stringContaining('no rate for "fogging"') },
  ]);
  expect(judged([foliar, drench], { dose: '12 mL/gal', use: 'FOLIAR' })).toEqual([]);
});

test('the named use decides between several rates', () => {
  expect(judged([foliar, drench], { dose: '40 mL/gal', use: 'drench' })).toEqual([]);
  expect(judged([foliar, drench], { dose: '40 mL/gal', use: 'foliar' })).toMatchObject([{ severity: 'stop' }]);
});

test.each([
  { dose: '60.1 mL/gal', severity: 'stop', says: 'above every rate' },
  { dose: '60 mL/gal', severity: 'warn', says: 'Name the use' },
  { dose: '12 mL/gal', severity: 'warn', says: 'Name the use' },
])('without a use among several rates, $dose: $severity', ({ dose, severity, says }) => {
  expect(judged([foliar, drench], { dose })).toMatchObject([{ severity, message: expect.stringContaining(says) }]);
});

test('two ranges for one use: inside either is inside the label', () => {
  const rates = [foliar, { use: 'foliar', min: '40 mL/gal', max: '50 mL/gal' }];
  expect(judged(rates, { dose: '45 mL/gal', use: 'foliar' })).toEqual([]);
  expect(judged(rates, { dose: '60 mL/gal', use: 'foliar' })).toMatchObject([{ severity: 'stop' }]);
});

test('two lines of one product are one dose', () => {
  const line = { dose: '12 mL/gal', use: 'foliar' };
  expect(judged([foliar], line)).toEqual([]);
  expect(judged([foliar], [line, line])).toMatchObject([{ severity: 'stop', product: 'p1' }]);
});

const unweighed = { contents: [{ substance: 'azadirachtin', amount: 1, basis: '% w/w' }] };
const powder = { form: 'powder' };
test.each([
  {
    name: 'a liquid dosed by weight',
    rates: [foliar],
    dose: '2 g/L',
    rest: {},
    enter: 'Enter the density of Product p1',
  },
  {
    name: 'a powder dosed by spoon',
    rates: [{ use: 'x', max: '3 g/L' }],
    dose: '1 tsp/gal',
    rest: powder,
    enter: 'Weigh one level teaspoon of Product p1',
  },
  {
    name: 'a label by weight',
    rates: [{ use: 'x', max: '3 g/L' }],
    dose: '1 mL/L',
    rest: {},
    enter: 'Enter the density',
  },
  {
    name: 'a dose by a substance that is known by weight',
    rates: [foliar],
    dose: '40 ppm spinosad',
    rest: { contents: [{ substance: 'spinosad', amount: 10, basis: '% w/w' }] },
    enter: 'Enter the density',
  },
])('$name cannot be compared yet: a warning that says what to enter', ({ rates, dose, rest, enter }) => {
  expect(judged(rates, { dose }, rest)).toMatchObject([{ severity: 'warn', message: expect.stringContaining(enter) }]);
});

test('dose and label in the same measure need no density and no weighed teaspoon', () => {
  expect(judged([{ use: 'x', max: '2 tsp/gal' }], { dose: '2 tsp/gal' }, powder)).toEqual([]);
  expect(judged([{ use: 'x', max: '2 tsp/gal' }], { dose: '3 tsp/gal' }, powder)).toMatchObject([{ severity: 'stop' }]);
  expect(judged([{ use: 'x', max: '30 ppm azadirachtin' }], { dose: '40 ppm Azadirachtin' }, unweighed)).toMatchObject([
    { severity: 'stop' },
  ]);
});

const ground = { use: 'ground', min: '1 mL/m2', max: '2 mL/m2' };
/** The same on a bench of 10 plants at 200 mL, 2 L of spray, with an area or without. */
function judgedOn(area: string | null, rates: object[], dose: string, mlPerPlant: number | null = 200) {
  const plan = planOf({
    products: [product('p1', { rates })],
    benches: [bench('b1', { area, plants: [{ name: 'ferns', count: 10, mlPerPlant }] })],
    recipes: [recipe('r1', { product: 'p1', dose })],
    programs: [once('g1', '2026-03-03')],
  });
  return doseOutsideLabel(plan).map(({ severity, message }) => ({ severity, message }));
}

test.each([
  { dose: '2 mL/m2', is: [] },
  { dose: '2.001 mL/m2', is: ['stop'] },
  { dose: '0.999 mL/m2', is: ['warn'] },
  { dose: '20 L/ha', is: [] },
])('$dose against 1 to 2 mL/m2 needs neither area nor spray', ({ dose, is }) => {
  expect(judgedOn(null, [ground], dose, null).map(({ severity }) => severity)).toEqual(is);
});

test('a dose per volume meets a rate per area over the spray that is mixed for the ground', () => {
  // 2 L on 4 m²: 4 mL/L is 8 mL on 4 m², exactly 2 mL/m².
  expect(judgedOn('4 m2', [ground], '4 mL/L')).toEqual([]);
  expect(judgedOn('4 m2', [ground], '4.001 mL/L')).toMatchObject([{ severity: 'stop' }]);
  expect(judgedOn('4 m2', [ground], '1.999 mL/L')).toMatchObject([{ severity: 'warn' }]);
  expect(judgedOn('4 m2', [{ use: 'foliar', max: '4 mL/L' }], '2 mL/m2')).toEqual([]);
  expect(judgedOn('4 m2', [{ use: 'foliar', max: '4 mL/L' }], '2.001 mL/m2')).toMatchObject([{ severity: 'stop' }]);
});

test('where the ground or the spray is unknown the two are not judged, and the flag says what to enter', () => {
  expect(judgedOn(null, [ground], '4 mL/L')).toMatchObject([
    { severity: 'warn', message: expect.stringMatching(/cannot be compared yet. Enter the area of Bench b1\.$/) },
  ]);
  expect(judgedOn('4 m2', [ground], '4 mL/L', null)).toMatchObject([
    { severity: 'warn', message: expect.stringContaining('Enter the mL per plant') },
  ]);
});

test('two programs with one recipe are judged each on its own ground', () => {
  const plan = planOf({
    products: [product('p1', { rates: [ground] })],
    benches: [bench('b1', { area: '4 m2' }), bench('b2', { area: '0.1 m2' })],
    recipes: [recipe('r1', { product: 'p1', dose: '20 mL/L' })],
    programs: [once('g1', '2026-03-03'), once('g2', '2026-03-03', { benches: ['b2'] })],
  });
  // 200 mL of spray with 4 mL of product on 4 m², and on a tenth of one.
  expect(doseOutsideLabel(plan)).toMatchObject([{ severity: 'stop', program: 'g2', benches: ['b2'] }]);
});
