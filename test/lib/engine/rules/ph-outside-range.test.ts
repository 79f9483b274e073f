import { expect, test } from 'vitest';
import { phOutsideRange } from '@/lib/engine/rules/ph-outside-range';
import { bench, type Fields, once, planOf, product, recipe } from './small-shop';

const WATER = { alkalinityMgPerLCaCO3: 110, pH: 7.4 };
const contents = (substance: string, amount: number, basis = 'g/L') => [{ substance, amount, basis }];

const careful = (min: number, max: number, id = 'p1') => product(id, { sprayPh: { min, max } });
const silicate = product(
  'silicate',
  {},
  { alkaliSilicate: true, contents: [...contents('K2O', 60), ...contents('SiO2', 60.083)] },
);
const citric = product('citric', {}, { kind: 'pH adjuster', contents: contents('citric acid', 100) });

type Case = { products?: Fields[]; targetPh?: number | null; water?: Fields | null; rest?: Fields[] };

/** One spraying of every product at 1 mL/L, or as `rest` says. */
function flagsOf({ products = [careful(5, 7)], targetPh = null, water = WATER, rest = [] }: Case) {
  const named = rest.length > 0 ? rest : products.map(({ id }) => ({ product: id, dose: '1 mL/L' }));
  return phOutsideRange(
    planOf({
      settings: { water },
      products,
      recipes: [{ ...recipe('r1', ...named), targetPh }],
      benches: [bench('b1', { area: '20 m2' })],
      programs: [once('g1', '2026-03-03')],
    }),
  );
}

test.each<[string, Case, number]>([
  ['a target at the lowest pH of the label is inside', { targetPh: 5 }, 0],
  ['a target below it is not', { targetPh: 4.99 }, 1],
  ['a target at the highest is inside', { targetPh: 7 }, 0],
  ['a target above it is not', { targetPh: 7.01 }, 1],
  ['water at the highest pH of the label is inside', { products: [careful(5, 7.4)] }, 0],
  ['water above it is not', { products: [careful(5, 7.39)] }, 1],
  ['water at the lowest pH of the label is inside', { products: [careful(7.4, 8)] }, 0],
  ['water below it is not', { products: [careful(7.41, 8)] }, 1],
  ['a target is what counts, whatever the water', { products: [careful(5, 7)], targetPh: 6 }, 0],
  ['and it counts without any water measured', { targetPh: 8, water: null }, 1],
  ['water that nobody measured may be anything', { water: null }, 1],
  ['and so may water that cannot be', { water: { alkalinityMgPerLCaCO3: 0, pH: 10 } }, 1],
  ['a label without a range has nothing against that', { products: [product('p1')], water: null }, 0],
  ['a label without a range is not judged', { products: [product('p1')], targetPh: 12 }, 0],
])('%s', (_, shop, flags) => {
  expect(flagsOf(shop)).toHaveLength(flags);
});

// 60 mg/L K2O is 1.274 meq/L and 60.083 mg/L SiO2 1 mmol/L: with them the water comes to pH 9.793, worked by the contract's definitions.
test('silicate in the recipe lifts the pH of the water, on both sides of the label', () => {
  expect(flagsOf({ products: [careful(5, 9.8), silicate] })).toEqual([]);
  expect(flagsOf({ products: [careful(5, 9.78), silicate] })).toHaveLength(1);
});

// 0.3 mL/L of it is 30 mg/L or 0.156 mmol/L of citric acid, which leaves pH 6.81.
test('an acid in the recipe itself lowers it, as far as its dose goes', () => {
  const rest = [
    { product: 'p1', dose: '1 mL/L' },
    { product: 'citric', dose: '0.3 mL/L' },
  ];
  expect(flagsOf({ products: [careful(5, 7), citric], rest })).toEqual([]);
  expect(flagsOf({ products: [careful(5, 6.8), citric], rest })).toHaveLength(1);
  expect(flagsOf({ products: [careful(7, 8), citric], rest })).toHaveLength(1);
});

test.each([
  ['a silicate of unknown silica', product('x', {}, { alkaliSilicate: true, contents: contents('K2O', 60) })],
  ['a silicate of unknown strength', product('x', {}, { alkaliSilicate: true })],
  ['an acid of unknown strength', product('x', {}, { contents: contents('phosphoric acid', 25, '% w/w') })],
  ['bicarbonate', product('x', {}, { contents: contents('potassium bicarbonate', 85) })],
])('%s leaves the pH unknown, which suits no range', (_, unknown) => {
  expect(flagsOf({ products: [careful(5, 6), unknown] })).toMatchObject([
    { severity: 'warn', rule: 'ph-outside-range', message: expect.stringMatching(/^Nobody can say the pH/) },
  ]);
  expect(flagsOf({ products: [careful(5, 6), unknown], targetPh: 5.5 })).toEqual([]);
  expect(flagsOf({ products: [careful(5, 6), unknown], targetPh: 6.5 })).toHaveLength(1);
});

test('silicate dosed per area is known by the ground and the spray for it', () => {
  const dosed = (dose: string) => [
    { product: 'p1', dose: '1 mL/L' },
    { product: 'silicate', dose },
  ];
  // 200 mL on the plants: 0.01 mL on each of 20 m² is 1 mL/L.
  expect(flagsOf({ products: [careful(5, 9.78), silicate], rest: dosed('0.01 mL/m2') })).toHaveLength(1);
  expect(flagsOf({ products: [careful(5, 9.8), silicate], rest: dosed('0.01 mL/m2') })).toEqual([]);
});

test('each product whose label it does not suit is flagged once, on every spraying, and says what clears it', () => {
  const flags = flagsOf({ products: [careful(5, 7, 'a'), careful(4, 6.5, 'b'), careful(4, 9, 'c')], targetPh: 7.5 });
  expect(flags).toMatchObject([
    { severity: 'warn', rule: 'ph-outside-range', on: '2026-03-03', program: 'g1', benches: ['b1'], product: 'a' },
    { severity: 'warn', rule: 'ph-outside-range', on: '2026-03-03', program: 'g1', benches: ['b1'], product: 'b' },
  ]);
  expect(flags[0]?.message).toBe(
    'The recipe brings the spray to pH 7.5; the label of Product a asks for pH 5 to 7. Set a target of pH 5 to 6.5, measure the mix and bring it there.',
  );
});

test('without a target it says where the pH comes from, and when no pH suits every label', () => {
  const messageOf = (shop: Case) => flagsOf(shop)[0]?.message;
  expect(messageOf({ products: [careful(6, 6)] })).toBe(
    "No target pH is set and the shop's water is at pH 7.4; the label of Product p1 asks for pH 6. Set a target of pH 6, measure the mix and bring it there.",
  );
  expect(messageOf({ products: [careful(5, 7), careful(8, 11, 'b'), silicate] })).toMatch(
    /^No target pH is set and the shop's water is at pH 7\.4, which comes to about pH 9\.79? with what is in this recipe; the label of Product p1 asks for pH 5 to 7\. No pH suits every label in this recipe: spray Product p1 on its own\.$/,
  );
});
