import { describe, expect, test, vi } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { houseNow } from '@/lib/views/house';
import { leadSeen, leadToTake, priceToTake } from '@/lib/views/learned-from-orders';
import { orderFormScreen, orderScreen, ordersFrom, ordersScreen } from '@/lib/views/orders';
import { CLOCK } from '../data/fresh-database';
import { lot, orderingShop } from './an-ordering-shop';

vi.mock('next/headers', () => ({ cookies: async () => new Map() }));

const dollars = (amount: number) => amount * 1_000_000;
const order = (id: string, placedOn: string, count = 2, more: object = {}) => ({
  ...{ id, supplier: 's', placedOn, lines: [{ offer: 'o', count, price: '40.00' }] },
  ...more,
});

describe('the list of orders', () => {
  test('the most overdue comes first, what has no day last, and what is done with stands apart, the latest first', async () => {
    await orderingShop({
      orders: [
        order('done', '2026-01-05', 1),
        order('soon', '2026-03-30'),
        { id: 'never', supplier: 't', placedOn: '2026-03-02', lines: [{ offer: 'far', count: 1 }] },
        order('late', '2026-03-16'),
        order('off', '2026-02-02', 2, { closedOn: '2026-02-20' }),
      ],
      lots: [lot('l', 'done', '2026-01-08'), lot('m', 'late', '2026-03-25')],
    });
    const screen = await ordersScreen(CLOCK);
    expect(screen?.open.map(({ id, state }) => [id, state])).toEqual([
      ['late', { kind: 'late', days: 12, rest: 1 }],
      ['soon', { kind: 'expected', rest: 2, someCame: false }],
      ['never', { kind: 'expected', rest: 1, someCame: false }],
    ]);
    expect(screen?.closed.map(({ id, state }) => [id, state])).toEqual([
      ['off', { kind: 'closed', missing: 2 }],
      ['done', { kind: 'closed', missing: 0 }],
    ]);
    const house = await houseNow(CLOCK);
    expect(house && ordersFrom(house, 't').map(({ id }) => id)).toEqual(['never']);
  });

  test('a part that came on an order that is not late says so', async () => {
    await orderingShop({ orders: [order('x', '2026-03-30')], lots: [lot('l', 'x', '2026-03-31')] });
    expect((await ordersScreen(CLOCK))?.open[0]?.state).toEqual({ kind: 'expected', rest: 1, someCame: true });
  });
});

describe('one order', () => {
  test('it is set beside what came: how many, at what price, and whether that is a new price', async () => {
    await orderingShop({
      orders: [order('x', '2026-03-02', 4)],
      lots: [
        lot('l', 'x', '2026-03-05', { count: 2, paid: '83.00' }),
        lot('m', 'x', '2026-03-12', { paid: '36.00' }),
        lot('n', 'x', '2026-03-20', { paid: null }),
      ],
    });
    const screen = await orderScreen(CLOCK, 'x');
    expect(screen?.lines).toMatchObject([
      { count: 4, received: 4, rest: 0, cost: { value: { micros: dollars(160) } } },
    ]);
    // Four reach the quantity break, whose price is 36.
    expect(screen?.came).toMatchObject([
      { cameOn: '2026-03-20', packs: 1, paidEach: null, dearerBy: null, newFrom: undefined },
      { cameOn: '2026-03-12', packs: 1, paidEach: dollars(36), dearerBy: -dollars(4), newFrom: undefined },
      { cameOn: '2026-03-05', packs: 2, paidEach: dollars(41.5), dearerBy: dollars(1.5), newFrom: 3 },
    ]);
    expect(screen?.state).toEqual({ kind: 'closed', missing: 0 });
  });

  test('with one offer on two lines, each line has its own cost, and each can be changed', async () => {
    const lines = [
      { offer: 'o', count: 3, price: '36.00' },
      { offer: 'o', count: 1, price: '40.00' },
    ];
    await orderingShop({ orders: [order('x', '2026-03-30', 0, { lines })], lots: [lot('l', 'x', '2026-03-31')] });
    const screen = await orderScreen(CLOCK, 'x');
    expect(screen?.lines).toMatchObject([
      { count: 3, received: 1, rest: 2, cost: { at: 'order/x/line/o', value: { micros: dollars(108) } } },
      { count: 1, received: 0, rest: 1, cost: { at: 'order/x/line/o/1', value: { micros: dollars(40) } } },
    ]);
    expect(new Set(screen?.lines.map(({ key }) => key)).size).toBe(2);
    expect(screen?.came).toHaveLength(1);
  });

  test('there is none of a name that is nowhere', async () => {
    await orderingShop();
    expect(await orderScreen(CLOCK, 'x')).toBeNull();
    expect(await orderFormScreen(CLOCK, { order: 'x' })).toBeNull();
    expect(await orderFormScreen(CLOCK, { supplier: 'x' })).toBeNull();
  });
});

describe('what can be ordered', () => {
  test('what a supplier still sells, and what was put away only on an order that has it', async () => {
    const shopId = await orderingShop({ orders: [order('x', '2026-03-30')] });
    const { offers } = await shopFileOf(shopId);
    const part = { offers: offers.filter(({ id }) => id === 'o').map((one) => ({ ...one, archived: true })) };
    expect(await changeShop({ commandId: newId(), shopId, part }, CLOCK)).toMatchObject({ ok: true });
    const offered = async (asked: { supplier: string } | { order: string }) =>
      (await orderFormScreen(CLOCK, asked))?.offers.map(({ id }) => id);
    expect(await offered({ supplier: 's' })).toEqual(['big']);
    expect(await offered({ order: 'x' })).toEqual(['o', 'big']);
    expect(await offered({ supplier: 't' })).toEqual(['far']);
  });
});

describe('what is learned of a price', () => {
  const came = { order: 'x', offer: 'o', line: 0, cameOn: '2026-03-05' };
  const shopWith = (paid: string | null, count: number) =>
    orderingShop({ orders: [order('x', '2026-03-02', count)], lots: [lot('l', 'x', '2026-03-05', { paid })] });

  test('what was paid becomes the price from that day, of the break that the order reached or of one pack', async () => {
    const one = await priceToTake(CLOCK, await shopWith('41.25', 2), came);
    expect(one).toMatchObject({ ok: true, value: { offer: { price: '41.25', since: '2026-03-05' } } });
    expect(one.ok && one.value.offer.breaks).toEqual([{ atLeast: 3, price: '36.00' }]);
    const many = await priceToTake(CLOCK, await shopWith('37.50', 3), came);
    expect(many).toMatchObject({ ok: true, value: { offer: { breaks: [{ atLeast: 3, price: '37.50' }] } } });
    expect(many.ok && many.value.offer.price).toMatch(/^40/);
  });

  test('taken, it is the price, and there is nothing more to take', async () => {
    const shopId = await shopWith('41.25', 2);
    const taken = await priceToTake(CLOCK, shopId, came);
    if (!taken.ok) throw new Error('the price was refused');
    const { offer, expecting } = taken.value;
    const outcome = await changeShop({ commandId: newId(), shopId, part: { offers: [offer] }, expecting }, CLOCK);
    expect(outcome).toMatchObject({ ok: true });
    const { offers } = await shopFileOf(shopId);
    expect(offers.find(({ id }) => id === 'o')).toMatchObject({ price: '41.25', since: '2026-03-05' });
    expect(await priceToTake(CLOCK, shopId, came)).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
  });

  test('nothing is taken where nothing came, nothing was entered, or it says nothing new', async () => {
    const refused = { ok: false, refusal: { code: 'not-found' } };
    expect(await priceToTake(CLOCK, await shopWith(null, 2), came)).toMatchObject(refused);
    expect(await priceToTake(CLOCK, await shopWith('40.00', 2), came)).toMatchObject(refused);
    const shopId = await shopWith('41.25', 2);
    expect(await priceToTake(CLOCK, shopId, { ...came, cameOn: '2026-03-06' })).toMatchObject(refused);
    expect(await priceToTake(CLOCK, shopId, { ...came, line: 1 })).toMatchObject(refused);
    expect(await priceToTake(CLOCK, 'nowhere', came)).toMatchObject(refused);
  });
});

describe('what is learned of a lead time', () => {
  // Working days from Monday 2 March: the Thursday is 3, the Tuesday after is 6, and a week on 11.
  const days = ['2026-03-05', '2026-03-10', '2026-03-17'];
  const learning = () =>
    orderingShop({
      orders: [order('x', '2026-03-02', 3)],
      lots: days.map((day, at) => lot(`l${at}`, 'x', day)),
    });

  test('the median and the worst stand beside what the offers say', async () => {
    await learning();
    const house = await houseNow(CLOCK);
    expect(house && leadSeen(house, 's')).toMatchObject({
      deliveries: 3,
      days: { median: 6, worst: 11 },
      median: { at: 'supplier/s/median', value: { value: 6 } },
      set: [3, 5],
    });
    expect(house && leadSeen(house, 't')).toBeNull();
  });

  test('taken, every offer of that supplier has it, and no other', async () => {
    const shopId = await learning();
    const taken = await leadToTake(CLOCK, shopId, 's', 'worst');
    if (!taken.ok) throw new Error('the lead time was refused');
    const { offers: part, expecting } = taken.value;
    expect(await changeShop({ commandId: newId(), shopId, part: { offers: part }, expecting }, CLOCK)).toMatchObject({
      ok: true,
    });
    const { offers } = await shopFileOf(shopId);
    expect(offers.map(({ id, leadDays }) => [id, leadDays])).toEqual([
      ['o', 11],
      ['big', 11],
      ['far', null],
    ]);
    const again = await leadToTake(CLOCK, shopId, 's', 'worst');
    expect(again.ok && again.value.offers).toEqual([]);
    expect(await leadToTake(CLOCK, shopId, 't', 'median')).toMatchObject({ ok: false });
  });
});
