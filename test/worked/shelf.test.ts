import { expect, test } from 'vitest';
import type { Plan } from '@/lib/engine/ahead/plan';
import { flagRows, money, planOf, productFigures, shopWith, sprayingFigures, units, type Written } from './plan-of';

/*
 * Which container is drawn, what dies, and what both cost. Source of every figure here: worked by hand from the
 * definitions of the shop file.
 */

type Shelf = {
  lots: NonNullable<Written['lots']>;
  ml: number;
  from: string;
  shelfLife?: { unopenedDays?: number; openedDays?: number };
};

/** A shop that draws so many mL of one product every Monday: 10 plants, and the product undiluted at 100 %. */
const weekly = ({ lots, ml, from, shelfLife }: Shelf) =>
  shopWith({
    products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 }, shelfLife }],
    lots,
    benches: [{ id: 'b1', name: 'Bench', plants: [{ name: 'plant', count: 1, mlPerPlant: ml }] }],
    recipes: [{ id: 'r1', name: 'Recipe', ingredients: [{ product: 'p1', dose: '100 %' }] }],
    programs: [
      {
        id: 'g1',
        recipes: ['r1'],
        benches: ['b1'],
        startsOn: from,
        repeat: 'FREQ=WEEKLY;BYDAY=MO',
        startTime: '10:00',
        minutes: 10,
      },
    ],
  });

const lot = (id: string, pack: string, paid: string, more: object) => ({
  id,
  product: 'p1',
  pack,
  paid,
  receivedOn: '2026-01-05',
  ...more,
});

/** Each draw as lot, place in its lot, mL and cost. */
const drawsOf = (plan: Plan) =>
  plan.sprayings.map(({ lines }) =>
    lines.flatMap(({ draws }) =>
      draws.map(({ container, amount, cost }) => [container.lot, container.place, units(amount), money(cost)]),
    ),
  );

const wastesOf = (plan: Plan) =>
  plan.products.flatMap(({ wastes }) =>
    wastes.map(({ container, on, amount, cost }) => [container.lot, on, units(amount), money(cost)]),
  );

test('containers that die on three different days, the first of them yesterday', () => {
  /*
   * 100 mL on Monday 11, 18 and 25 May. Last days are inclusive.
   *   a  300 mL for 9.00, last day 10 May: not usable on the 11th, 300 mL wasted that day, 9.00.
   *   b  250 mL for 10.00, last day 11 May: gives the 11th its 100 mL (4.00); 150 mL wasted on the 12th, 10.00 − 4.00
   *      = 6.00.
   *   c  200 mL for 7.00, last day 20 May: gives the 18th its 100 mL (3.50); 100 mL wasted on the 21st, 3.50.
   *   d  1 L for 20.00, last day a year on: gives the 25th its 100 mL (2.00).
   * On hand 300 + 250 + 200 + 1,000 = 1,750; usable 1,450.
   * Closing 1,750 − 100 − 450 = 1,200; − 100 − 100 = 1,000; − 100 = 900. Waste 9.00 + 6.00 + 3.50 = 18.50.
   */
  const lots = [
    lot('d', '1 L', '20.00', { expiresOn: '2027-05-01' }),
    lot('c', '200 mL', '7.00', { expiresOn: '2026-05-20' }),
    lot('b', '250 mL', '10.00', { expiresOn: '2026-05-11' }),
    lot('a', '300 mL', '9.00', { expiresOn: '2026-05-10' }),
  ];
  const plan = planOf(weekly({ lots, ml: 100, from: '2026-05-11' }), '2026-05-11', 3);
  expect(drawsOf(plan)).toEqual([
    [['b', 0, 100, '4.000000']],
    [['c', 0, 100, '3.500000']],
    [['d', 0, 100, '2.000000']],
  ]);
  expect(wastesOf(plan)).toEqual([
    ['a', '2026-05-11', 300, '9.000000'],
    ['b', '2026-05-12', 150, '6.000000'],
    ['c', '2026-05-21', 100, '3.500000'],
  ]);
  expect(productFigures(plan, 'p1')).toEqual({
    onHand: 1750,
    usable: 1450,
    runsOutOn: null,
    orderBy: null,
    weeksUntilReorder: null,
    wasteCost: '18.500000',
    weeks: [
      [100, 100, 0, 450, 0, 1200],
      [100, 100, 0, 100, 0, 1000],
      [100, 100, 0, 0, 0, 900],
    ],
  });
  expect(flagRows(plan)).toEqual(['warn lot-expired 2026-05-11']);
});

test('an opened life shorter than the printed day starts at the first draw', () => {
  /*
   * 200 mL on Mondays from 1 June, opened life 14 days, both unopened.
   *   b  prints 30 November, a 31 December: b is drawn first, and opened on 1 June, so it lasts to 15 June.
   *      1, 8 and 15 June take 200 mL each at 50.00 a litre = 10.00; the 400 mL left are wasted on 16 June, 20.00.
   *   a  is opened on 22 June and lasts to 6 July, past the end of the plan (5 July). 40.00 a litre, 8.00 a draw.
   * Closing 1,800; 1,600; 1,600 − 200 − 400 = 1,000; 800; 600.
   */
  const lots = [
    lot('a', '1 L', '40.00', { expiresOn: '2026-12-31' }),
    lot('b', '1 L', '50.00', { expiresOn: '2026-11-30' }),
  ];
  const plan = planOf(weekly({ lots, ml: 200, from: '2026-06-01', shelfLife: { openedDays: 14 } }), '2026-06-01', 5);
  expect(drawsOf(plan)).toEqual([
    [['b', 0, 200, '10.000000']],
    [['b', 0, 200, '10.000000']],
    [['b', 0, 200, '10.000000']],
    [['a', 0, 200, '8.000000']],
    [['a', 0, 200, '8.000000']],
  ]);
  expect(wastesOf(plan)).toEqual([['b', '2026-06-16', 400, '20.000000']]);
  expect(productFigures(plan, 'p1').weeks).toEqual([
    [200, 200, 0, 0, 0, 1800],
    [200, 200, 0, 0, 0, 1600],
    [200, 200, 0, 400, 0, 1000],
    [200, 200, 0, 0, 0, 800],
    [200, 200, 0, 0, 0, 600],
  ]);
  expect(flagRows(plan)).toEqual([]);
});

test('a container dies on the earlier of its three days: unopened life, printed day, opened life', () => {
  /*
   * Nothing is drawn: 0 mL. Unopened life 100 days, opened life 20. Today is Monday 4 May.
   *   a  received 5 January, nothing printed: 5 January + 100 days = 15 April. Past; wasted on 4 May.
   *   b  received 27 January, nothing printed: 27 January + 100 = 7 May; wasted on 8 May.
   *   c  received 5 January, printed 20 May: the printed day holds, unopened life does not; wasted on 21 May.
   *   d  received 5 January, printed 20 May, opened 20 April: 20 April + 20 = 10 May; wasted on 11 May.
   *   e  received 27 January, nothing printed, opened 30 April: 30 April + 20 = 20 May, but 7 May comes first; 8 May.
   */
  const lots = [
    lot('a', '100 mL', '1.00', {}),
    lot('b', '100 mL', '1.00', { receivedOn: '2026-01-27' }),
    lot('c', '100 mL', '1.00', { expiresOn: '2026-05-20' }),
    lot('d', '100 mL', '1.00', { expiresOn: '2026-05-20', openedOn: '2026-04-20', remaining: '50 mL' }),
    lot('e', '100 mL', '1.00', { receivedOn: '2026-01-27', openedOn: '2026-04-30', remaining: '30 mL' }),
  ];
  const shelfLife = { unopenedDays: 100, openedDays: 20 };
  const plan = planOf(weekly({ lots, ml: 0, from: '2026-05-04', shelfLife }), '2026-05-04', 3);
  expect(wastesOf(plan)).toEqual([
    ['a', '2026-05-04', 100, '1.000000'],
    ['b', '2026-05-08', 100, '1.000000'],
    ['e', '2026-05-08', 30, '0.300000'],
    ['d', '2026-05-11', 50, '0.500000'],
    ['c', '2026-05-21', 100, '1.000000'],
  ]);
});

test('between containers that last equally long: opened first, then received earlier, then by id', () => {
  /*
   * 50 mL each, all printed 31 December, 250 mL on one Monday: the opened one (d), then the one received first (c),
   * then a before b, both received on the same day. That is 200 mL, so 50 mL are short.
   */
  const lots = [
    lot('b', '50 mL', '2.00', { receivedOn: '2026-03-02', expiresOn: '2026-12-31' }),
    lot('a', '50 mL', '2.00', { receivedOn: '2026-03-02', expiresOn: '2026-12-31' }),
    lot('c', '50 mL', '2.00', { receivedOn: '2026-02-02', expiresOn: '2026-12-31' }),
    lot('d', '100 mL', '4.00', {
      receivedOn: '2026-04-06',
      openedOn: '2026-04-07',
      remaining: '50 mL',
      expiresOn: '2026-12-31',
    }),
  ];
  const plan = planOf(weekly({ lots, ml: 250, from: '2026-05-04' }), '2026-05-04', 1);
  expect(drawsOf(plan)).toEqual([
    [
      ['d', 0, 50, '2.000000'],
      ['c', 0, 50, '2.000000'],
      ['a', 0, 50, '2.000000'],
      ['b', 0, 50, '2.000000'],
    ],
  ]);
  expect(productFigures(plan, 'p1').weeks).toEqual([[250, 200, 50, 0, 0, 0]]);
});

test('three containers share a price that does not divide by three', () => {
  /*
   * 10.00 over three: 3.333334, 3.333333, 3.333333. 150 mL on two Mondays.
   *   First   100 mL of the first, 3.333334; 50 mL of the second, half of 3,333,333 micros = 1,666,666.5, a half goes
   *           up: 1.666667. Together 5.000001.
   *   Second  the other 50 mL of the second, 3.333333 − 1.666667 = 1.666666; 100 mL of the third, 3.333333: 4.999999.
   * Together 10.000000, exactly what was paid.
   */
  const lots = [lot('a', '100 mL', '10.00', { count: 3, expiresOn: '2026-12-31' })];
  const plan = planOf(weekly({ lots, ml: 150, from: '2026-05-04' }), '2026-05-04', 2);
  expect(drawsOf(plan)).toEqual([
    [
      ['a', 0, 100, '3.333334'],
      ['a', 1, 50, '1.666667'],
    ],
    [
      ['a', 1, 50, '1.666666'],
      ['a', 2, 100, '3.333333'],
    ],
  ]);
  expect(sprayingFigures(plan).map(({ materialCost }) => materialCost)).toEqual(['5.000001', '4.999999']);
  expect(plan.totals.materialCost).toBe(10_000_000);
});

test('a lot on its way counts from the day it comes', () => {
  /*
   * 60 mL on Mondays. a holds 50 mL at 5.00; b, 1 L at 30.00, comes on Tuesday 14 April.
   *   6 April   50 mL from a (5.00), 10 mL short: runs out today.
   *   13 April  b is not there: 60 mL short.
   *   20 April  60 mL from b: 30.00 × 60 ÷ 1,000 = 1.80.
   * On hand and usable 50 mL. b comes in the second week (13–19 April). Nobody offers the product, so what is short
   * costs unknown.
   */
  const lots = [
    lot('a', '50 mL', '5.00', { expiresOn: '2026-12-31' }),
    lot('b', '1 L', '30.00', { receivedOn: '2026-04-14', expiresOn: '2026-12-31' }),
  ];
  const plan = planOf(weekly({ lots, ml: 60, from: '2026-04-06' }), '2026-04-06', 3);
  expect(productFigures(plan, 'p1')).toEqual({
    onHand: 50,
    usable: 50,
    runsOutOn: '2026-04-06',
    orderBy: null,
    weeksUntilReorder: null,
    wasteCost: '0.000000',
    weeks: [
      [60, 50, 10, 0, 0, 0],
      [60, 0, 60, 0, 1000, 1000],
      [60, 60, 0, 0, 0, 940],
    ],
  });
  expect(sprayingFigures(plan).map(({ materialCost }) => materialCost)).toEqual([null, null, '1.800000']);
  expect(plan.totals).toEqual({
    materialCost: 1_800_000,
    labourCost: 0,
    wasteCost: 0,
    unknownCosts: 2,
    unknownLabour: 3,
    unknownWaste: 0,
  });
});
