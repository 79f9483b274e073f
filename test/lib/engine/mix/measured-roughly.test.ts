import { expect, test } from 'vitest';
import { mixAnswerOf } from '@/lib/engine/mix/mix-answer';
import { exact } from '@/shared/quantity/exact';
import { day, product, recipe, smallShop } from '../rules/small-shop';

const CYLINDER = { name: '10 mL cylinder', holds: '10 mL', step: '0.5 mL' };

/** One litre of a mix, measured with a 10 mL cylinder that reads to 0.5 mL unless it says otherwise. */
function flagsOf(dose: string, measures = [CYLINDER], form: 'liquid' | 'powder' = 'liquid') {
  const shop = smallShop({
    settings: { measures },
    products: [product('p1', {}, { form, kind: 'nutrient' })],
    recipes: [recipe('r1', { product: 'p1', dose })],
  });
  const mix = mixAnswerOf(shop, { recipe: 'r1', ml: exact(1000n), area: null }, day('2026-03-02'));
  if (!mix.ok) throw new Error('there is such a recipe');
  return mix.value.flags.filter(({ rule }) => rule === 'measured-roughly');
}

/*
 * Worked by hand. Half a step is 0.25 mL: of 5 mL that is 5 %, of 4.9 mL to the mark of 5 it is 2.04 % + 5.10 %, of 5.5 mL
 * 4.55 %. 10 mL are one full cylinder, 2.5 %; 12 mL are one and a filling to 2: 0.5 mL of 12 is 4.17 %.
 */
test.each([
  { dose: '5 mL/L', flags: 0 },
  { dose: '4.9 mL/L', flags: 1 },
  { dose: '4.5 mL/L', flags: 1 },
  { dose: '5.5 mL/L', flags: 0 },
  { dose: '5.6 mL/L', flags: 1 },
  { dose: '10 mL/L', flags: 0 },
  { dose: '12 mL/L', flags: 0 },
])('$dose with a 10 mL cylinder by 0.5 mL: $flags flag', ({ dose, flags }) => {
  expect(flagsOf(dose)).toHaveLength(flags);
});

test('the flag says how far off, and what helps', () => {
  expect(flagsOf('2 mL/L')).toMatchObject([
    {
      ...{ severity: 'warn', rule: 'measured-roughly', on: '2026-03-02', program: null, benches: [], product: 'p1' },
      message:
        '2 mL of Product p1, measured with 10 mL cylinder, to 2 mL, may be off by up to 13 %. Use a finer measure, mix more at once or make a stock solution.',
    },
  ]);
});

test('a finer measure clears it, and a scale is judged the same way', () => {
  const syringe = { name: 'syringe', holds: '3 mL', step: '0.1 mL' };
  expect(flagsOf('2 mL/L', [CYLINDER, syringe])).toEqual([]);
  const scale = { name: 'scale', holds: '500 g', step: '0.1 g' };
  expect(flagsOf('1 g/L', [scale], 'powder')).toEqual([]);
  expect(flagsOf('0.9 g/L', [scale], 'powder')).toHaveLength(1);
});

test('without a measure nothing is said of how well it measures', () => {
  expect(flagsOf('2 mL/L', [])).toEqual([]);
});
