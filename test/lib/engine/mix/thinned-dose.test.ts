import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mixStrength } from '@/lib/engine/mix/mix-strength';
import { fromSolution, solutionsFor } from '@/lib/engine/mix/thinned-dose';
import { doseFindings } from '@/lib/engine/rules/dose-outside-label';
import type { Ingredient, Shop } from '@/lib/engine/shop';
import { readDose } from '@/shared/measure/dose';
import { type Fields, product, recipe, smallShop } from '../rules/small-shop';

/** A powder of 6 % iron and its solution of `share`, with one line of the powder in a recipe. */
function ironAt(
  dose: string,
  share = '72 g/L',
  label: Fields = {},
  ...more: Fields[]
): { shop: Shop; line: Ingredient } {
  const contents = (amount: number, basis: string) => ({ contents: [{ substance: 'Fe', amount, basis }] });
  const shop = smallShop({
    products: [
      product('fe', label, { form: 'powder', gramsPerTeaspoon: 3.6, ...contents(6, '% w/w') }),
      product(
        's',
        {},
        { madeFrom: [{ product: 'fe', dose: share }], ...contents(0.06 * Number.parseFloat(share), 'g/L') },
      ),
      ...more,
    ],
    recipes: [recipe('r', { product: 'fe', dose })],
  });
  const line = shop.recipes[0]?.ingredients[0];
  if (!line) throw new Error('no line');
  return { shop, line };
}

const solution = ({ products }: Shop, id = 's') => {
  const found = products.find((one) => one.id === id);
  if (!found) throw new Error(`no product ${id}`);
  return found;
};

test.each([
  // A sixteenth of a teaspoon is 0.225 g, and there are 72 mg in a mL.
  { dose: '1/16 tsp/gal', share: '72 g/L', thinned: '3.125 mL/gal' },
  { dose: '1/4 tsp per 100 gal', share: '72 g/L', thinned: '12.5 mL/100 gal' },
  // 1.2 g in a gallon.
  { dose: '1/3 tsp/gal', share: '72 g/L', thinned: '16.666666666 mL/gal' },
  { dose: '0.36 g/L', share: '72 g/L', thinned: '5 mL/L' },
  { dose: '0.1 g/L', share: '30 g/L', thinned: '3.333333333 mL/L' },
  { dose: '2 lb/acre', share: '100 g/L', thinned: '2.241702312 mL/m2' },
  { dose: '20 ppm Fe', share: '72 g/L', thinned: '20 ppm Fe' },
])('$dose, from a solution of $share, is $thinned', ({ dose, share, thinned }) => {
  const { shop, line } = ironAt(dose, share);
  expect(fromSolution(line, solution(shop))).toBe(thinned);
});

test('whatever the dose and the share, the spray is as strong as before', () => {
  const doses = fc.tuple(fc.integer({ min: 1, max: 9_999 }), fc.constantFrom('mg/L', 'g/100 gal', 'oz/100 gal'));
  fc.assert(
    fc.property(doses, fc.integer({ min: 20, max: 999 }), ([amount, per], share) => {
      const { shop, line } = ironAt(`${amount / 8} ${per}`, `${share} g/L`);
      const text = fromSolution(line, solution(shop));
      const dose = text === null ? null : readDose(text, 'liquid');
      if (!dose?.ok) return text === null;
      const before = mixStrength([line]).strength[0]?.mgPerL;
      const after = mixStrength([{ product: solution(shop), dose: dose.value }]).strength[0]?.mgPerL;
      return Math.abs((after ?? 0) / (before ?? 1) - 1) < 1e-5;
    }),
    { numRuns: 60 },
  );
});

test('a dose at either end of the label stays inside it', () => {
  const label = { rates: [{ use: 'foliar', min: '0.1 g/L', max: '0.2 g/L' }] };
  for (const end of ['0.1 g/L', '0.2 g/L']) {
    const { shop, line } = ironAt(end, '30 g/L', label);
    const dose = readDose(fromSolution(line, solution(shop)) ?? '', 'liquid');
    if (!dose.ok) throw new Error(dose.message);
    const thinned = { ...line, product: solution(shop), dose: dose.value };
    const stock = { id: 'r', name: 'R', targetPh: null, useWithin: null, ingredients: [thinned] };
    expect(doseFindings(stock, { benches: [], sprayMl: null }).map(({ message }) => message())).toEqual([]);
  }
});

test('only what holds the product alone is offered at a dose, and what was put away not at all', () => {
  const both = [
    { product: 'fe', dose: '10 g/L' },
    { product: 's', dose: '10 mL/L' },
  ];
  const away = product('away', {}, { madeFrom: [{ product: 'fe', dose: '10 g/L' }], archived: true });
  const { shop, line } = ironAt('0.1 g/L', '72 g/L', {}, product('both', {}, { madeFrom: both }), away);
  expect(solutionsFor(shop, line).map(({ id }) => id)).toEqual(['s', 'both']);
  expect(fromSolution(line, solution(shop, 'both'))).toBeNull();
  expect(fromSolution(line, solution(shop, 'fe'))).toBeNull();
});
