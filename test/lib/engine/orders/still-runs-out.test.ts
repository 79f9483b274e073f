import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { stillRunsOut } from '@/lib/engine/orders/still-runs-out';
import { productWorking } from '@/lib/engine/working/product-figures';
import { Day } from '@/shared/time/day';
import { buyingShop } from './a-buying-shop';

const TODAY = Day.parse('2026-03-10');
/** Every Tuesday from 17 March takes 216 mL of spray at 1 L/L, of 300 mL that are there. */
const USED = {
  lots: [{ id: 'l', product: 'p', pack: '300 mL', receivedOn: '2026-03-01' }],
  benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 12, mlPerPlant: 18 }] }],
  recipes: [{ id: 'r', name: 'Recipe', ingredients: [{ product: 'p', dose: '1000 mL/L' }] }],
  programs: [
    {
      ...{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-17', startTime: '17:30', minutes: 45 },
      repeat: 'FREQ=WEEKLY;BYDAY=TU',
    },
  ],
};
const order = (id: string, expectedOn: string | null, count = 1, more: object = {}) => ({
  ...{ id, supplier: 's', placedOn: '2026-03-03', expectedOn, lines: [{ offer: 'o', count }] },
  ...more,
});

function seen(orders: ReturnType<typeof order>[], more: object = {}) {
  const plan = planAhead(buyingShop({ ...USED, orders, ...more }), TODAY, 5);
  const [product] = plan.shop.products;
  return { day: product && stillRunsOut(plan).get(product), working: productWorking(plan, ['p', 'stillRunsOutOn']) };
}

test('it runs out on the first day that neither the shelf nor what has come until then can meet', () => {
  // 300 mL are enough for the first Tuesday, 800 mL for three.
  expect(seen([order('x', '2026-03-20')]).day).toBe('2026-04-07');
  expect(seen([order('x', '2026-03-25')]).day).toBe('2026-03-24');
  expect(seen([order('x', '2026-03-20', 2)]).day).toBeNull();
});

test('several orders count together, a closed one and what has come already do not', () => {
  expect(seen([order('x', '2026-03-20'), order('y', '2026-03-30')]).day).toBeNull();
  expect(seen([order('x', '2026-03-20'), order('y', '2026-03-30', 1, { closedOn: '2026-03-09' })]).day).toBe(
    '2026-04-07',
  );
});

test('what has no day never comes', () => {
  const offers = [{ id: 'o', supplier: 's', product: 'p', pack: '500 mL', price: '40.00' }];
  expect(seen([order('x', null, 9)], { offers }).day).toBe('2026-03-24');
});

test('the working says the same, beside when it runs out without', () => {
  const { day, working } = seen([order('x', '2026-03-20')]);
  expect(working?.value).toEqual({ kind: 'day', day });
  expect(working?.steps.map(({ figure, value }) => [figure, value])).toMatchObject([
    ['product/p/usable', { amount: 300_000 }],
    ['order/x/expectedOn', { day: '2026-03-20' }],
    ['product/p/runsOutOn', { day: '2026-03-24' }],
  ]);
  expect(seen([order('x', '2026-03-20', 2)]).working?.value.kind).toBe('text');
  expect(seen([])).toMatchObject({ day: undefined, working: { value: { kind: 'text' } } });
});

test('looking at it leaves the plan as it is: nothing of it is drawn a second time', () => {
  const plan = planAhead(buyingShop({ ...USED, orders: [order('x', '2026-03-20')] }), TODAY, 5);
  const drawn = () => plan.sprayings.map(({ lines }) => lines.map(({ draws, short }) => [draws.length, short]));
  const before = drawn();
  stillRunsOut(plan);
  expect(drawn()).toEqual(before);
});
