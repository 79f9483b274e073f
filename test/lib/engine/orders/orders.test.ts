import { describe, expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { leadLearned } from '@/lib/engine/orders/lead-learned';
import { comingContainers, expectedDay, onOrder, withOnOrder } from '@/lib/engine/orders/on-order';
import { cameOf, levelReached, saysNewPrice } from '@/lib/engine/orders/paid-otherwise';
import type { Shop } from '@/lib/engine/shop';
import { Day } from '@/shared/time/day';
import { buyingShop } from './a-buying-shop';

const TODAY = Day.parse('2026-03-10');
// Tuesday 3 March; three working days later is Friday, five are the Tuesday after.
const ORDER = { id: 'x', supplier: 's', placedOn: '2026-03-03', lines: [{ offer: 'o', count: 4, price: '36.00' }] };
const LOT = { product: 'p', pack: '500 mL', order: 'x', offer: 'o' };

const only = <T>(list: readonly T[]): T => {
  const [first, ...more] = list;
  if (first === undefined || more.length > 0) throw new Error(`expected one, got ${list.length}`);
  return first;
};
const orderIn = (shop: Shop) => only(shop.orders);

describe('what is expected', () => {
  test('an order comes when its slowest line comes, unless a day was noted', () => {
    const lines = [...ORDER.lines, { offer: 'big', count: 1 }];
    expect(expectedDay(orderIn(buyingShop({ orders: [ORDER] })))).toBe('2026-03-06');
    expect(expectedDay(orderIn(buyingShop({ orders: [{ ...ORDER, lines }] })))).toBe('2026-03-10');
    expect(expectedDay(orderIn(buyingShop({ orders: [{ ...ORDER, expectedOn: '2026-03-20' }] })))).toBe('2026-03-20');
  });

  test('a part that came leaves the rest expected, and more than was ordered leaves nothing', () => {
    const lots = (count: number) => [{ id: 'l', ...LOT, count, paid: '1', receivedOn: '2026-03-06' }];
    const rest = (count: number) => onOrder(buyingShop({ orders: [ORDER], lots: lots(count) }), TODAY);
    expect(rest(1)).toMatchObject([{ packs: 3, amount: 1_500_000, isLate: true }]);
    expect(rest(4)).toEqual([]);
    expect(rest(5)).toEqual([]);
  });

  test('it is late from the day after it was expected, and not on that day', () => {
    const on = (day: string) => onOrder(buyingShop({ orders: [ORDER] }), Day.parse(day))[0]?.isLate;
    expect([on('2026-03-06'), on('2026-03-07')]).toEqual([false, true]);
  });

  test('nothing of a closed order is expected, whatever is missing', () => {
    expect(onOrder(buyingShop({ orders: [{ ...ORDER, closedOn: '2026-03-08' }] }), TODAY)).toEqual([]);
  });
});

describe('stock that will arrive', () => {
  test('stands there from the day it is expected, full and at what it was to cost', () => {
    const coming = comingContainers(buyingShop({ orders: [ORDER] }), Day.parse('2026-03-04'));
    expect(coming).toHaveLength(4);
    expect(coming[0]).toMatchObject({ receivedOn: '2026-03-06', size: 500_000, remaining: 500_000, paid: 36_000_000 });
  });

  test('what is late counts from the next day on which the supplier works', () => {
    // Saturday: the next working day is Monday.
    const [first] = comingContainers(buyingShop({ orders: [ORDER] }), Day.parse('2026-03-14'));
    expect(first?.receivedOn).toBe('2026-03-16');
  });

  test('nobody plans with an order that has no day at all', () => {
    const offers = [{ id: 'o', supplier: 's', product: 'p', pack: '500 mL', price: '40.00' }];
    const shop = buyingShop({ orders: [ORDER], offers });
    expect(onOrder(shop, TODAY)).toMatchObject([{ expectedOn: null, isLate: false }]);
    expect(comingContainers(shop, TODAY)).toEqual([]);
  });

  test('a plan of the shop as it is receives nothing; one with what is on order receives it in its week', () => {
    const shop = buyingShop({ orders: [ORDER] });
    const received = (of: Shop) =>
      planAhead(of, Day.parse('2026-03-04'), 2).products[0]?.weeks.map((week) => week.received);
    expect(received(shop)).toEqual([0, 0]);
    expect(received(withOnOrder(shop, Day.parse('2026-03-04')))).toEqual([2_000_000, 0]);
  });
});

describe('how long a supplier takes', () => {
  const learned = (...days: string[]) => {
    const shop = buyingShop({
      orders: [ORDER],
      lots: days.map((receivedOn, at) => ({ id: `l${at}`, ...LOT, paid: '36.00', receivedOn })),
    });
    return leadLearned(shop, only(shop.suppliers));
  };

  test('nothing is learned before anything came', () => {
    expect(learned()).toBeNull();
  });

  test('two lots of one order on one day are one delivery', () => {
    expect(learned('2026-03-06', '2026-03-06')).toMatchObject({ median: 3, worst: 3, deliveries: [{ daysLate: 0 }] });
  });

  test('a part that came later is a delivery of its own, and of two the longer is the median', () => {
    expect(learned('2026-03-06', '2026-03-12')).toMatchObject({
      median: 7,
      worst: 7,
      deliveries: [{ lead: 7, daysLate: 6 }, { lead: 3 }],
    });
    expect(learned('2026-03-05', '2026-03-06', '2026-03-12')).toMatchObject({ median: 3, worst: 7 });
  });
});

describe('what was really paid', () => {
  const shop = (paid: string | null, count = 4, receivedOn = '2026-03-06') =>
    buyingShop({ orders: [ORDER], lots: [{ id: 'l', ...LOT, count, paid, receivedOn }] });
  const cameIn = (of: Shop) => only(cameOf(orderIn(of), of));

  test('the difference is for one pack, either way, and not known where no price is', () => {
    expect(cameIn(shop('148.00'))).toMatchObject({ packs: 4, paidEach: 37_000_000, dearerBy: 1_000_000 });
    expect(cameIn(shop('140.00'))).toMatchObject({ dearerBy: -1_000_000 });
    expect(cameIn(shop('144.00'))).toMatchObject({ dearerBy: 0 });
    expect(cameIn(shop(null))).toMatchObject({ paidEach: null, dearerBy: null });
  });

  test('it speaks of the quantity break that the order reached', () => {
    const { offer } = cameIn(shop('148.00'));
    expect([levelReached(offer, 2), levelReached(offer, 3), levelReached(offer, 9)]).toEqual([null, 3, 3]);
    expect(saysNewPrice(cameIn(shop('144.00')), 4)).toBe(false);
    expect(saysNewPrice(cameIn(shop('148.00')), 4)).toBe(true);
    expect(saysNewPrice(cameIn(shop('160.00')), 2)).toBe(false);
  });

  test('a price that was noted since is not overtaken by an older delivery', () => {
    const newer = { ...cameIn(shop('148.00')) };
    expect(saysNewPrice({ ...newer, offer: { ...newer.offer, since: Day.parse('2026-03-07') } }, 4)).toBe(false);
    expect(saysNewPrice({ ...newer, offer: { ...newer.offer, since: Day.parse('2026-03-06') } }, 4)).toBe(true);
  });
});

describe('an order with one offer on two lines', () => {
  // Four at 36 and two at 40, as a file may write it.
  const TWICE = { ...ORDER, lines: [...ORDER.lines, { offer: 'o', count: 2, price: '40.00' }] };
  const lot = (id: string, count: number, paid: string, receivedOn: string) => {
    return { ...{ id, ...LOT }, count, paid, receivedOn };
  };
  const shop = (...lots: ReturnType<typeof lot>[]) => buyingShop({ orders: [TWICE], lots });
  const first = lot('l1', 3, '108.00', '2026-03-06');
  const second = lot('l2', 2, '78.00', '2026-03-09');

  test('what came fills one line after the other, and too much stands with the last', () => {
    const received = (of: Shop) => orderIn(of).lines.map((line) => line.received);
    expect(received(shop(first))).toEqual([3, 0]);
    expect(received(shop(first, second))).toEqual([4, 1]);
    expect(received(shop(first, second, lot('l3', 3, '1', '2026-03-09')))).toEqual([4, 4]);
  });

  test('what is still to come is what was ordered less what came, counted once', () => {
    const rest = (of: Shop) => onOrder(of, TODAY).map(({ packs }) => packs);
    expect(rest(shop())).toEqual([4, 2]);
    expect(rest(shop(first))).toEqual([1, 2]);
    expect(rest(shop(first, second))).toEqual([1]);
    expect(comingContainers(shop(first), TODAY)).toHaveLength(3);
  });

  test('no two of the bottles that will come are taken for one', () => {
    const coming = comingContainers(shop(), TODAY).map((one) => `${one.lot} ${one.place}`);
    expect(new Set(coming).size).toBe(6);
  });

  test('every pack that came is told once, beside what its own line quoted', () => {
    const of = shop(first, second);
    expect(cameOf(orderIn(of), of)).toMatchObject([
      { cameOn: '2026-03-09', packs: 1, paidEach: 39_000_000, quoted: 36_000_000, dearerBy: 3_000_000 },
      { cameOn: '2026-03-09', packs: 1, paidEach: 39_000_000, quoted: 40_000_000, dearerBy: -1_000_000 },
      { cameOn: '2026-03-06', packs: 3, paidEach: 36_000_000, dearerBy: 0 },
    ]);
  });
});
