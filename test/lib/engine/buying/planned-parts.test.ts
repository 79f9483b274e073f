import fc from 'fast-check';
import { expect, test } from 'vitest';
import { costOfPurchase, purchaseOf } from '@/lib/engine/buying/bought';
import { type Horizon, horizonOf } from '@/lib/engine/buying/horizon';
import { candidateOrderFor, candidateOrdersFor, twinOf } from '@/lib/engine/buying/joint/candidate-orders';
import { columnsOf, totalOfChoice } from '@/lib/engine/buying/joint/column';
import { itemBoundOf } from '@/lib/engine/buying/joint/item-bound';
import { LabelSetting } from '@/lib/engine/buying/joint/label-setting';
import { topUpOrders } from '@/lib/engine/buying/joint/order-top-up';
import { localOf, partGraph } from '@/lib/engine/buying/joint/part-graph';
import { solvePricing } from '@/lib/engine/buying/joint/pricing-problem';
import { ontoSum } from '@/lib/engine/buying/joint/subgradient-ascent';
import { micros } from '@/shared/quantity/amounts';
import { dayFromNumber } from '@/shared/time/day';
import { offerOf, partOf, productOf, smallMarket, supplierOf, TODAY } from './any-market';
import { everyPurchase, orderDaysOf } from './every-purchase';

const horizon = horizonOf({ safetyDays: 0, capitalPerYear: 0 }, TODAY, 4);

/** 7 mL on each of four Mondays, in packs of 10 mL for 20. */
function fourMondays(terms: Parameters<typeof supplierOf>[1]) {
  const seller = supplierOf('s', terms);
  const offer = offerOf('o', seller, productOf('p', null, null), { size: 10_000, price: 20e6, leadDays: 0 });
  const demands = [0, 7, 14, 21].map((day): [number, number] => [day, 7_000]);
  return { seller, part: partOf(offer.product, [offer], demands, horizon) };
}

test('an order that may be free of freight stands twice: once paying it, once large enough not to', () => {
  const { seller, part } = fourMondays({ freightPerOrder: micros(5e6), freeFreightOver: micros(50e6) });
  const slots = candidateOrdersFor([part]);
  expect(slots.all.slice(0, 2)).toEqual([
    { supplier: seller, day: horizon.start, freight: 5e6, minimum: 0 },
    { supplier: seller, day: horizon.start, freight: 0, minimum: 50e6 },
  ]);
  expect(twinOf(slots, 0)).toEqual([0, 1]);
  expect(twinOf(slots, 1)).toEqual([0, 1]);
  expect(candidateOrderFor(slots, seller, horizon.start, 49_999_999)).toBe(0);
  expect(candidateOrderFor(slots, seller, horizon.start, 50_000_000)).toBe(1);
  expect(candidateOrderFor(slots, seller, horizon.start + 1, 0)).toBeNull();
});

test('freight that every order the supplier takes is free of does not stand at all', () => {
  const terms = { freightPerOrder: micros(5e6), freeFreightOver: micros(30e6), minimumOrder: micros(40e6) };
  const { part } = fourMondays(terms);
  for (const { freight, minimum } of candidateOrdersFor([part]).all) expect([freight, minimum]).toEqual([0, 40e6]);
});

test('what an order costs is shared out so that it is asked for in full, and nothing is asked for or given back below nothing', () => {
  const money = fc.double({ min: -50, max: 50, noNaN: true });
  const amount = fc.double({ min: 0, max: 40, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(money, { minLength: 1, maxLength: 6 }),
      money,
      amount,
      amount,
      (wanted, given, freight, minimum) => {
        const shared = ontoSum(wanted, given, freight, minimum);
        const asked = shared.asked.reduce((sum, value) => sum + value, 0);
        expect(asked).toBeCloseTo(freight + shared.given, 6);
        expect(Math.min(0, ...shared.asked, shared.given)).toBe(0);
        expect(shared.given).toBeLessThanOrEqual(minimum);
        // The nearest one: what is there already stays as it is.
        const again = ontoSum(shared.asked, shared.given, freight, minimum);
        for (const [at, value] of shared.asked.entries()) expect(again.asked[at]).toBeCloseTo(value, 6);
      },
    ),
  );
});

test('an order is filled up to where its freight is free when that costs less than the freight, and only then', () => {
  const totals = [3e6, 5e6].map((freight) => {
    const { part } = fourMondays({ freightPerOrder: micros(freight), freeFreightOver: micros(80e6) });
    const slots = candidateOrdersFor([part]);
    const [pack] = part.packs;
    if (!pack) throw new Error('the offer is a pack');
    const needed = [Array.from({ length: 3 }, () => ({ pack, orderOn: horizon.start }))];
    const columns = columnsOf([part], slots, horizon, needed).flatMap((column) => column ?? []);
    return [columns, topUpOrders(columns, [part], slots, horizon, () => false)].map((one) => totalOfChoice(one) / 1e6);
  });
  // Three packs of which 2 mL are left and credited with 4. A fourth costs nothing: all of it will still be used.
  expect(totals).toEqual([
    [59, 56],
    [61, 56],
  ]);
});

test('fillerGain up is not worth more than the freight: packs that die unused are not bought for it', () => {
  const seller = supplierOf('s', { freightPerOrder: micros(5e6), freeFreightOver: micros(80e6) });
  const product = productOf('p', 28, null);
  const offer = offerOf('o', seller, product, { size: 10_000, price: 20e6, leadDays: 0 });
  const demands = [0, 7, 14, 21].map((day): [number, number] => [day, 7_000]);
  const part = partOf(product, [offer], demands, horizon);
  const [pack] = part.packs;
  if (!pack) throw new Error('the offer is a pack');
  const slots = candidateOrdersFor([part]);
  const needed = [Array.from({ length: 3 }, () => ({ pack, orderOn: horizon.start }))];
  const columns = columnsOf([part], slots, horizon, needed).flatMap((column) => column ?? []);
  expect(topUpOrders(columns, [part], slots, horizon, () => false)).toBe(columns);
});

/*
 * Whatever an order costs and gives back: no purchase at all, in whatever turn and with whatever beside it, is below what
 * is said to be the least, and every one that is near to it is counted, or one that does as well for all orders.
 */
test('at any prices of the orders nothing comes out below the least of a part, and all that is near to it is counted', () => {
  for (let seed = 1; seed <= 60; seed++) {
    const kind = { freight: true, free: true, minimum: true, breaks: seed % 2 === 0 };
    const market = smallMarket(seed, { ...kind, parts: 1, demands: 2, leastSize: 90, leastPrice: 15_000_000 });
    const [part] = market.parts;
    if (!part) throw new Error('a market has a part');
    const { least, columns, every, asked } = atPrices(part, market.horizon, seed);
    const below = every.filter(({ cost }) => cost < least - 1);
    expect({ seed, below: below.length }).toEqual({ seed, below: 0 });
    const near = every.filter(({ costAsAsked }) => costAsAsked <= least + MARGIN - 1);
    const missing = near.filter((one) => !columns.some((other) => doesAsWell(other, one, asked)));
    expect({ seed, missing }).toEqual({ seed, missing: [] });
  }
});

const MARGIN = 4_000_000;

/** What a purchase comes to at the prices of the orders, and when nothing is given back for more than an order asks for. */
type Priced = { cost: number; costAsAsked: number; goods: Map<string, number>; total: number };

/** As cheap, in no other orders, and each of them as large as far as anything asks for that. */
const doesAsWell = (a: Priced, b: Priced, asked: ReadonlyMap<string, number>): boolean =>
  a.total <= b.total &&
  [...a.goods.keys()].every((order) => b.goods.has(order)) &&
  [...b.goods].every(([order, value]) => (a.goods.get(order) ?? 0) >= Math.min(value, asked.get(order) ?? 0));

function atPrices(part: Parameters<typeof partGraph>[0], within: Horizon, seed: number) {
  const slots = candidateOrdersFor([part]);
  const { ahead, least: floor } = itemBoundOf(part, within);
  const graph = partGraph(part, slots, within, { least: floor, most: floor + 200e6, nodes: 12_000, ahead });
  const random = (slot: number, below: number) => ((seed * 7919 + slot * 104_729) % 1_000) * (below / 1_000);
  const prices = {
    orderDual: Float64Array.from(slots.all, (_, slot) => random(slot, 9e6)),
    goodsDual: Float64Array.from(slots.all, ({ minimum }, slot) => (minimum > 0 ? random(slot + 31, 0.5) : 0)),
  };
  const ways = new LabelSetting(graph, slots, within, localOf(graph, prices));
  const isOver = () => false;
  const least = ways.least({ most: (solvePricing(graph, within, localOf(graph, prices))?.cost ?? 0) + 30e6, isOver });
  if (least === null) throw new Error('a small part has few ways');
  const orderKey = (supplier: string, day: number) => `${supplier} ${dayFromNumber(day)}`;
  const every = everyPurchase(part, within, orderDaysOf([part]), 2).map((purchase): Priced => {
    const goods = new Map<string, number>();
    for (const { pack, orderOn, price } of purchase.packs) {
      const key = orderKey(pack.offer.supplier.id, orderOn);
      goods.set(key, (goods.get(key) ?? 0) + price);
    }
    const total = costOfPurchase(purchase);
    return { total, goods, cost: total + cheapestWay(goods, Infinity), costAsAsked: total + cheapestWay(goods, 0) };
  });
  const columns = (ways.columns({ most: least + MARGIN, isAlone: false, isOver }) ?? []).map(
    ({ purchase, goods }): Priced => {
      const again = costOfPurchase(purchaseOf(part.need, within, purchase.packs));
      const byOrder = [...goods].map(([slot, value]): [string, number] => {
        const one = slots.all[slot];
        return [one ? orderKey(one.supplier.id, one.day) : '', value];
      });
      return { total: again, goods: new Map(byOrder), cost: 0, costAsAsked: 0 };
    },
  );
  // The larger of the two that an order can be stands behind the other.
  const asked = new Map(slots.all.map(({ supplier, day, minimum }) => [orderKey(supplier.id, day), minimum]));
  return { least, columns, every, asked };

  /** The cheaper of the two that each order can be, when so much beyond what it asks for gives something back. */
  function cheapestWay(goods: ReadonlyMap<string, number>, beyond: number): number {
    let cost = 0;
    for (const [order, value] of goods) {
      const its = [...slots.all.entries()].filter(([, { supplier, day }]) => orderKey(supplier.id, day) === order);
      const costs = its.map(
        ([slot, { minimum }]) =>
          (prices.orderDual[slot] ?? 0) - (prices.goodsDual[slot] ?? 0) * Math.min(value, minimum + beyond),
      );
      cost += Math.min(...costs);
    }
    return cost;
  }
}
