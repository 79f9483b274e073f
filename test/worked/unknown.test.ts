import { expect, test } from 'vitest';
import { buyDocument } from '@/lib/engine/buying/buy-document';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { AT_ONCE } from '@/lib/solver/at-once';
import { parseShopFile } from '@/shared/shop-file/parse';
import { Day } from '@/shared/time/day';
import { flagRows, needFigures, planOf, productFigures, shopWith, sprayingFigures, type Written } from './plan-of';

/*
 * Shops in which one thing is not known. Source of every figure here: worked by hand from the definitions of the shop
 * file ("Unknown need", "Assumed"). Mondays: 4, 11, 18, 25 May 2026.
 */

const TODAY = '2026-05-04';
const WEEKS = 4;

const powder = { id: 'p1', name: 'Bloom powder', kind: 'nutrient', form: 'powder', label: { reiHours: 0 } } as const;
const oil = { id: 'p2', name: 'Oil', kind: 'other', form: 'liquid', label: { reiHours: 0 } } as const;
const weekly = { startsOn: '2026-05-04', repeat: 'FREQ=WEEKLY;BYDAY=MO', startTime: '10:00', minutes: 20 };
const bench = { id: 'b1', name: 'Bench', plants: [{ name: 'plant', count: 100, mlPerPlant: 20 }] };
const supplier = { id: 's1', name: 'Supplier' };

/** 100 plants × 20 mL = 2 L of spray each Monday. */
const spooned = (of: Partial<Written>): Written =>
  shopWith({
    products: [powder],
    suppliers: [supplier],
    offers: [{ id: 'o1', supplier: 's1', product: 'p1', pack: '1 kg', price: '25.00' }],
    benches: [bench],
    recipes: [{ id: 'r1', name: 'Feed', ingredients: [{ product: 'p1', dose: '2 tsp/gal' }] }],
    programs: [{ id: 'g1', recipes: ['r1'], benches: ['b1'], ...weekly }],
    ...of,
  });

function bought(file: Written) {
  const parsed = parseShopFile(JSON.stringify(file));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  return buyDocument(purchasePlanOf(shopOfFile(parsed.file), Day.parse(TODAY), WEEKS, AT_ONCE));
}

test('a powder dosed by the spoon, none on the shelf: nobody knows the need, and it says so everywhere', () => {
  const plan = planOf(spooned({}), TODAY, WEEKS);
  expect(needFigures(plan, 'p1')).toMatchObject({
    unknownSince: '2026-05-04',
    runsOutOn: null,
    orderBy: null,
    weeks: Array.from({ length: WEEKS }, () => [null, 0, 0, 0, 0, 0]),
    atLeast: [0, 0, 0, 0],
  });
  // Four mixes of unknown cost: none is in the total, and the total counts them.
  expect(plan.totals).toMatchObject({ materialCost: 0, unknownCosts: 4 });
  expect(flagRows(plan).filter((row) => row.includes('unknown-need'))).toEqual(['warn unknown-need 2026-05-04']);
  const flag = plan.flags.find(({ rule }) => rule === 'unknown-need');
  expect(flag).toMatchObject({ program: 'g1', benches: ['b1'], product: 'p1' });
  expect(flag?.message).toContain('Weigh one level teaspoon of Bloom powder');
  expect(flag?.toEnter).toMatchObject([{ at: { of: 'product', id: 'p1', field: 'gramsPerTeaspoon' } }]);
  expect(bought(spooned({}))).toMatchObject({
    orders: [],
    unknown: ['p1'],
    proven: false,
    cost: { total: '0.000000' },
  });
});

test('a second recipe that weighs the powder is the known part of the need', () => {
  const recipes = [
    { id: 'r1', name: 'Feed', ingredients: [{ product: 'p1', dose: '2 tsp/gal' }] },
    { id: 'r2', name: 'Feed by weight', ingredients: [{ product: 'p1', dose: '3 g/L' }] },
  ];
  const programs = [
    // By weight on 4 and 18 May, by the spoon on 11 and 25 May: 2 L × 3 g/L = 6 g.
    { id: 'g1', recipes: ['r2', 'r1'], benches: ['b1'], ...weekly },
  ];
  const plan = planOf(spooned({ recipes, programs }), TODAY, WEEKS);
  expect(needFigures(plan, 'p1')).toMatchObject({
    unknownSince: '2026-05-11',
    runsOutOn: '2026-05-04',
    weeks: [
      [6, 0, 6, 0, 0, 0],
      [null, 0, 0, 0, 0, 0],
      [6, 0, 6, 0, 0, 0],
      [null, 0, 0, 0, 0, 0],
    ],
    atLeast: [6, 0, 6, 0],
  });
  // What is known is planned: 12 g, one pack of 1 kg.
  const document = bought(spooned({ recipes, programs }));
  expect(document.unknown).toEqual(['p1']);
  expect(document.proven).toBe(false);
  expect(document.orders).toMatchObject([{ lines: [{ offer: 'o1', count: 1 }] }]);
});

test('a bench without measured spray makes all that is sprayed there unknown, by volume and by weight alike', () => {
  const benches = [{ ...bench, plants: [{ name: 'plant', count: 100 }] }];
  const recipes = [
    {
      id: 'r1',
      name: 'Both',
      ingredients: [
        { product: 'p1', dose: '1 g/L' },
        { product: 'p2', dose: '5 mL/L' },
      ],
    },
  ];
  const lots = [{ id: 'l1', product: 'p2', pack: '1 L', paid: '20.00', receivedOn: '2026-05-01' }];
  const plan = planOf(spooned({ benches, recipes, lots, products: [powder, oil] }), TODAY, WEEKS);
  expect(sprayingFigures(plan).map(({ sprayMl, materialCost }) => [sprayMl, materialCost])).toEqual(
    Array.from({ length: WEEKS }, () => [null, null]),
  );
  for (const id of ['p1', 'p2']) {
    expect(needFigures(plan, id)).toMatchObject({ unknownSince: '2026-05-04', runsOutOn: null });
  }
  expect(productFigures(plan, 'p2').weeks[0]).toEqual([null, 0, 0, 0, 0, 1000]);
  const flags = plan.flags.filter(({ rule }) => rule === 'unknown-need');
  expect(flags.map(({ product, on }) => [product, on])).toEqual([
    ['p1', '2026-05-04'],
    ['p2', '2026-05-04'],
  ]);
  for (const { message, toEnter } of flags) {
    expect(message).toContain('Enter the mL per plant of plant on Bench');
    expect(toEnter).toMatchObject([{ at: { of: 'bench', id: 'b1', field: 'mlPerPlant', group: 0 } }]);
  }
});

test('without a wage every labour cost is unknown, and the total counts them', () => {
  const shop = spooned({ products: [{ ...powder, gramsPerTeaspoon: 5 }] });
  const [unpaid, paid] = [shop, { ...shop, shop: { ...shop.shop, wagePerHour: '18.00' } }].map((file) =>
    planOf(file, TODAY, WEEKS),
  );
  expect(unpaid?.totals).toMatchObject({ labourCost: 0, unknownLabour: 4, unknownCosts: 0 });
  // 20 of 60 minutes at 18.00 = 6.00, four times.
  expect(paid?.totals).toMatchObject({ labourCost: 24_000_000, unknownLabour: 0 });
});

test('a bottle without a price that will die: the waste is unknown, counted, and in no sum', () => {
  const lots = [{ id: 'l1', product: 'p2', pack: '1 L', receivedOn: '2026-05-01', expiresOn: '2026-05-10' }];
  const plan = planOf(spooned({ products: [powder, oil], lots }), TODAY, WEEKS);
  expect(plan.totals).toMatchObject({ wasteCost: 0, unknownWaste: 1 });
  expect(productFigures(plan, 'p2').wasteCost).toBeNull();
});

test('what buying takes for granted is listed by its place in the file, and nothing when all is entered', () => {
  const known = spooned({
    products: [{ ...powder, gramsPerTeaspoon: 5, shelfLife: { unopenedDays: 700, openedDays: 300 } }],
    suppliers: [{ ...supplier, freightPerOrder: '9.00', minimumOrder: '0' }],
    offers: [{ id: 'o1', supplier: 's1', product: 'p1', pack: '1 kg', price: '25.00', leadDays: 3 }],
  });
  expect(bought(known)).toMatchObject({ unknown: [], assumed: [] });
  expect(bought(spooned({ products: [{ ...powder, gramsPerTeaspoon: 5 }] })).assumed).toEqual([
    { path: 'suppliers[0].freightPerOrder', taken: 'orders cost no freight' },
    { path: 'suppliers[0].minimumOrder', taken: 'orders of any size are taken' },
    {
      path: 'products[0].shelfLife.unopenedDays',
      taken: 'it keeps unopened without end; what is left is worth 365 days of use',
    },
    { path: 'products[0].shelfLife.openedDays', taken: 'opened, it keeps as long as unopened' },
    { path: 'offers[0].leadDays', taken: 'it comes in 0 working days' },
  ]);
});
