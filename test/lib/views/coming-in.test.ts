import { describe, expect, test, vi } from 'vitest';
import { comingIn, productComing } from '@/lib/views/coming-in';
import { houseNow } from '@/lib/views/house';
import { onOrderSeen } from '@/lib/views/on-order';
import { productScreen } from '@/lib/views/product';
import { todayScreen } from '@/lib/views/today';
import { CLOCK } from '../data/fresh-database';
import { lot, orderingShop } from './an-ordering-shop';

vi.mock('next/headers', () => ({ cookies: async () => new Map() }));

/** The tests' day is Tuesday 31 March. */
const order = (id: string, expectedOn: string | null, more: object = {}) => ({
  ...{ id, supplier: 's', placedOn: '2026-03-02', expectedOn, lines: [{ offer: 'o', count: 2, price: '40.00' }] },
  ...more,
});
const UNKNOWN = { id: 'unknown', supplier: 't', placedOn: '2026-03-02', lines: [{ offer: 'far', count: 1 }] };

async function house() {
  const now = await houseNow(CLOCK);
  if (!now) throw new Error('there is no shop');
  return now;
}

describe('what today says of orders', () => {
  test('what is late, comes today, and has no day, in that order; what comes later is only counted', async () => {
    await orderingShop({
      orders: [
        UNKNOWN,
        order('week', '2026-04-07'),
        order('tomorrow', '2026-04-01'),
        order('now', '2026-03-31'),
        order('late', '2026-03-30'),
        order('closed', '2026-03-31', { closedOn: '2026-03-31' }),
      ],
    });
    expect(comingIn(await house()).map(({ order: id, due }) => [id, due])).toEqual([
      ['late', 'late'],
      ['now', 'today'],
      ['unknown', 'unknown'],
    ]);
    expect((await todayScreen(CLOCK))?.coming).toHaveLength(3);
    expect((await todayScreen(CLOCK))?.onItsWay).toBe(2);
  });

  test('an order is one line with all the packs that are still to come, and says where it is received', async () => {
    const lines = [
      { offer: 'o', count: 2 },
      { offer: 'big', count: 3 },
      { offer: 'o', count: 1 },
    ];
    await orderingShop({ orders: [order('a b', '2026-03-31', { lines })], lots: [lot('l', 'a b', '2026-03-30')] });
    expect(comingIn(await house())).toMatchObject([
      {
        ...{ packs: 5, supplier: 'Supplier', href: '/buy/orders/a%20b' },
        receiveHref: '/shelf/receive?order=a%20b#delivery',
        expectedOn: { at: 'order/a%20b/expectedOn', value: { kind: 'day', day: '2026-03-31' } },
      },
    ]);
  });
});

describe('what the page of a product says of orders', () => {
  test('every line that still expects something of it, with its day; nothing of another product', async () => {
    const lines = [
      { offer: 'o', count: 2 },
      { offer: 'big', count: 1 },
    ];
    await orderingShop({
      orders: [order('x', '2026-04-20', { lines }), order('y', '2026-03-30'), UNKNOWN],
      lots: [lot('l', 'x', '2026-03-20', { count: 2 })],
    });
    const screen = await productScreen(CLOCK, 'p');
    expect(screen?.coming).toMatchObject([
      { packs: 2, pack: '500 mL', supplier: 'Supplier', due: 'late', href: '/buy/orders/y' },
      { packs: 1, pack: '2 L', due: 'ahead', expectedOn: { value: { day: '2026-04-20' } }, placedOn: '2026-03-02' },
    ]);
    expect(screen?.product.onOrder?.onOrder.value).toEqual({ kind: 'stock', amount: 3_000_000, form: 'liquid' });
  });

  test('of what nothing is on order, it says nothing', async () => {
    await orderingShop({ orders: [order('x', '2026-03-30', { closedOn: '2026-03-30' })] });
    const [product] = (await house()).shop.products;
    expect(product && productComing(await house(), product)).toEqual([]);
    expect((await productScreen(CLOCK, 'p'))?.product.onOrder).toBeNull();
  });
});

describe('whether what is on order will be enough', () => {
  // Every Tuesday takes 216 mL of spray at 50 mL/L: 10.8 mL.
  const USED = {
    benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 12, mlPerPlant: 18 }] }],
    recipes: [{ id: 'r', name: 'Recipe', ingredients: [{ product: 'p', dose: '50 mL/L' }] }],
    programs: [
      {
        ...{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-04-07', startTime: '17:30', minutes: 45 },
        repeat: 'FREQ=WEEKLY;BYDAY=TU',
      },
    ],
  };
  const seen = async (expectedOn: string | null, more: object = {}) => {
    await orderingShop({ ...USED, orders: [order('x', expectedOn, more)] });
    const now = await house();
    const [product] = now.shop.products;
    return product && onOrderSeen(now).get(product);
  };

  test('it is, when it comes before it is needed', async () => {
    expect(await seen('2026-04-06')).toMatchObject({ packs: 2, isLate: false, stillRunsOutOn: null });
  });

  test('it is not, when it comes after that', async () => {
    expect(await seen('2026-04-08')).toMatchObject({
      stillRunsOutOn: { at: 'product/p/stillRunsOutOn', value: { kind: 'day', day: '2026-04-07' } },
    });
  });

  test('what is late counts from the next working day on', async () => {
    expect(await seen('2026-03-30')).toMatchObject({ isLate: true, stillRunsOutOn: null });
  });
});
