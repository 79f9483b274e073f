import { expect, test } from 'vitest';
import { isWithin, measured } from '@/lib/engine/mix/measuring';
import { mixAnswerOf } from '@/lib/engine/mix/mix-answer';
import type { Measure } from '@/lib/engine/shop';
import { exact, toNumber } from '@/shared/quantity/exact';
import { day, product, recipe, smallShop } from '../lib/engine/rules/small-shop';
import { near } from './published';

/*
 * What can still be measured within 5 %, against the least weighable quantity of pharmacy: sensitivity × 100 ÷ 5, where
 * the sensitivity is what a reading may be off by, half a step of the scale. `seen` was read in a copy of the source.
 */

const scale = (stepMg: number): Measure => ({
  ...{ name: 'scale', kind: 'mass', holdsText: '200 g', stepText: `${stepMg} mg` },
  ...{ holds: exact(200_000), step: exact(stepMg) },
});

const weighed = (amountMg: number, stepMg: number) => {
  const found = measured({ amount: exact(amountMg), product: { form: 'powder', gramsPerTeaspoon: null }, most: null }, [
    scale(stepMg),
  ]);
  if (!found) throw new Error('a scale weighs it');
  return found;
};

test.each([
  {
    sensitivity: 6,
    least: 120,
    source: 'University of North Carolina, Weighing, pharmlabs.unc.edu/labs/measurements/weigh.htm',
  },
  { sensitivity: 10, least: 200, source: 'pharmacalculation.com/2024/01/minimum-weighable-quantity-calculation.html' },
  { sensitivity: 4, least: 80, source: 'Accurate Weighing for Prescriptions, basicmedicalkey.com' },
])(
  'a scale that may be off by $sensitivity mg weighs $least mg within 5 %, and less not (seen, $source)',
  ({ sensitivity, least }) => {
    const step = 2 * sensitivity;
    // Half way between two marks is the worst there is: the last one below the least quantity, and the first above it.
    const halfWay = (marks: number) => weighed((marks + 0.5) * step, step);
    const first = Math.floor(least / step);
    expect(isWithin(halfWay(first - 1))).toBe(false);
    expect(isWithin(halfWay(first))).toBe(true);
  },
);

test('120 mg weighed with 6 mg too much or too little are off by 5 % (seen, as above, UNC)', () => {
  near(Math.abs(toNumber(weighed(120 - 6, 120).error)), 6 / 114, 1e-12);
  near(Math.abs(toNumber(weighed(126, 120).error)), 6 / 126, 1e-12);
});

test('50 mg on a scale that may be off by 6 mg may be off by 12 % (seen, as above, UNC)', () => {
  // The mark below 50 mg that is 6 mg away.
  near(Math.abs(toNumber(weighed(50, 44).error)), 0.12, 1e-12);
});

test('measured-roughly: with a scale that may be off by 6 mg a litre takes 120 mg, and 108 mg are flagged (seen, as above, UNC)', () => {
  const flagged = (dose: string) => {
    const shop = smallShop({
      settings: { measures: [{ name: 'scale', holds: '200 g', step: '0.012 g' }] },
      products: [product('p1', {}, { form: 'powder' })],
      recipes: [recipe('r1', { product: 'p1', dose })],
    });
    const mix = mixAnswerOf(shop, { recipe: 'r1', ml: exact(1000n), area: null }, day('2026-03-02'));
    return mix.ok && mix.value.flags.some(({ rule }) => rule === 'measured-roughly');
  };
  expect([flagged('0.12 g/L'), flagged('0.108 g/L')]).toEqual([false, true]);
});
