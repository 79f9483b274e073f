import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { acidReadings, acidSteps } from '@/lib/engine/mix/acid-steps';
import { batchFor } from '@/lib/engine/mix/batch';
import type { Product, Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { type Dose, readDose } from '@/shared/measure/dose';
import { stock } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import { Day } from '@/shared/time/day';

const demo = shopOfFile(demoShop(Day.parse('2026-03-03')));
const [turn, citric] = [
  demo.recipes.find(({ id }) => id === 'thrips-turn'),
  demo.products.find(({ id }) => id === 'citric-acid'),
];
/** The same without its own acid. */
const recipe = turn && {
  ...turn,
  targetPh: 6.4,
  ingredients: turn.ingredients.filter(({ product }) => product !== citric),
};
const tenLitres = batchFor({ kind: 'volume', ml: exact(10_000n), area: null }, null);

const whole = (text: string): Dose => {
  const dose = readDose(text, 'powder');
  if (!dose.ok) throw new Error(dose.message);
  return dose.value;
};

/** What is still to be added to a recipe of its own citric acid at a dose. */
function besideOwn(dose: string, targetPh: number, shop: Shop = demo, changed: Partial<Product> = {}) {
  if (!recipe || !citric || !tenLitres.ok) throw new Error('the demo has no such recipe');
  const product = Object.keys(changed).length > 0 ? { ...citric, ...changed } : citric;
  const own = { product, dose: whole(dose), use: null, order: null };
  return acidSteps(shop, { ...recipe, targetPh, ingredients: [...recipe.ingredients, own] }, tenLitres.value);
}

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

const citricOf = ({ steps }: ReturnType<typeof acidSteps>) => steps.find(({ product }) => product === citric);

test('what a recipe pours of an acid and what is still to add are together what its target takes', () => {
  const all = citricOf(stepsAfter([]))?.amount ?? 0;
  for (const dose of [0.01, 0.04, 0.06]) {
    const beside = besideOwn(`${dose} g/L`, 6.4);
    expect(beside.own?.products).toEqual([citric]);
    expect((citricOf(beside)?.amount ?? 0) + dose * 10).toBeCloseTo(all, 9);
    // Two thirds of the rest bring it nearer than the recipe's own did, and no further than the target.
    const expected = citricOf(beside)?.first?.pH ?? 0;
    expect(expected).toBeGreaterThan(6.4);
    expect(expected).toBeLessThan(beside.own?.pH ?? 0);
    expect(beside.own?.message).toMatch(/brings it to pH .+ takes more/);
  }
});

test('a recipe whose own acid is enough, or too much, is given no more of any', () => {
  // At 0.08 g/L it comes within a tenth of 6.4, which no pen could tell from it.
  for (const [dose, says] of [
    ['0.08 g/L', /which is the target: add no more acid/],
    ['0.2 g/L', /below the target of 6.4, and an acid cannot raise it/],
  ] as const) {
    const { own, steps } = besideOwn(dose, 6.4);
    expect(steps).toEqual([]);
    expect(own).toMatchObject({ left: 0, message: expect.stringMatching(says) });
  }
});

test('an own acid that nobody can reckon with leaves the rest to the meter', () => {
  const { own, steps } = besideOwn('1 tsp/gal', 6.4, demo, { gramsPerTeaspoon: null });
  expect(steps).toEqual([]);
  expect(own).toMatchObject({
    pH: null,
    left: null,
    message: expect.stringMatching(/^How far Citric .+ nobody can say/),
  });
  const unmeasured = besideOwn('0.04 g/L', 6.4, { ...demo, water: null });
  expect(unmeasured).toMatchObject({ steps: [], own: { pH: null, left: null } });
});

test('a reading in which another acid had a part says nothing about this one', () => {
  const [record] = demo.applications;
  if (!recipe || !citric || !record) throw new Error('the demo has no such recipe');
  const withOwn = { ...recipe, ingredients: [{ product: citric, dose: whole('0.04 g/L'), use: null, order: null }] };
  const read = (id: string) => {
    const product = demo.products.find((one) => one.id === id) ?? { ...citric, id };
    const applications = [
      { ...record, recipe: withOwn, sprayed: exact(10_000n), pH: 6.4, acid: { product, amount: stock(800) } },
    ];
    return acidReadings({ ...demo, applications }).length;
  };
  expect(read('citric-acid')).toBe(1);
  expect(read('another-acid')).toBe(0);
});
