import { expect, test } from 'vitest';
import { flagRows, needFigures, planOf, productFigures, shopWith, sprayingFigures } from './plan-of';

/*
 * Powders by the spoon. Source of every figure here: worked by hand from the definitions of the shop file.
 */

/** A gallon of spray: 3,000 mL on the plants, rounded up to a step of one gallon. */
const spooned = shopWith({
  shop: { fillCapacity: '1 gal', measuringStep: '1 gal', wagePerHour: '15.00' },
  products: [
    { id: 'weighed', name: 'Weighed', kind: 'nutrient', form: 'powder', gramsPerTeaspoon: 4.8, label: { reiHours: 0 } },
    { id: 'unweighed', name: 'Unweighed', kind: 'nutrient', form: 'powder', label: { reiHours: 0 } },
  ],
  lots: [
    {
      id: 'l1',
      product: 'weighed',
      pack: '1 lb',
      paid: '20.00',
      receivedOn: '2026-05-01',
      expiresOn: '2027-05-01',
    },
    { id: 'l2', product: 'unweighed', pack: '500 g', paid: '10.00', receivedOn: '2026-05-01', expiresOn: '2027-05-01' },
  ],
  benches: [{ id: 'b1', name: 'Bench', plants: [{ name: 'plant', count: 100, mlPerPlant: 30 }] }],
  recipes: [
    { id: 'r1', name: 'Weighed', ingredients: [{ product: 'weighed', dose: '1 1/2 tsp/gal' }] },
    { id: 'r2', name: 'Unweighed', ingredients: [{ product: 'unweighed', dose: '1 1/2 tsp/gal' }] },
    {
      id: 'r3',
      name: 'Both',
      ingredients: [
        { product: 'weighed', dose: '1 tbsp/gal' },
        { product: 'unweighed', dose: '1 tsp/gal' },
      ],
    },
  ],
  programs: [
    {
      id: 'g1',
      recipes: ['r1', 'r2', 'r3'],
      benches: ['b1'],
      startsOn: '2026-05-04',
      repeat: 'FREQ=DAILY',
      startTime: '10:00',
      minutes: 20,
    },
  ],
});

test('a spoon of a powder is mass only where somebody weighed one; elsewhere it is unknown, never zero', () => {
  /*
   * Monday 4 to Sunday 10 May, three recipes in turn: r1 on 4, 7, 10; r2 on 5, 8; r3 on 6, 9.
   *   r1  1 1/2 tsp/gal × 1 gal × 4.8 g = 7.2 g. 1 lb = 453,592.37 mg, entered as 453,592 mg. 20.00 × 7,200 ÷ 453,592:
   *       317,465.917 micros → 0.317466.
   *   r2  unknown; so is its cost.
   *   r3  1 tbsp = 3 tsp: 14.4 g. Its cost is known, that of the mix is not.
   * Cumulative draws of the pound, in g and micros: 7.2 → 317,466; 21.6 → 952,398; 28.8 → 1,269,864; 43.2 → 1,904,795;
   *   50.4 → 2,222,261; so the draws cost 0.317466, 0.634932, 0.317466, 0.634931, 0.317466.
   * Known mixes cost 3 × 0.317466 = 0.952398; four mixes are unknown. Labour 7 × 20/60 × 15.00 = 35.00.
   */
  const plan = planOf(spooned, '2026-05-04', 1);
  const figures = sprayingFigures(plan);
  expect(figures.map(({ lines }) => lines.map(({ amount, cost }) => [amount, cost]))).toEqual([
    [[7.2, '0.317466']],
    [[null, null]],
    [
      [14.4, '0.634932'],
      [null, null],
    ],
    [[7.2, '0.317466']],
    [[null, null]],
    [
      [14.4, '0.634931'],
      [null, null],
    ],
    [[7.2, '0.317466']],
  ]);
  expect(figures.map(({ materialCost }) => materialCost)).toEqual([
    '0.317466',
    null,
    null,
    '0.317466',
    null,
    null,
    '0.317466',
  ]);
  expect(plan.totals).toEqual({
    materialCost: 952_398,
    labourCost: 35_000_000,
    wasteCost: 0,
    unknownCosts: 4,
    unknownLabour: 0,
    unknownWaste: 0,
  });
  // 453.592 − 50.4 = 403.192 g. Of the other one nobody knows the need, so nothing of it is counted as used.
  expect(productFigures(plan, 'weighed').weeks).toEqual([[50.4, 50.4, 0, 0, 0, 403.192]]);
  expect(needFigures(plan, 'unweighed')).toMatchObject({
    runsOutOn: null,
    unknownSince: '2026-05-05',
    weeks: [[null, 0, 0, 0, 0, 500]],
  });
  const notes = [5, 6, 8, 9].map((day) => `note unknown-cost 2026-05-0${day}`);
  expect(flagRows(plan)).toEqual(['warn unknown-need 2026-05-05', ...notes]);
});
