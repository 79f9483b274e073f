import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { parseShopFile } from '@/shared/shop-file/parse';
import type { Day } from '@/shared/time/day';
import { changed, type Json, smallShop } from '../../../shared/shop-file/small-shop';

function planOf(file: Json, weeks = 2) {
  const parsed = parseShopFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return planDocument(planAhead(shopOfFile(parsed.file), '2026-03-02' as Day, weeks));
}

/*
 * 120 herbs × 18 mL = 2160 mL, in one fill with 100 mL lost: 2260, up to the next half litre 2500 mL.
 * 12 mL per 3.785411784 L × 2.5 L = 7.925 mL of a quart that cost 74.00.
 */
test('a spraying is printed in mL, six places of money and the shop’s own clock', () => {
  const [spraying] = planOf(changed(smallShop(), ['recipes', 0, 'ingredients', 1], undefined)).sprayings;
  expect(spraying).toEqual({
    program: 'g1',
    recipe: 'r1',
    benches: ['b1', 'b2'],
    date: '2026-03-03',
    startsAt: '2026-03-03T17:30:00-05:00',
    endsAt: '2026-03-03T18:15:00-05:00',
    sprayMl: 2500,
    plants: 120,
    fills: [{ ml: 2500 }],
    ingredients: [{ product: 'p1', amount: 7.925, unit: 'mL', cost: '0.619695' }],
    materialCost: '0.619695',
    labourCost: '13.500000',
    costPerPlant: '0.005164',
    costPerLitre: '0.247878',
    reopensAt: '2026-03-04T06:45:00-05:00',
  });
});

test('after the clocks changed, moments carry the new offset', () => {
  expect(planOf(smallShop()).sprayings[1]?.startsAt).toBe('2026-03-10T17:30:00-04:00');
});

test('a spray volume that nobody knows leaves every figure that needs it unknown', () => {
  const [spraying] = planOf(changed(smallShop(), ['benches', 0, 'plants', 0, 'mlPerPlant'], null)).sprayings;
  expect(spraying).toMatchObject({
    sprayMl: null,
    fills: null,
    plants: 120,
    ingredients: [
      { amount: null, cost: null },
      { amount: null, cost: null },
    ],
    materialCost: null,
    costPerPlant: null,
    costPerLitre: null,
    labourCost: '13.500000',
  });
});

test('nothing to spray has no cost per plant or litre', () => {
  const [spraying] = planOf(changed(smallShop(), ['programs', 0, 'benches'], ['b2'])).sprayings;
  expect(spraying).toMatchObject({ sprayMl: 0, fills: [], plants: 0, materialCost: '0.000000' });
  expect(spraying).toMatchObject({ costPerPlant: null, costPerLitre: null });
});

test('an unknown interval reopens at nobody knows when, and an unknown wage costs nobody knows what', () => {
  let file = changed(smallShop(), ['products', 0, 'label', 'reiHours'], null);
  file = changed(file, ['shop', 'wagePerHour'], null);
  expect(planOf(file).sprayings[0]).toMatchObject({ reopensAt: null, labourCost: null });
});

test('the shelf is printed by product and week, a powder in grams', () => {
  const [quart, powder] = planOf(smallShop()).products;
  expect(quart).toMatchObject({
    product: 'p1',
    unit: 'mL',
    onHand: 600,
    usable: 600,
    runsOutOn: null,
    orderBy: null,
    weeksUntilReorder: null,
    wasteCost: '0.000000',
  });
  expect(quart?.weeks).toEqual([
    {
      week: '2026-03-02',
      need: 7.925,
      needAtLeast: 7.925,
      used: 7.925,
      short: 0,
      wasted: 0,
      received: 0,
      closing: 592.075,
    },
    {
      week: '2026-03-09',
      need: 7.925,
      needAtLeast: 7.925,
      used: 7.925,
      short: 0,
      wasted: 0,
      received: 0,
      closing: 584.15,
    },
  ]);
  expect(powder).toMatchObject({ product: 'p2', unit: 'g', onHand: 750 });
});

test('when stock runs out, the day, the day to order by and the weeks until then are printed', () => {
  const [quart] = planOf(changed(smallShop(), ['lots', 0, 'remaining'], '10 mL')).products;
  // Short on Tuesday 10 March; three safety days: there by Saturday 7 March; five working days before: 27 February.
  expect(quart).toMatchObject({ runsOutOn: '2026-03-10', orderBy: '2026-02-27', weeksUntilReorder: -1 });
  expect(quart?.weeks[1]).toMatchObject({ need: 7.925, used: 2.075, short: 5.85, closing: 0 });
});

test('totals and flags come out as they are', () => {
  const plan = planOf(changed(smallShop(), ['lots', 0, 'remaining'], '10 mL'));
  expect(Object.keys(plan)).toEqual(['from', 'weeks', 'sprayings', 'products', 'totals', 'flags', 'assumed']);
  expect(plan).toMatchObject({ from: '2026-03-02', weeks: 2, totals: { labourCost: '27.000000', unknownCosts: 0 } });
  expect(plan.flags).toContainEqual({
    severity: 'stop',
    rule: 'short',
    on: '2026-03-10',
    program: 'g1',
    benches: ['b1', 'b2'],
    product: 'p1',
    message: expect.any(String),
  });
});
