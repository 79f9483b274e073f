import { expect, test } from 'vitest';
import { flagRows, planOf, productFigures, shopWith, sprayingFigures } from './plan-of';

/*
 * What runs out, when it must be ordered, and what the missing part costs. Source of every figure here: worked by hand
 * from the definitions of the shop file. 2 March 2026 is a Monday.
 */

type Short = { safetyDays?: number; pack: string; today?: string; weeks: number; offers?: string[] };

const OFFERS = [
  // 0.09 a mL, and 0.07 from two packs on, which nobody is buying here.
  {
    id: 'litre',
    supplier: 'weekdays',
    product: 'p1',
    pack: '1 L',
    price: '90.00',
    breaks: [{ atLeast: 2, price: '70.00' }],
    leadDays: 3,
  },
  // 0.08 a mL: the cheapest for one pack.
  { id: 'quarter', supplier: 'three-days', product: 'p1', pack: '250 mL', price: '20.00', leadDays: 5 },
  // 0.08 a mL as well, but it takes a day longer.
  { id: 'half', supplier: 'weekdays', product: 'p1', pack: '500 mL', price: '40.00', leadDays: 6 },
];

/** 60 mL every Monday from one container paid at 0.10 a mL; the offers that are named stand. */
function shortOf({ safetyDays = 2, pack, today = '2026-03-02', weeks, offers = [] }: Short) {
  return planOf(
    shopWith({
      shop: { safetyDays },
      suppliers: [
        {
          id: 'weekdays',
          name: 'Weekdays',
          freightPerOrder: '15.00',
          workingDays: ['mon', 'tue', 'wed', 'thu', 'fri'],
        },
        { id: 'three-days', name: 'Three days', freightPerOrder: '25.00', workingDays: ['mon', 'wed', 'fri'] },
      ],
      products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
      offers: OFFERS.filter(({ id }) => offers.includes(id)),
      lots: [
        {
          id: 'l1',
          product: 'p1',
          pack: '1 L',
          remaining: pack,
          paid: '100.00',
          receivedOn: '2026-01-05',
          openedOn: '2026-01-05',
          expiresOn: '2027-01-05',
        },
      ],
      benches: [{ id: 'b1', name: 'Bench', plants: [{ name: 'plant', count: 60, mlPerPlant: 100 }] }],
      recipes: [{ id: 'r1', name: 'Recipe', ingredients: [{ product: 'p1', dose: '1 %' }] }],
      programs: [
        {
          id: 'g1',
          recipes: ['r1'],
          benches: ['b1'],
          startsOn: '2026-03-02',
          repeat: 'FREQ=WEEKLY;BYDAY=MO',
          startTime: '10:00',
          minutes: 10,
        },
      ],
    }),
    today,
    weeks,
  );
}

test('what is short costs what the cheapest single pack costs per unit, and the order for it is a week late', () => {
  /*
   * 100 mL left at 0.10.
   *    2 March  60 mL, 6.00.
   *    9 March  40 mL, 4.00, and 20 mL short at 20.00 ÷ 250 = 0.08 a mL, 1.60: 5.60.
   *   16 March  60 mL short, 4.80.
   * Runs out on Monday 9 March; two safety days before it is Saturday 7 March. The cheaper offer comes from a supplier
   * who works on Mondays, Wednesdays and Fridays, five of those after the order: the last arrival is Friday 6 March,
   * and five working days before it (4 March, 2 March, 27, 25, 23 February) is Monday 23 February. From 2 March that
   * is −7 days, −1 week.
   */
  const plan = shortOf({ pack: '100 mL', weeks: 3, offers: ['litre', 'quarter', 'half'] });
  expect(sprayingFigures(plan).map(({ materialCost }) => materialCost)).toEqual(['6.000000', '5.600000', '4.800000']);
  expect(productFigures(plan, 'p1')).toEqual({
    onHand: 100,
    usable: 100,
    runsOutOn: '2026-03-09',
    orderBy: '2026-02-23',
    weeksUntilReorder: -1,
    wasteCost: '0.000000',
    weeks: [
      [60, 60, 0, 0, 0, 40],
      [60, 40, 20, 0, 0, 0],
      [60, 0, 60, 0, 0, 0],
    ],
  });
  expect(flagRows(plan)).toEqual(['stop short 2026-03-09', 'stop short 2026-03-16']);
});

test.each([
  // 500 mL is eight times 60 and 20 left: short on the ninth Monday, 27 April. Saturday 25 April; arrival on Friday 24
  // April; three working days before is Tuesday 21 April. 50 days, 7 whole weeks.
  {
    name: 'weeks are rounded down',
    left: '500 mL',
    offer: 'litre',
    safetyDays: 2,
    weeks: 10,
    by: '2026-04-21',
    until: 7,
  },
  // 120 mL: short on 16 March. Without safety days arrival is 16 March itself; three working days before (13, 12, 11):
  // 11 March. 9 days.
  { name: 'over a weekend', left: '120 mL', offer: 'litre', safetyDays: 0, weeks: 4, by: '2026-03-11', until: 1 },
  // 120 mL, 11 safety days: 5 March is a Thursday; three working days before is Monday 2 March, today. 0 weeks: this
  // week.
  { name: 'today is this week', left: '120 mL', offer: 'litre', safetyDays: 11, weeks: 4, by: '2026-03-02', until: 0 },
  // 12 safety days: Wednesday 4 March; three working days before is Friday 27 February. −3 days is rounded down to −1
  // week: late.
  {
    name: 'three days late is late',
    left: '120 mL',
    offer: 'litre',
    safetyDays: 12,
    weeks: 4,
    by: '2026-02-27',
    until: -1,
  },
])('order by: $name', ({ left, offer, safetyDays, weeks, by, until }) => {
  const plan = shortOf({ pack: left, weeks, offers: [offer], safetyDays });
  const { orderBy, weeksUntilReorder } = productFigures(plan, 'p1');
  expect([orderBy, weeksUntilReorder]).toEqual([by, until]);
});

test('between offers that cost the same per unit the one with the shorter lead is used', () => {
  // 120 mL: short on 16 March, by 14 March. From the supplier with three days: Friday 13 March, five of its days
  // before is 11, 9, 6, 4, 2 March. From the other: Friday 13 March, six weekdays before is 5 March.
  const plan = shortOf({ pack: '120 mL', weeks: 4, offers: ['half', 'quarter'] });
  expect(productFigures(plan, 'p1').orderBy).toBe('2026-03-02');
});

test('without an offer what is short costs nobody knows what, and no order can be named', () => {
  const plan = shortOf({ pack: '100 mL', weeks: 2 });
  expect(sprayingFigures(plan).map(({ materialCost }) => materialCost)).toEqual(['6.000000', null]);
  const { runsOutOn, orderBy, weeksUntilReorder } = productFigures(plan, 'p1');
  expect([runsOutOn, orderBy, weeksUntilReorder]).toEqual(['2026-03-09', null, null]);
  expect(plan.totals).toMatchObject({ materialCost: 6_000_000, unknownCosts: 1 });
  expect(flagRows(plan)).toEqual(['stop short 2026-03-09', 'note unknown-cost 2026-03-09']);
});

test('a shortage past the horizon is none', () => {
  // 100 mL lasts to the first Monday; one week sees no second one.
  const { runsOutOn, orderBy } = productFigures(shortOf({ pack: '100 mL', weeks: 1, offers: ['litre'] }), 'p1');
  expect([runsOutOn, orderBy]).toEqual([null, null]);
});
