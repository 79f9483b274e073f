import { expect, test } from 'vitest';
import { stockSolutionOf } from '@/lib/engine/mix/stock-solution-of';
import type { Basis } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { gramsPerGram, gramsPerMl } from '@/lib/engine/strength/strength-of';
import { exact } from '@/shared/quantity/exact';
import { parseShopFile } from '@/shared/shop-file/parse';
import { shopWith } from '../worked/plan-of';
import { amountFor, near, type Parts, printedAs } from './published';

/*
 * What concentrations mean, in every basis that a label states them. `seen` was read in a copy of the source; `memory`
 * was recalled and not looked up again.
 */

const content = (amount: number, basis: Basis) => ({ substance: 'active', amount, basis });
const perMl = (amount: number, basis: Basis, density: number | null = null): number => {
  const found = gramsPerMl(content(amount, basis), { densityGPerMl: density });
  if (found === null) throw new Error('the strength is known');
  return found;
};

const LABORATORY = 'percent weight by volume, labce.com/spg913555_calculating_percent_weightvolume__wv.aspx';

test.each([
  { what: 'isotonic saline', percent: 0.9, gramsPer100: 0.9, source: LABORATORY, basis: 'seen' },
  { what: '7.5 g in 100 mL', percent: 7.5, gramsPer100: 7.5, source: LABORATORY, basis: 'seen' },
  { what: '5 % dextrose, 50 g in a litre', percent: 5, gramsPer100: 5, source: 'an example of doses', basis: 'seen' },
])('% w/v: $what is $gramsPer100 g in 100 mL ($basis)', ({ percent, gramsPer100 }) => {
  near(perMl(percent, '% w/v') * 100, gramsPer100, 1e-12);
});

// "1 % solution contains 10 mg per mL", medical-dictionary.thefreedictionary.com/percentage+mass (seen).
test.each([
  { percent: 0.25, mg: 2.5 },
  { percent: 0.5, mg: 5 },
  { percent: 1, mg: 10 },
  { percent: 2, mg: 20 },
])('% w/v: $percent % is $mg mg/mL (seen), and as many g/L', ({ percent, mg }) => {
  near(perMl(percent, '% w/v') * 1000, mg, 1e-12);
  near(perMl(mg, 'g/L') * 1000, mg, 1e-12);
});

const REAGENTS = 'Molarities of Concentrated Acids and Bases, saltlakemetals.com/ConcentrationsAcidsBases.htm';

test.each([
  { acid: 'nitric', percent: 70, density: 1.42, gramsPerLitre: '994' },
  { acid: 'phosphoric', percent: 85, density: 1.7, gramsPerLitre: '1445' },
  { acid: 'sulfuric', percent: 96, density: 1.84, gramsPerLitre: '1766' },
  { acid: 'acetic', percent: 100, density: 1.05, gramsPerLitre: '1050' },
])(`% w/w by density: a litre of $percent % $acid acid holds $gramsPerLitre g (seen, ${REAGENTS})`, (row) => {
  printedAs(perMl(row.percent, '% w/w', row.density) * 1000, row.gramsPerLitre);
  // The same said in parts per thousand.
  printedAs(perMl(row.percent * 10, 'g/kg', row.density) * 1000, row.gramsPerLitre);
});

test('% w/w by density: 37 % hydrochloric acid at 1.19 is 440.3 g/L (seen, calculatorlib.com/molarity-of-concentrated-acid-calculator)', () => {
  printedAs(perMl(37, '% w/w', 1.19) * 1000, '440.3');
});

test.each([
  { acid: 'nitric', density: 1.42, dose: '142 g/L' },
  { acid: 'phosphoric', density: 1.7, dose: '170 g/L' },
])(`a dose by weight: a litre of $acid acid weighs $density kg, so $dose are 100 mL/L (seen, ${REAGENTS})`, (row) => {
  near(
    amountFor({ product: { form: 'liquid', densityGPerMl: row.density }, dose: row.dose, sprayMl: 1000 }),
    100,
    1e-9,
  );
});

test('g/kg by density: seawater of 35 g/kg at 1.025 holds 35.9 g/L (memory, any textbook of oceanography)', () => {
  printedAs(perMl(35, 'g/kg', 1.025) * 1000, '35.9');
});

// From labels: 6.0 lb/gal said beside 54 % by weight, 2.86 lb/gal beside 27 % (seen at 123deta.com); both name a density.
test.each([
  { pounds: 6, percent: 54, density: 1.33 },
  { pounds: 2.86, percent: 27, density: 1.27 },
])(
  'lb/gal: $pounds lb/gal beside $percent % by weight is a density of $density (seen)',
  ({ pounds, percent, density }) => {
    printedAs(perMl(pounds, 'lb/gal') / (percent / 100), String(density));
  },
);

test('% v/v is unknown without the density of the substance, and a share by weight without that of the product', () => {
  expect(gramsPerMl(content(10, '% v/v'), { densityGPerMl: 1 })).toBeNull();
  expect(gramsPerMl(content(10, '% w/w'), { densityGPerMl: null })).toBeNull();
  expect(gramsPerMl(content(10, 'g/kg'), { densityGPerMl: null })).toBeNull();
});

// A powder of 80 % by weight: 2 lb of active are 2.5 lb of it (seen, Agrochemical and Pesticide Safety, p. 128, example 5).
test.each([
  { amount: 80, basis: '% w/w' as const },
  { amount: 800, basis: 'g/kg' as const },
])('a powder: 2 lb of active are 2.5 lb of one with $amount $basis (seen)', ({ amount, basis }) => {
  near(2 / (gramsPerGram(content(amount, basis), { densityGPerMl: null }) ?? 0), 2.5, 1e-12);
  const product: Parts = { form: 'powder', contents: [content(amount, basis)] };
  near(amountFor({ product, dose: '2000 ppm active', sprayMl: 1000 }), 2.5, 1e-12);
});

// 2 % by volume is 20 mL/L; 1:100 is 1 %, 10 mL/L (memory, any textbook of pharmacy).
test.each([
  { dose: '2 %', form: 'liquid' as const, perLitre: 20 },
  { dose: '1 %', form: 'liquid' as const, perLitre: 10 },
  { dose: '0.5 %', form: 'powder' as const, perLitre: 5 },
])('a dose of $dose of a $form is $perLitre in a litre (memory)', ({ dose, form, perLitre }) => {
  near(amountFor({ product: { form }, dose, sprayMl: 1000 }), perLitre, 1e-12);
});

const DILUTING = 'dilution by C₁V₁ = C₂V₂, memory, any textbook of chemistry';

test(`what a stock solution of 40 g of 20 % in a litre holds, 1:200 of it gives: 40 ppm of 8 g/L (${DILUTING})`, () => {
  const written = shopWith({
    products: [
      {
        ...{ id: 'p1', name: 'Feed', kind: 'nutrient', form: 'powder' },
        contents: [{ substance: 'N', amount: 20, basis: '% w/w' }],
      },
    ],
  });
  const parsed = parseShopFile(JSON.stringify(written));
  const [source] = parsed.ok ? parsed.file.products : [];
  if (!parsed.ok || !source) throw new Error('the shop has a product');
  // A share is mg in each mL: as many g in each litre.
  const solution = stockSolutionOf(shopOfFile(parsed.file), source, exact(40n));
  if (!solution.ok) throw new Error(solution.message);
  expect(solution.value.contents).toEqual([{ substance: 'N', amount: 8, basis: 'g/L' }]);
  near(
    amountFor({ product: { form: 'liquid', contents: solution.value.contents }, dose: '40 ppm N', sprayMl: 200 }),
    1,
    1e-9,
  );
});

// Ounces in a gallon of concentrate: a bag's chart, hummert.com/newsletter/volume-38 (seen; 15 %), and 13.5 oz of 20 %
// for 200 ppm at 1:100, growertalks.com/Article?articleid=23641 (seen).
test.each([
  { percent: 15, ppm: 50, ratio: 100, ounces: '4.5' },
  { percent: 15, ppm: 100, ratio: 100, ounces: '9' },
  { percent: 15, ppm: 200, ratio: 100, ounces: '18' },
  { percent: 15, ppm: 200, ratio: 200, ounces: '36' },
  { percent: 15, ppm: 200, ratio: 15, ounces: '2.7' },
  { percent: 20, ppm: 200, ratio: 100, ounces: '13.5' },
])('$ppm ppm from $percent % at 1:$ratio take $ounces oz in a gallon of concentrate, rounded (seen)', (row) => {
  const product: Parts = { form: 'powder', contents: [{ substance: 'N', amount: row.percent, basis: '% w/w' }] };
  const amount = amountFor({ product, dose: `${row.ppm * row.ratio} ppm N`, sprayMl: 3785.411784 });
  near(amount / 28.349523125, Number(row.ounces), 0.04);
});
