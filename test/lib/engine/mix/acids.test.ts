import fc from 'fast-check';
import { expect, test } from 'vitest';
import { acidDoses, acidityOf, acidsIn, firstPart, given, phAfter } from '@/lib/engine/mix/acid-doses';
import { acidNamed, equivalentsPerMole, shares } from '@/lib/engine/mix/acids';
import { acidNeeded, carbonateOf } from '@/lib/engine/mix/water';
import type { Fields } from '../rules/small-shop';
import { acid, dosed, holding, powder } from './some-products';

const perMole = (substance: string, pH: number): number => {
  const found = acidNamed(substance);
  if (!found) throw new Error(`${substance} is an acid`);
  return equivalentsPerMole(found.acid, pH);
};

test.each([
  // Worked by the definitions of the contract: at pH 5.8 phosphoric acid gives 1.0382 and citric 2.1202.
  { substance: 'phosphoric acid', pH: 5.8, gives: 1.0382 },
  { substance: 'citric acid', pH: 5.8, gives: 2.1202 },
  { substance: 'sulfuric acid', pH: 5.8, gives: 2 },
  { substance: 'nitric acid', pH: 5.8, gives: 1 },
  { substance: 'hydrochloric acid', pH: 5.8, gives: 1 },
  // Half of a weak acid is dissociated at its pKa.
  { substance: 'acetic acid', pH: 4.756, gives: 0.5 },
  { substance: 'lactic acid', pH: 3.86, gives: 0.5 },
])('a mole of $substance gives $gives equivalents at pH $pH', ({ substance, pH, gives }) => {
  expect(perMole(substance, pH)).toBeCloseTo(gives, 4);
});

test('an acid gives more as the pH rises, never more than it has, and its shares add up', () => {
  const protons = { h3po4: 3, 'citric acid': 3, h2so4: 2, hno3: 1, hcl: 1, 'acetic acid': 1, 'lactic acid': 1 };
  const pH = fc.double({ min: 0, max: 14, noNaN: true });
  fc.assert(
    fc.property(pH, pH, (one, other) => {
      const [low, high] = one < other ? [one, other] : [other, one];
      for (const [substance, most] of Object.entries(protons)) {
        expect(perMole(substance, low)).toBeLessThanOrEqual(perMole(substance, high) + 1e-12);
        expect(perMole(substance, high)).toBeLessThanOrEqual(most + 1e-12);
        const found = acidNamed(substance);
        expect(found && shares(found.acid, one).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
      }
    }),
  );
});

test.each<[string, string | null, number | null]>([
  [' Phosphoric Acid ', 'phosphoric', 97.994],
  ['H₃PO₄', 'phosphoric', 97.994],
  ['citric acid, anhydrous', 'citric', 192.123],
  ['Citric acid (monohydrate)', 'citric', 210.138],
  ['sulphuric acid', 'sulfuric', 98.072],
  ['HNO3', 'nitric', 63.012],
  ['muriatic acid', 'hydrochloric', 36.458],
  ['acetic acid', 'acetic', 60.052],
  ['L-lactic acid', 'lactic', 90.078],
  ['humic acid', null, null],
  ['P2O5', null, null],
  ['acid', null, null],
])('"%s" names %s', (substance, name, molarMass) => {
  expect(acidNamed(substance)?.acid.name ?? null).toBe(name);
  expect(acidNamed(substance)?.molarMass ?? null).toBe(molarMass);
});

const WATER = carbonateOf({ alkalinityMgPerLCaCO3: 110, pH: 7.4 });
if (!WATER) throw new Error('there is such water');
const NEED = acidNeeded(WATER, 5.8);

test('each acid product alone reaches the target, a liquid in mL and a powder in g per litre', () => {
  const products = [
    acid('liquid', ['25 % w/w phosphoric acid'], { densityGPerMl: 1.14 }),
    acid('powder', ['99 % w/w citric acid monohydrate'], powder),
    acid('two', ['100 g/L citric acid', '50 g/L lactic acid']),
    acid('twice', ['25 % w/w phosphoric acid', '285 g/L H3PO4'], { densityGPerMl: 1.14 }),
  ];
  const doses = acidDoses(products, NEED);
  const perMl = (1.14 * 0.25 * 1000 * 1.0382) / 97.994;
  expect(doses.map(({ perLitre }) => perLitre)).toEqual([
    expect.closeTo(NEED.meqPerL / perMl, 4),
    expect.closeTo(NEED.meqPerL / ((0.99 * 1000 * 2.1202) / 210.138), 4),
    expect.closeTo(
      NEED.meqPerL / ((0.1 * 1000 * 2.1202) / 192.123 + (0.05 * 1000 * perMole('lactic acid', 5.8)) / 90.078),
      4,
    ),
    expect.closeTo(NEED.meqPerL / perMl, 4),
  ]);
  for (const { product, perLitre } of doses) expect(phAfter(WATER, product, perLitre ?? 0)).toBeCloseTo(5.8, 6);
});

test('only pH adjusters with an acid in them count', () => {
  const others = [
    holding('nutrient', ['5 % w/w citric acid'], powder),
    acid('lye', ['25 % w/v potassium hydroxide']),
    acid('unlabelled', []),
  ];
  expect(acidDoses(others, NEED)).toEqual([]);
});

test.each<[string, string[], Fields, string]>([
  [
    '25 % by weight of a liquid',
    ['25 % w/w phosphoric acid'],
    {},
    'Enter the density of Product p in g/mL, from its label.',
  ],
  [
    'a share by volume',
    ['25 % v/v phosphoric acid'],
    { densityGPerMl: 1.14 },
    'Enter how much phosphoric acid is in Product p by weight, from its label.',
  ],
  [
    'one acid of two',
    ['100 g/L citric acid', '5 % v/v lactic acid'],
    { densityGPerMl: 1.1 },
    'Enter how much lactic acid is in Product p by weight, from its label.',
  ],
])('%s is no known strength, so the dose is unknown and says what to enter', (_, contents, rest, missing) => {
  const product = acid('p', contents, rest);
  expect(acidDoses([product], NEED)).toEqual([{ product, perLitre: null, missing }]);
  expect(acidityOf(product)).toBeNull();
  expect(phAfter(WATER, product, 1)).toBeNull();
  expect(firstPart(WATER, { product, perLitre: null, missing })).toBeNull();
});

test('an acid that would take more product than spray is too weak', () => {
  const [dose] = acidDoses([acid('p', ['0.001 g/L acetic acid'])], NEED);
  expect(dose).toMatchObject({
    perLitre: null,
    missing: 'Product p is too weak to bring the water there. Use another acid, or a target that is not as low.',
  });
});

test('no acid is needed where the water is low enough, whatever the acid', () => {
  const products = [acid('c', ['99 % w/w citric acid'], powder), acid('empty', ['0 % w/w citric acid'], powder)];
  expect(acidDoses(products, acidNeeded(WATER, 7.6)).map(({ perLitre }) => perLitre)).toEqual([0, 0]);
});

test('two thirds of the acid go in first, and leave the pH between that of the water and the target', () => {
  for (const dose of acidDoses([acid('c', ['99 % w/w citric acid'], powder)], NEED)) {
    const first = firstPart(WATER, dose);
    expect(first?.perLitre).toBeCloseTo(((dose.perLitre ?? 0) * 2) / 3, 12);
    expect(first?.pH).toBeGreaterThan(5.8);
    expect(first?.pH).toBeLessThan(7.4);
    expect(first?.pH).toBe(phAfter(WATER, dose.product, first?.perLitre ?? 0));
  }
});

test('the acids in a mix are those of every ingredient, and unknown when the amount of any is', () => {
  const citric = acid('c', ['99 % w/w citric acid'], powder);
  const known = acidsIn([dosed(citric, '0.2 g/L'), dosed(holding('n', ['10 g/L lactic acid']), '1 mL/L')]);
  expect(known.map(({ acid: { name }, mmol }) => [name, mmol])).toEqual([
    ['citric', expect.closeTo((0.2 * 0.99 * 1000) / 192.123, 9)],
    ['lactic', expect.closeTo(10 / 90.078, 9)],
  ]);
  expect(given(known)?.(5.8)).toBeCloseTo(
    ((0.2 * 0.99 * 1000) / 192.123) * 2.12019 + (10 / 90.078) * perMole('lactic acid', 5.8),
    4,
  );
  const unknown = acidsIn([dosed(citric, '0.2 g/L'), dosed(citric, '1 tsp/gal')]);
  expect(unknown.map(({ mmol }) => mmol)).toEqual([expect.any(Number), null]);
  expect(given(unknown)).toBeNull();
  expect(given([])).toBeNull();
});
