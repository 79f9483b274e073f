import { expect, test } from 'vitest';
import { batchFor } from '@/lib/engine/mix/batch';
import { cautionsFor, MOST_PARTNERS } from '@/lib/engine/mix/cautions';
import { stageOfFormulation } from '@/lib/engine/mix/formulation';
import { JAR_STANDS_MINUTES } from '@/lib/engine/mix/jar-test';
import { mixSheet } from '@/lib/engine/mix/mix-sheet';
import { orderOfAddition } from '@/lib/engine/mix/order';
import { exact, toNumber } from '@/shared/quantity/exact';
import { day, type Fields, product, recipe, smallShop } from '../lib/engine/rules/small-shop';

/*
 * Mixing in a tank against what is published. `seen` was read in a copy of the source; `memory` was recalled and not
 * looked up again. Where two sources differ, neither is worked out from the other: a caution shows both ends.
 */

const of = (id: string, rest: Fields = {}) => product(id, {}, rest);

function ingredients(products: Fields[]) {
  const lines = products.map(({ id, form }) => ({ product: id, dose: form === 'powder' ? '1 g/L' : '1 mL/L' }));
  return smallShop({ products, recipes: [recipe('r1', ...lines)] }).recipes[0]?.ingredients ?? [];
}
const order = (products: Fields[]) =>
  orderOfAddition(ingredients(products)).map(({ ingredient }) => ingredient.product.id);
const cautions = (products: Fields[]) => cautionsFor(orderOfAddition(ingredients(products)));

const DRY = { form: 'powder' };
const UTAH = {
  WSP: of('WSP', { ...DRY, formulation: 'WSP' }),
  WP: of('WP', { ...DRY, formulation: 'WP' }),
  DF: of('DF', { ...DRY, formulation: 'DF' }),
  CS: of('CS', { formulation: 'CS' }),
  EC: of('EC', { formulation: 'EC' }),
  SL: of('SL', { formulation: 'SL' }),
  SP: of('SP', { ...DRY, formulation: 'SP' }),
  ADJ: of('ADJ', { kind: 'surfactant' }),
  FERT: of('FERT', { kind: 'nutrient', formulation: 'SL' }),
};
const JAR =
  'Utah State University Extension, Utah Pests News Winter 2012, "Using a Jar Test", utahpests.usu.edu/htm/utah-pests-news/up-winter-2012/using-a-jar-test/';

test(`T01 (seen, ${JAR}): bags, powders, dry flowables, capsules, emulsions, solutions, soluble powders, adjuvants`, () => {
  const published = Object.values(UTAH);
  const theirs = Object.keys(UTAH).filter((code) => code !== 'FERT');
  expect(order(published).filter((id) => id !== 'FERT')).toEqual(theirs);
  // It puts fertiliser after the adjuvants; here nutrients go with what else dissolves, and surfactants follow.
  const ours = order([...published].reverse());
  expect(ours.indexOf('FERT')).toBeLessThan(ours.indexOf('ADJ'));
  expect(ours.indexOf('FERT')).toBeGreaterThan(ours.indexOf('EC'));
  expect(JAR_STANDS_MINUTES).toBe(15);
});

test('T18 (memory, Purdue PPP-122): dry before flowables, flowables before emulsions, solutions and surfactants after', () => {
  const stages = ['WDG', 'SC', 'EC', 'SL'].map(stageOfFormulation);
  expect(stages).toEqual(['dry', 'suspension', 'emulsion', 'solution']);
  expect([stageOfFormulation('WP'), stageOfFormulation('F')]).toEqual(['dry', 'suspension']);
  // T01 and T18 agree on capsules: before the emulsions.
  expect(stageOfFormulation('CS')).toBe('suspension');
});

test('T03 (seen, Ontario Ministry of Agriculture, sprayers101.com/tankmix/): no more than three partners in a tank', () => {
  const partners = [UTAH.WP, UTAH.CS, UTAH.EC, UTAH.SL];
  expect(MOST_PARTNERS).toBe(3);
  expect(cautions(partners.slice(0, 3))).toEqual([]);
  expect(cautions(partners)).toMatchObject([{ source: expect.stringContaining('Ontario') }]);
});

test('T04 (seen, Ontario Ministry of Agriculture, sprayers101.com/loading-jartest/): at least half of the water goes in first', () => {
  const shop = smallShop({});
  const batch = batchFor({ kind: 'volume', ml: exact(8000n), area: null }, null);
  const [first] = shop.recipes;
  if (!batch.ok || !first) throw new Error('there is a recipe');
  const { waterFirst } = mixSheet(shop, first, batch.value, day('2026-03-02'));
  expect([toNumber(waterFirst.least), toNumber(waterFirst.most)]).toEqual([4000, 6000]);
});

const OIL = of('oil', { name: 'Horticultural oil', formulation: 'EC' });
const SULFUR = of('sulfur', {
  ...DRY,
  formulation: 'WP',
  contents: [{ substance: 'sulfur', amount: 80, basis: '% w/w' }],
});
const CAPTAN = of('captan', {
  ...DRY,
  formulation: 'WP',
  contents: [{ substance: 'Captan', amount: 50, basis: '% w/w' }],
});
const COPPER = of('copper', { contents: [{ substance: 'copper octanoate', amount: 10, basis: '% w/w' }] });
const BACTERIA = of('bacteria', { contents: [{ substance: 'Bacillus amyloliquefaciens', amount: 1, basis: '% w/w' }] });
const FUNGUS = of('fungus', { contents: [{ substance: 'Trichoderma harzianum', amount: 1, basis: '% w/w' }] });

test('T14, T16 (seen; WSU Hortsense says two to four weeks, labels quoted by a newspaper four, a landscaper 30 days for lime sulfur): oil and sulfur are kept apart, and the days are shown as the range that they are', () => {
  expect(cautions([OIL, SULFUR])).toMatchObject([
    {
      message: expect.stringMatching(
        /from 14 to 28, and 30 for lime sulfur; on dormant wood some mix them. The label decides/,
      ),
    },
  ]);
  const lime = of('lime', { contents: [{ substance: 'lime sulphur', amount: 28, basis: '% w/w' }] });
  expect(cautions([lime, OIL])).toHaveLength(1);
});

test('T15 (seen, mail-archive.com/apple-crop@virtualorchard.com/msg00407.html): oil and captan, 14 days', () => {
  expect(cautions([CAPTAN, OIL])).toMatchObject([{ message: expect.stringContaining('14 days') }]);
});

const UC = 'UC IPM Apple, ipm.ucanr.edu/agriculture/apple/fungicide-efficacybiocontrols-and-natural-products, note 4';
test(`T19 (seen, ${UC}): copper harms living bacteria, sulfur a living fungus`, () => {
  expect(cautions([COPPER, BACTERIA])).toMatchObject([{ message: expect.stringContaining('living bacteria') }]);
  expect(cautions([SULFUR, FUNGUS])).toMatchObject([{ message: expect.stringContaining('living fungus') }]);
  const harmless = [
    [COPPER, SULFUR],
    [BACTERIA, FUNGUS],
    [OIL, BACTERIA],
    [COPPER, CAPTAN],
  ];
  for (const pair of harmless) expect(cautions(pair)).toEqual([]);
});

test('sulfate and the nutrient S are no sulfur, and an oil alone is no pair', () => {
  const feed = of('feed', {
    kind: 'nutrient',
    contents: [
      { substance: 'S', amount: 10, basis: '% w/w' },
      { substance: 'potassium sulfate', amount: 10, basis: '% w/w' },
    ],
  });
  expect(cautions([OIL, feed])).toEqual([]);
  expect(cautions([of('both', { name: 'Sulfur in oil' })])).toEqual([]);
});

/*
 * Left out, because nothing here works out how fast an active falls apart or where it keeps: T05 to T08 and T10 (half-lives
 * by pH; captan's differ between sources by a factor of ten, so none may be worked out from another, and the label's
 * range of pH is what a mix is judged by), and T11 and T12 (shelf life in heat). T13 and T14 are
 * also held against the rules that count days and degrees, in oil-and-sulfur.test.ts.
 */
