import { expect, test } from 'vitest';
import { acidDoses, acidsIn, given } from '@/lib/engine/mix/acid-doses';
import { equivalentsPerMole } from '@/lib/engine/mix/acids';
import { alkaliIn } from '@/lib/engine/mix/alkali';
import { type AcidNeed, acidNeeded, phOf, withAlkali } from '@/lib/engine/mix/water';
import { acid, dosed, holding, powder } from '../lib/engine/mix/some-products';
import { named, water } from './acid-tables';
import { near, printedAs } from './published';

/*
 * Acids, carbonate and silicate in water, against published figures. `seen` was read in a copy of the source; `memory` was
 * recalled and not looked up again. Published pH are worked out with the activities of ions, and ours without, as the
 * program's contract says: in dilute solutions they are 0.05 apart at most.
 */

const COMMON =
  'pH of Common Acids and Bases, calculated at 25 °C, dramarnathgiri.blogspot.com/2019/04/ph-of-common-acids-and-bases.html';
const PURE = { alkalinity: 0, total: 0 };
const ACTIVITY = 0.06;

test.each([
  { substance: 'hydrochloric acid', at1: 3.01, at10: 2.04 },
  { substance: 'nitric acid', at1: 3.01, at10: 2.04 },
  { substance: 'phosphoric acid', at1: 3.06, at10: 2.26 },
  { substance: 'citric acid', at1: 3.24, at10: 2.62 },
  { substance: 'lactic acid', at1: 3.51, at10: 2.96 },
  { substance: 'acetic acid', at1: 3.91, at10: 3.39 },
])(`$substance in pure water: pH $at1 at 1 mmol/L, $at10 at 10 (seen, ${COMMON})`, ({ substance, at1, at10 }) => {
  const at = (mmol: number) => phOf(PURE, (pH) => mmol * equivalentsPerMole(named(substance).acid, pH));
  expect(Math.abs(at(1) - at1)).toBeLessThan(ACTIVITY);
  expect(Math.abs(at(10) - at10)).toBeLessThan(ACTIVITY);
});

test.each([
  { mmol: 1, pH: 4.68 },
  { mmol: 10, pH: 4.18 },
  { mmol: 100, pH: 3.68 },
])(`$mmol mmol/L of carbonic acid: pH $pH (seen, ${COMMON})`, ({ mmol, pH }) => {
  expect(Math.abs(phOf({ alkalinity: 0, total: mmol }) - pH)).toBeLessThan(0.02);
});

test.each([
  { mmol: 1, pH: 6.4 },
  { mmol: 10, pH: 5.91 },
])(`$mmol mmol/L of silicic acid: pH $pH (seen, ${COMMON})`, ({ mmol, pH }) => {
  expect(Math.abs(phOf({ ...PURE, silica: { least: mmol, most: mmol } }) - pH)).toBeLessThan(0.02);
});

test.each([
  { salt: 'sodium bicarbonate', alkalinity: 1, pH: 8.27 },
  { salt: 'sodium carbonate', alkalinity: 2, pH: 10.52 },
])(
  '1 mmol/L of $salt in a closed system: pH $pH (memory, the same list; Stumm & Morgan, Aquatic Chemistry, ch. 4)',
  ({ alkalinity, pH }) => {
    expect(Math.abs(phOf({ alkalinity, total: 1 }) - pH)).toBeLessThan(0.06);
  },
);

test('pure water is at pH 7.00, and 1 mmol/L of a strong base at 11.0 (memory, any textbook of chemistry)', () => {
  printedAs(phOf(PURE), '7.00');
  printedAs(phOf({ alkalinity: 1, total: 0 }), '11.0');
});

/** mL of an acid in a litre that give so many meq, ending at a pH. */
function mlPerLitre(of: Parameters<typeof acid>, meqPerL: number, target: number): number {
  const need: AcidNeed = { verdict: 'add acid', meqPerL, before: 14, target, message: null };
  const dose = acidDoses([acid(...of)], need)[0]?.perLitre;
  if (dose == null) throw new Error('the strength of the acid is known');
  return dose;
}

const REAGENTS =
  'Composition of concentrated reagent-grade acids, evergainful.com.my/resource_acid_base_concentrations.php, rounded to half a mL';

/** Where each has given off what "normal" counts: everything, or of phosphoric acid the first proton of three. */
const FIRST_PROTON = (2.148 + 7.198) / 2;
test.each([
  { name: 'acetic acid', percent: 99.8, density: 1.05, at: 12, ml: 57.5 },
  { name: 'hydrochloric acid', percent: 37.2, density: 1.18, at: 3, ml: 83 },
  { name: 'nitric acid', percent: 69.6, density: 1.41, at: 3, ml: 64 },
  { name: 'phosphoric acid', percent: 85.5, density: 1.71, at: FIRST_PROTON, ml: 67 },
  { name: 'sulfuric acid', percent: 96, density: 1.84, at: 3, ml: 28 },
])(`a litre of 1 N $name takes $ml mL of $percent % (seen, ${REAGENTS})`, ({ name, percent, density, at, ml }) => {
  const ours = mlPerLitre([name, [`${percent} % w/w ${name}`], { densityGPerMl: density }], 1000, at);
  expect(Math.abs(ours - ml)).toBeLessThan(0.75);
});

const MOLARITIES = 'Molarity of Commercially Supplied Concentrated Acids, laboratorynotes.com';
test.each([
  { name: 'acetic acid', percent: 99.6, density: 1.05, at: 12, molar: '17.4' },
  { name: 'hydrochloric acid', percent: 36, density: 1.176, at: 3, molar: '11.6' },
  { name: 'hydrochloric acid', percent: 37, density: 1.2, at: 3, molar: '12.2' },
  { name: 'nitric acid', percent: 70, density: 1.413, at: 3, molar: '15.7' },
  { name: 'phosphoric acid', percent: 85, density: 1.685, at: FIRST_PROTON, molar: '14.6' },
])(`$name of $percent % is $molar molar (seen, ${MOLARITIES})`, ({ name, percent, density, at, molar }) => {
  printedAs(1000 / mlPerLitre([name, [`${percent} % w/w ${name}`], { densityGPerMl: density }], 1000, at), molar);
});

test('lactic acid: 90.08 g, and citric acid: 192.12 g, are a mole (memory, IUPAC atomic weights)', () => {
  for (const [name, molarMass, protons] of [
    ['lactic acid', 90.08, 1],
    ['citric acid', 192.12, 3],
  ] as const) {
    near(mlPerLitre([name, [`100 % w/w ${name}`], powder], protons * 1000, 13), molarMass, 5e-4);
  }
});

test('acid in a mix counts by its moles: 98 g of phosphoric acid in 1,000 L are 1 mmol/L (memory, as above)', () => {
  const [found] = acidsIn([dosed(acid('h3po4', ['100 % w/w phosphoric acid'], powder), '0.098 g/L')]);
  near(found?.mmol ?? 0, 1, 5e-4);
  const acidity = given(found ? [found] : []);
  near(acidity?.(FIRST_PROTON) ?? 0, 1, 1e-3);
});

/*
 * Alkali silicates: a mole of K2O or Na2O takes two of a strong acid, so that an equivalent is 47.1 g of K2O or 31.0 g of
 * Na2O (memory, ISO 1692 and the usual titration with hydrochloric acid). Where a maker says the ratio of SiO2 to K2O by
 * weight, the ratio by moles is 1.568 times it, osaka-keisou.co.jp/product-introduction/product3 (seen).
 */
const silicate = (amount: number, oxide: string) =>
  alkaliIn([dosed(holding('silicate', [`${amount} g/L ${oxide}`], { alkaliSilicate: true }), '1 mL/L')]) ?? 0;

test.each([
  { oxide: 'K2O', gram: 47.1, within: 1e-3 },
  { oxide: 'Na2O', gram: 31, within: 1e-3 },
])('$gram g of $oxide are an equivalent (memory)', ({ oxide, gram, within }) => near(silicate(gram, oxide), 1, within));

test('a ratio of SiO2 to K2O of 1 by weight is 1.568 by moles (seen), with SiO2 at 60.084 g (memory)', () => {
  const molesOfK2O = silicate(94.196, 'K2O') / 2;
  near(94.196 / molesOfK2O / 60.084, 1.568, 1e-3);
});

/*
 * Computed apart from this program, from its contract: 110 mg/L at pH 7.4, to pH 5.8, with 0.4 mL/L of an alkali silicate
 * of density 1.2 and 5 % K2O by weight, take 2.1853 meq/L.
 */
test('water of 110 mg/L with 24 mg/L of K2O takes 2.1853 meq/L to pH 5.8, and two thirds of that first (computed)', () => {
  const line = dosed(holding('silicate', ['5 % w/w K2O'], { alkaliSilicate: true, densityGPerMl: 1.2 }), '0.4 mL/L');
  const need = acidNeeded(withAlkali(water(110, 7.4), alkaliIn([line]) ?? 0), 5.8);
  near(need.meqPerL, 2.1853, 5e-5);
  printedAs(equivalentsPerMole(named('phosphoric acid').acid, 5.8), '1.0382');
  printedAs(equivalentsPerMole(named('citric acid').acid, 5.8), '2.1202');
});
