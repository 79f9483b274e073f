import { expect, test } from 'vitest';
import { horizonOf } from '@/lib/engine/buying/horizon';
import { candidateOrdersFor } from '@/lib/engine/buying/joint/candidate-orders';
import { fillersFor, packsFor, unopenedCosts } from '@/lib/engine/buying/joint/fillers';
import { micros } from '@/shared/quantity/amounts';
import { offerOf, partOf, productOf, supplierOf, TODAY } from './any-market';

const horizon = horizonOf({ safetyDays: 0, capitalPerYear: 0 }, TODAY, 4);

/** 28 mL a week for four weeks: a mL a day. What is left over keeps to 20 days behind the horizon, or for good. */
function marketOf(unopenedDays: number | null) {
  const seller = supplierOf('s', { freightPerOrder: micros(5e6), minimumOrder: micros(100e6) });
  const product = productOf('p', unopenedDays, null);
  const offer = offerOf('o', seller, product, { size: 10_000, price: 20e6, leadDays: 0 });
  const part = partOf(
    product,
    [offer],
    [0, 7, 14, 21].map((day) => [day, 7_000]),
    horizon,
  );
  const [pack] = part.packs;
  if (!pack) throw new Error('the offer is a pack');
  return { part, pack, slots: candidateOrdersFor([part]) };
}

test('packs beside the need are put into an order only where that gives something back', () => {
  const { part, slots } = marketOf(null);
  expect(fillersFor(part, slots, horizon, { slot: 0, goodsDual: 0 })).toEqual({ cost: 0, bought: [] });
  // Two packs cost 40 and give 44 back; what will still be used of them is credited as well.
  const { cost, bought } = fillersFor(part, slots, horizon, { slot: 0, goodsDual: 1.1 });
  expect(bought.length).toBe(5);
  expect(cost).toBeLessThan(-0.1 * 5 * 20e6);
});

test('as many packs are looked at as make the order large enough', () => {
  expect(packsFor(marketOf(null).pack)).toBe(5);
});

test('what stays shut is credited one pack after the other, for as much as will still be used before it dies', () => {
  // Bought on the first day it keeps to 20 days behind the horizon: 20 mL will be used, which are two packs.
  const { part, pack } = marketOf(27 + 20);
  const costs = unopenedCosts(part, horizon, { pack, orderOn: horizon.start, price: 20e6 }).slice(0, 4);
  expect(costs).toEqual([0, 0, 20e6, 40e6]);
});
