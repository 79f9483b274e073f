import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { linePath, orderWorking } from '@/lib/engine/working/order-figures';
import { figureAddress, readAddress } from '@/lib/engine/working/shown';
import { Day } from '@/shared/time/day';
import { buyingShop } from './a-buying-shop';

const TODAY = Day.parse('2026-03-10');
const LINES = [
  { offer: 'o', count: 4, price: '36.00' },
  { offer: 'big', count: 1, price: '90.00' },
  { offer: 'o', count: 2, price: '40.00' },
];
const ORDER = { id: 'x', supplier: 's', placedOn: '2026-03-03', lines: LINES };

/** The working of one figure of the only order of a shop. */
const worked = (orders: Parameters<typeof buyingShop>[0]['orders'], ...path: string[]) =>
  orderWorking(planAhead(buyingShop({ orders }), TODAY, 1), ['x', ...path]);

test('every line has a working of its own, a second one of the same offer too', () => {
  const plan = planAhead(buyingShop({ orders: [ORDER] }), TODAY, 1);
  const [order] = plan.shop.orders;
  const costs = order?.lines.map((line) => {
    const [, ...path] = readAddress(figureAddress(...linePath(order, line))) ?? [];
    return orderWorking(plan, path)?.value;
  });
  expect(costs).toEqual([144_000_000, 90_000_000, 80_000_000].map((micros) => ({ kind: 'money', micros })));
  expect(orderWorking(plan, ['x', 'line', 'o', '2'])).toBeNull();
  expect(orderWorking(plan, ['x', 'line', 'o', 'first'])).toBeNull();
});

test('the goods are the lines added up, each of which opens where it stands', () => {
  const goods = worked([ORDER], 'goods');
  expect(goods?.value).toEqual({ kind: 'money', micros: 314_000_000 });
  expect(goods?.steps.map(({ figure }) => figure)).toEqual(['order/x/line/o', 'order/x/line/big', 'order/x/line/o/1']);
});

test('freight is nothing from the free-freight value on, and as it was entered where it was', () => {
  const freight = (count: number, more = {}) => {
    const order = { ...ORDER, lines: [{ offer: 'o', count, price: '40.00' }], ...more };
    return worked([order], 'freight')?.value;
  };
  expect(freight(2)).toEqual({ kind: 'money', micros: 10_000_000 });
  expect(freight(3)).toEqual({ kind: 'money', micros: 0 });
  expect(freight(3, { freight: '4.50' })).toEqual({ kind: 'money', micros: 4_500_000 });
});

test('a line without a price leaves the sums unknown, and says how many there are', () => {
  const order = {
    ...ORDER,
    lines: [
      { offer: 'o', count: 1 },
      { offer: 'big', count: 1 },
    ],
  };
  expect(worked([order], 'goods')?.value).toEqual({ kind: 'unknown', because: '2 of its lines have no price.' });
  expect(worked([order], 'total')?.value.kind).toBe('unknown');
  expect(worked([order], 'freight')?.value).toMatchObject({ kind: 'unknown' });
});

test('nothing stands behind a figure or an order that there is none of', () => {
  expect(worked([ORDER], 'nonsense')).toBeNull();
  expect(worked([ORDER], 'line', 'gone')).toBeNull();
  expect(orderWorking(planAhead(buyingShop({}), TODAY, 1), ['x', 'goods'])).toBeNull();
});
