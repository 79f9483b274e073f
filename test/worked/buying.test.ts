import { expect, test } from 'vitest';
import { buyDocument } from '@/lib/engine/buying/buy-document';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { AT_ONCE } from '@/lib/solver/at-once';
import { BuyAnswer } from '@/shared/api/buying-answers';
import { Day } from '@/shared/time/day';
import { planOf, shopWith, type Written } from './plan-of';

/*
 * A product of which 120 mL are sprayed on 51 Mondays, bought for 52 weeks from an empty shelf. Orders cost nothing, so
 * the answers are those of the exact path; each total was worked out by hand as well.
 */

const TODAY = Day.parse('2026-03-02');

type Offered = { pack: string; price: string; leadDays?: number; supplier?: string };

function bought(
  offers: Offered[],
  more: { capitalPerYear?: number; safetyDays?: number; suppliers?: object; orders?: Written['orders'] } = {},
) {
  const { suppliers = {}, capitalPerYear = 0, safetyDays = 0, orders = [] } = more;
  const { shop } = planOf(
    shopWith({
      shop: { capitalPerYear, safetyDays, fillCapacity: '10 L' },
      suppliers: [{ id: 's', name: 'Seller', ...suppliers }],
      products: [{ id: 'p', name: 'Product', kind: 'nutrient', form: 'liquid', shelfLife: { openedDays: 30 } }],
      offers: offers.map((one, at) => ({ id: `o${at}`, supplier: 's', product: 'p', leadDays: 2, ...one })),
      orders,
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
    52,
  );
  return purchasePlanOf(shop, TODAY, 52, AT_ONCE);
}

const HALF_LITRE: Offered = { pack: '500 mL', price: '40.00' };
const TWO_LITRES: Offered = { pack: '2 L', price: '110.00' };

test('only half litres: 13 of them for 520, of which 380 mL are left and worth 30.40', () => {
  // 6,120 mL take 12.24 packs. The last one is opened on 22 February and keeps to 24 March: 24 days behind the horizon,
  // in which 6,120 ÷ 364 mL a day would use 403 mL. All 380 mL count: 40 × 380 ÷ 500.
  const document = buyDocument(bought([HALF_LITRE]));
  expect(BuyAnswer.parse(document)).toEqual(document);
  expect(document.cost).toEqual({
    ...{ packs: '520.000000', freight: '0.000000', capital: '0.000000' },
    ...{ left: '30.400000', total: '489.600000', ofWhichWaste: '0.000000' },
  });
  expect(document.habits).toEqual({ smallestPack: '489.600000', cheapestPerMl: '489.600000' });
  expect({ proven: document.proven, gap: document.gap, late: document.late }).toEqual({
    proven: true,
    gap: 0,
    late: [],
  });
});

test('only two litres: each dies after five sprayings, 770 of 1,210 are poured away', () => {
  // 11 packs. In each of the first ten 1,400 mL die; of the last one, opened for one spraying, 403.516 mL are used yet.
  const { cost } = buyDocument(bought([TWO_LITRES]));
  expect(cost).toMatchObject({
    packs: '1210.000000',
    left: '22.193407',
    total: '1187.806593',
    ofWhichWaste: '770.000000',
  });
});

test('both: half litres again, though two litres are cheaper per mL', () => {
  const plan = bought([HALF_LITRE, TWO_LITRES]);
  expect(buyDocument(plan).cost.total).toBe('489.600000');
  expect(buyDocument(plan).habits).toEqual({ smallestPack: '489.600000', cheapestPerMl: '1187.806593' });
});

test('an order comes in working days, with the safety days before the need', () => {
  // Needed on Monday 9 March, three days before is Friday; two working days earlier is Wednesday.
  const [first] = buyDocument(bought([HALF_LITRE], { safetyDays: 3 })).orders;
  expect(first).toMatchObject({ supplier: 's', on: '2026-03-04', lines: [{ offer: 'o0', product: 'p', count: 1 }] });
});

test('what no order reaches is late, is ordered today, and counts as if it were met', () => {
  // Ten working days from Monday 2 March is Monday 16 March: the spraying of the 9th is late, that of the 16th is not.
  const document = buyDocument(bought([{ ...HALF_LITRE, leadDays: 10 }]));
  expect(document.late).toEqual([{ product: 'p', on: '2026-03-09', amount: 120 }]);
  expect(document.orders[0]).toMatchObject({ on: '2026-03-02' });
  expect(document.cost.total).toBe('489.600000');
});

test('the quicker pack is bought for what the slower one cannot reach', () => {
  const quick: Offered = { pack: '120 mL', price: '30.00', leadDays: 1 };
  const document = buyDocument(bought([{ ...HALF_LITRE, leadDays: 10 }, quick]));
  expect(document.late).toEqual([]);
  expect(document.orders.slice(0, 2)).toMatchObject([
    { on: '2026-03-02', lines: [{ offer: 'o0', count: 1 }] },
    { on: '2026-03-06', lines: [{ offer: 'o1', count: 1, cost: '30.000000' }] },
  ]);
});

test('money is tied up from the order to the use of each part, or to its end', () => {
  // One pack of 240 mL for two sprayings a week apart, ordered on the Thursday before the first Monday: half of its price
  // for 4 days, half of it for 11, at 36.5 % a year, which is a thousandth a day.
  const { cost, parts } = bought([{ pack: '240 mL', price: '24.00' }], { capitalPerYear: 0.365 });
  const [pack] = parts[0]?.purchase.packs ?? [];
  expect(pack?.capital).toBe(24_000_000 * 0.001 * ((4 + 11) / 2));
  expect(cost.total).toBe(cost.packs + cost.freight + cost.capital - cost.left);
});

test('what was ordered and is still to come is not bought again', () => {
  // 12 more packs: the one that comes on the 6th gives the first four sprayings and a sixth of the fifth.
  const orders = [
    { id: 'x', supplier: 's', placedOn: '2026-02-27', expectedOn: '2026-03-06', lines: [{ offer: 'o0', count: 1 }] },
  ];
  const { cost, late } = buyDocument(bought([HALF_LITRE], { orders }));
  expect(cost.packs).toBe('480.000000');
  expect(late).toEqual([]);
});

test('a freight that nobody entered is unknown, counts nothing and is said', () => {
  const plan = bought([HALF_LITRE]);
  expect(buyDocument(plan).orders[0]?.freight).toBeNull();
  expect(plan.unknowns.some(({ what }) => what === 'freight')).toBe(true);
});

test('without a solver and without time the answer is still no dearer than a habit', () => {
  const plan = bought([HALF_LITRE, TWO_LITRES], { suppliers: { freightPerOrder: '12.00', freeFreightOver: '200.00' } });
  expect(plan.cost.total).toBeLessThanOrEqual(Math.min(plan.habits.smallestPack, plan.habits.cheapestPerMl));
  expect(plan.bound).toBeLessThanOrEqual(plan.cost.total);
});
