import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { acidSteps } from '@/lib/engine/mix/acid-steps';
import { batchFor } from '@/lib/engine/mix/batch';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { stock } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import { Day } from '@/shared/time/day';

const demo = shopOfFile(demoShop(Day.parse('2026-03-03')));
const [recipe, citric] = [
  demo.recipes.find(({ id }) => id === 'thrips-turn'),
  demo.products.find(({ id }) => id === 'citric-acid'),
];
const tenLitres = batchFor({ kind: 'volume', ml: exact(10_000n), area: null }, null);

/** The demo with records of so much citric acid in ten litres, mg, and the pH that it gave. */
function stepsAfter(readings: { acid: number; pH: number }[]) {
  const [record] = demo.applications;
  if (!recipe || !citric || !record || !tenLitres.ok) throw new Error('the demo has no such recipe');
  const applications = readings.map(({ acid, pH }) => ({
    ...{ ...record, recipe, sprayed: exact(10_000n), pH },
    acid: { product: citric, amount: stock(acid) },
  }));
  return acidSteps({ ...demo, applications }, recipe, tenLitres.value);
}

test('every acid of the shop is given as two thirds, with the pH to expect between water and target', () => {
  const { steps, correction } = stepsAfter([]);
  expect(steps.map(({ product }) => product.id)).toContain('citric-acid');
  expect(correction).toBeNull();
  for (const { amount, first, corrected } of steps) {
    expect(first?.amount).toBeCloseTo(((amount ?? 0) * 2) / 3, 9);
    expect(first?.pH).toBeGreaterThan(6.4);
    expect(first?.pH).toBeLessThan(7.5);
    expect(corrected).toBeNull();
  }
});

test('a shop whose meter says that less acid does it is told of less, but never below the bound', () => {
  const plain = stepsAfter([]).steps.find(({ product }) => product === citric)?.amount ?? 0;
  const needed = plain * 1000;
  const learned = stepsAfter([
    { acid: Math.round(needed * 0.9), pH: 6.4 },
    { acid: Math.round(needed * 0.9), pH: 6.4 },
  ]);
  expect(learned.correction).toMatchObject({ readings: 2, beyondBounds: false });
  expect(learned.steps.find(({ product }) => product === citric)?.corrected).toBeCloseTo(plain * 0.9, 3);
  const far = stepsAfter([
    { acid: Math.round(needed * 0.5), pH: 6.4 },
    { acid: Math.round(needed * 0.5), pH: 6.4 },
  ]);
  expect(far.correction).toMatchObject({ factor: 0.7, beyondBounds: true });
});
