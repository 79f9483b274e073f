import { expect, test } from 'vitest';
import { planOf, productFigures, shopWith, sprayingFigures } from './plan-of';

/*
 * Recipes in rotation. Source of every figure here: worked by hand from the definitions of the shop file.
 */

const rotating = (program: { startsOn: string; endsOn?: string; repeat: string }) =>
  shopWith({
    products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: 0 } }],
    lots: [{ id: 'l1', product: 'p1', pack: '1 L', paid: '100.00', receivedOn: '2026-01-05', expiresOn: '2027-01-05' }],
    benches: [{ id: 'b1', name: 'Bench', plants: [{ name: 'plant', count: 100, mlPerPlant: 10 }] }],
    recipes: [
      { id: 'r1', name: 'First', ingredients: [{ product: 'p1', dose: '1 mL/L' }] },
      { id: 'r2', name: 'Second', ingredients: [{ product: 'p1', dose: '2 mL/L' }] },
      { id: 'r3', name: 'Third', ingredients: [{ product: 'p1', dose: '4 mL/L' }] },
    ],
    programs: [{ id: 'g1', recipes: ['r1', 'r2', 'r3'], benches: ['b1'], startTime: '10:00', minutes: 10, ...program }],
  });

/*
 * Every second week on Tuesday and Friday, from Wednesday 7 January. Weeks begin on Monday, so the first one is 5–11
 * January; its Tuesday is before the start. Counted from there:
 *
 *   0  Fri  9 Jan  r1      3  Tue 3 Feb  r1      5  Tue 17 Feb  r3
 *   1  Tue 20 Jan  r2      4  Fri 6 Feb  r2      6  Fri 20 Feb  r1
 *   2  Fri 23 Jan  r3
 */
const EVERY_OTHER_WEEK = { startsOn: '2026-01-07', repeat: 'FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,FR' };

test('three recipes every second week on two weekdays, looked at from a month into the season', () => {
  // From Sunday 1 February, three weeks to 21 February. 1 L of spray takes 1, 2 or 4 mL at 0.10 per mL.
  const plan = planOf(rotating(EVERY_OTHER_WEEK), '2026-02-01', 3);
  expect(sprayingFigures(plan).map(({ date, recipe, materialCost }) => [date, recipe, materialCost])).toEqual([
    ['2026-02-03', 'r1', '0.100000'],
    ['2026-02-06', 'r2', '0.200000'],
    ['2026-02-17', 'r3', '0.400000'],
    ['2026-02-20', 'r1', '0.100000'],
  ]);
  // Weeks of the plan are counted from its first day: 1–7, 8–14 and 15–21 February.
  expect(plan.products[0]?.weeks.map(({ week }) => week)).toEqual(['2026-02-01', '2026-02-08', '2026-02-15']);
  expect(productFigures(plan, 'p1').weeks).toEqual([
    [3, 3, 0, 0, 0, 997],
    [0, 0, 0, 0, 0, 997],
    [5, 5, 0, 0, 0, 992],
  ]);
});

test('the season ends with its last day, and the turn does not depend on where the looking starts', () => {
  const plan = planOf(rotating({ ...EVERY_OTHER_WEEK, endsOn: '2026-02-17' }), '2026-02-06', 3);
  expect(sprayingFigures(plan).map(({ date, recipe }) => [date, recipe])).toEqual([
    ['2026-02-06', 'r2'],
    ['2026-02-17', 'r3'],
  ]);
});

test('a month without a 31st is passed over, and takes no turn', () => {
  // 31 January r1, 31 March r2, 31 May r3, 31 July r1.
  const plan = planOf(rotating({ startsOn: '2026-01-31', repeat: 'FREQ=MONTHLY;BYMONTHDAY=31' }), '2026-03-01', 22);
  expect(sprayingFigures(plan).map(({ date, recipe }) => [date, recipe])).toEqual([
    ['2026-03-31', 'r2'],
    ['2026-05-31', 'r3'],
    ['2026-07-31', 'r1'],
  ]);
});
