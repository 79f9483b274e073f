import { expect, test } from 'vitest';
import { acidNamed } from '@/lib/engine/mix/acids';
import { mixStrength } from '@/lib/engine/mix/mix-strength';
import type { Product } from '@/lib/engine/shop';
import { ratePerMl } from '@/lib/engine/strength/dose-in-stock';
import { asElement, asOxide } from '@/lib/engine/strength/elements';
import { mgPerLitre } from '@/lib/engine/strength/equivalent-dose';
import { readDose } from '@/shared/measure/dose';
import { type Exact, exact, toNumber } from '@/shared/quantity/exact';
import { dosed, holding, powder } from '../lib/engine/mix/some-products';

/*
 * Fertiliser chemistry against published figures. `seen` was read in a copy of the source; `memory` was recalled and
 * not looked up again. `within` is the relative difference allowed.
 */

const near = (ours: number, published: number, within: number): void =>
  expect(Math.abs(ours - published) / published).toBeLessThanOrEqual(within);

function element(substance: string, amount: Exact = exact('1')): number {
  const found = asElement(substance, amount);
  if (!found) throw new Error(`${substance} is a nutrient`);
  return toNumber(found.amount);
}
function oxide(of: string): number {
  const found = asOxide(of, exact('1'));
  if (!found) throw new Error(`${of} has an oxide`);
  return toNumber(found.amount);
}

const IUPAC = 'IUPAC standard atomic weights, abridged';

test.each([
  { id: 'F01', substance: 'P2O5', part: 0.4364, within: 1e-4, source: IUPAC, basis: 'memory' },
  { id: 'F02', substance: 'K2O', part: 0.8301, within: 2e-4, source: IUPAC, basis: 'memory' },
  { id: 'F03', substance: 'SiO2', part: 0.4674, within: 1e-4, source: IUPAC, basis: 'memory' },
  { id: 'F05', substance: 'CaO', part: 0.7147, within: 3e-4, source: IUPAC, basis: 'memory' },
  { id: 'F05', substance: 'MgO', part: 0.603, within: 3e-4, source: IUPAC, basis: 'memory' },
])('$id ($basis): $part of the weight of $substance is the element', ({ substance, part, within }) => {
  near(element(substance), part, within);
});

// Element to oxide, as tables of conversion print it (memory, e.g. Western Fertilizer Handbook, conversion factors).
test.each([
  { of: 'P', factor: '2.291' },
  { of: 'K', factor: '1.205' },
  { of: 'Si', factor: '2.139' },
  { of: 'Ca', factor: '1.399' },
  { of: 'Mg', factor: '1.658' },
])('$of × $factor is its oxide (memory)', ({ of, factor }) => {
  expect(oxide(of).toFixed(3)).toBe(factor);
});

test('F04 (seen, collected extension extracts, freedocumentsearch.com/doc/convert-p2o5-to-p.html): 0.44, 2.29 and 1.2 are ours, rounded', () => {
  near(element('P2O5'), 0.44, 0.01);
  near(oxide('P'), 2.29, 0.01);
  near(oxide('K'), 1.2, 0.01);
});

test.each([
  { id: 'F05', substance: 'nitric acid', element: 'N', part: 0.2223, within: 3e-4, source: IUPAC, basis: 'memory' },
  { id: 'F05', substance: 'phosphoric acid', element: 'P', part: 0.3161, within: 3e-4, source: IUPAC, basis: 'memory' },
  { id: 'F05', substance: 'sulfuric acid', element: 'S', part: 0.3269, within: 3e-4, source: IUPAC, basis: 'memory' },
])('$id ($basis): $part of the weight of $substance is $element', ({ substance, element: brought, part, within }) => {
  const brings = acidNamed(substance)?.acid.brings;
  expect(brings?.element).toBe(brought);
  near(brings?.part ?? 0, part, within);
});

const grade: Pick<Product, 'form' | 'densityGPerMl' | 'gramsPerTeaspoon' | 'contents'> = {
  form: 'powder',
  densityGPerMl: null,
  gramsPerTeaspoon: null,
  contents: [
    { substance: 'N', amount: 20, basis: '% w/w' },
    { substance: 'P2O5', amount: 10, basis: '% w/w' },
    { substance: 'K2O', amount: 20, basis: '% w/w' },
  ],
};

test('F06 (memory, arithmetic from the guaranteed-analysis convention): 200 ppm N from a 20-10-20 is 1 g/L, with 43.64 ppm P and 166.03 ppm K', () => {
  const dose = readDose('200 ppm N', 'powder');
  const rate = dose.ok ? ratePerMl(dose.value, grade) : null;
  if (rate === null) throw new Error('the grade says how much N there is');
  near(toNumber(rate), 1, 0.002);
  const inSpray = (substance: string): number => {
    const found = mgPerLitre(rate, grade, substance);
    if (found === null) throw new Error(`the grade says how much ${substance} there is`);
    return element(substance, found);
  };
  near(inSpray('N'), 200, 1e-12);
  near(inSpray('P2O5'), 43.64, 0.002);
  near(inSpray('K2O'), 166.03, 0.002);
});

test('F06 (memory, as above): a gram of it per litre is that strong, as element and as oxide, on the sheet of the mix', () => {
  const { elements } = mixStrength([
    dosed(holding('20-10-20', ['20 % w/w N', '10 % w/w P2O5', '20 % w/w K2O'], powder), '1 g/L'),
  ]);
  const [nitrogen, phosphorus, potassium] = elements;
  near(nitrogen?.mgPerL ?? 0, 200, 1e-12);
  near(phosphorus?.mgPerL ?? 0, 43.64, 0.002);
  near(potassium?.mgPerL ?? 0, 166.03, 0.002);
  near(phosphorus?.oxide?.mgPerL ?? 0, 100, 1e-12);
  near(potassium?.oxide?.mgPerL ?? 0, 200, 1e-12);
});

/*
 * Left out, because nothing here computes them: of F05 the nitrogen in nitrate and ammonium and the sulfur in sulfate
 * (labels state N and S); F07, advice of UMass Extension to feed 150 to 250 ppm N, which is a choice and no computation.
 */
