import { expect, test } from 'vitest';
import { buyDocument } from '@/lib/engine/buying/buy-document';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import type { Solver } from '@/lib/engine/buying/solver';
import { equivalentsOf } from '@/lib/engine/equivalents/equivalents';
import { equivalentsDocument } from '@/lib/engine/equivalents/equivalents-document';
import { mixAnswerOf } from '@/lib/engine/mix/mix-answer';
import { AT_ONCE } from '@/lib/solver/at-once';
import { highsSolver } from '@/lib/solver/highs';
import { exact } from '@/shared/quantity/exact';
import { Day } from '@/shared/time/day';
import { money, planOf, shopWith } from './plan-of';

/*
 * Which price counts on which day. Worked by hand: 100 plants × 100 mL × 12 mL/L take 120 mL on each of the Mondays 9, 16,
 * 23 and 30 March 2026, from an empty shelf; a pack holds 120 mL and comes two working days after it was ordered, so that
 * the last days to order are the Thursdays 5, 12, 19 and 26 March.
 */
const TODAY = Day.parse('2026-03-02');
const WEEKS = 5;

type Price = { since: string | null; price: string };

const shop = (prices: Price[], freightPerOrder: string | null = '0') => {
  const [last, ...before] = prices.toReversed();
  return planOf(
    shopWith({
      shop: { capitalPerYear: 0 },
      suppliers: [{ id: 's', name: 'Seller', freightPerOrder }],
      products: [
        {
          ...{ id: 'p', name: 'Product', kind: 'nutrient', form: 'liquid' },
          contents: [{ substance: 'N', amount: 100, basis: 'g/L' }],
        },
      ],
      offers: [
        {
          ...{ id: 'o', supplier: 's', product: 'p', pack: '120 mL', leadDays: 2, price: last?.price ?? '0' },
          ...{ since: last?.since ?? null, earlier: before.toReversed() },
        },
      ],
      benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'plants', count: 100, mlPerPlant: 100 }] }],
      recipes: [{ id: 'r', name: 'Recipe', ingredients: [{ product: 'p', dose: '12 mL/L' }] }],
      programs: [
        {
          ...{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-09', startTime: '08:00', minutes: 10 },
          repeat: 'FREQ=WEEKLY;BYDAY=MO',
        },
      ],
    }),
    TODAY,
    WEEKS,
  );
};

const rising = [
  { since: null, price: '6.00' },
  { since: '2026-03-16', price: '12.00' },
];
const falling = [
  { since: '2026-01-01', price: '12.00' },
  { since: '2026-03-16', price: '6.00' },
];

const costs = (prices: Price[]) => shop(prices).sprayings.map(({ materialCost }) => money(materialCost));

test('a plan counts with the price in force today, and with none before the first', () => {
  expect(costs(rising)).toEqual(['6.000000', '6.000000', '6.000000', '6.000000']);
  expect(
    costs([
      { since: null, price: '6.00' },
      { since: TODAY, price: '12.00' },
    ])[0],
  ).toBe('12.000000');
  expect(
    costs([
      { since: null, price: '6.00' },
      { since: '2026-03-03', price: '12.00' },
    ])[0],
  ).toBe('6.000000');
  const none = shop([{ since: '2026-03-03', price: '12.00' }]);
  expect(none.sprayings.map(({ materialCost }) => materialCost)).toEqual([null, null, null, null]);
  expect(none.flags.map(({ rule }) => rule)).toContain('unknown-cost');
});

test('a mix and a comparison count with the price of their day', () => {
  const ours = shop(rising).shop;
  const mixed = (day: string) => {
    const mix = mixAnswerOf(ours, { recipe: 'r', ml: exact(1000n), area: null }, Day.parse(day));
    return mix.ok ? mix.value.cost : null;
  };
  // 12 mL of a pack of 120.
  expect([mixed('2026-03-15'), mixed('2026-03-16')]).toEqual(['0.600000', '1.200000']);
  const [recipe] = ours.recipes;
  const [product] = ours.products;
  if (!recipe || !product) throw new Error('the shop has both');
  const compared = (day: string) => {
    const found = equivalentsOf(ours, { recipe, product }, { today: Day.parse(day), weeks: 1 }, AT_ONCE);
    return found && equivalentsDocument(found).candidates[0]?.costPerLitre;
  };
  expect([compared('2026-03-15'), compared('2026-03-16')]).toEqual(['0.600000', '1.200000']);
});

const bought = (prices: Price[], freight?: string, solver: Solver = AT_ONCE) => {
  const document = buyDocument(purchasePlanOf(shop(prices, freight).shop, TODAY, WEEKS, solver));
  const orders = document.orders.map(({ on, lines }) => [
    on,
    ...lines.map(({ count, cost }) => `${count} for ${cost}`),
  ]);
  return { orders, total: document.cost.total, habits: document.habits, proven: document.proven };
};

test('what will be dearer is bought on the last working day before, and a habit pays more', () => {
  // Both packs for 23 and 30 March on Friday the 13th: 4 × 6. Ordered as late as they come in time: 6 + 6 + 12 + 12.
  expect(bought(rising)).toEqual({
    orders: [
      ['2026-03-05', '1 for 6.000000'],
      ['2026-03-12', '1 for 6.000000'],
      ['2026-03-13', '2 for 12.000000'],
    ],
    total: '24.000000',
    habits: { smallestPack: '36.000000', cheapestPerMl: '36.000000' },
    proven: true,
  });
});

test('what will be cheaper is bought when it is', () => {
  expect(bought(falling)).toMatchObject({
    orders: [
      ['2026-03-05', '1 for 12.000000'],
      ['2026-03-12', '1 for 12.000000'],
      ['2026-03-19', '1 for 6.000000'],
      ['2026-03-26', '1 for 6.000000'],
    ],
    total: '36.000000',
    proven: true,
  });
});

test('orders that cost freight keep to the price of their day, too', async () => {
  const solver = await highsSolver({ secondsLeft: () => 60, told: () => {} });
  // One order of all: 4 × 6 + 4. Falling: two at 12 and 4 freight, then two at 6 and 4 freight; all at once would be 52.
  expect(bought(rising, '4.00', solver)).toMatchObject({
    orders: [['2026-03-05', '4 for 24.000000']],
    total: '28.000000',
  });
  expect(bought(falling, '4.00', solver)).toMatchObject({
    orders: [
      ['2026-03-05', '2 for 24.000000'],
      ['2026-03-19', '2 for 12.000000'],
    ],
    total: '44.000000',
  });
});
