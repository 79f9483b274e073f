import { expect, test } from 'vitest';
import { areTaken, ordersOf, totalOf } from '@/lib/engine/buying/orders';
import { plannedParts } from '@/lib/engine/buying/planned-parts';
import { highsSolver } from '@/lib/solver/highs';
import { smallMarket } from './any-market';
import { leastTogether } from './every-purchase';

const UNTIMED = { secondsLeft: () => 60, told: () => {} };

test.each([
  ['freight', { freight: true, free: false, minimum: false, breaks: false }],
  ['freight that becomes free', { freight: true, free: true, minimum: false, breaks: false }],
  ['a minimum order', { freight: true, free: false, minimum: true, breaks: false }],
  ['prices by quantity', { freight: true, free: false, minimum: false, breaks: true }],
])('with %s, the solver finds what trying everything finds', async (_, asks) => {
  const solver = await highsSolver(UNTIMED);
  const wrong: unknown[] = [];
  for (let seed = 1; seed <= Number(process.env.BUYING_CASES ?? 200) / 4; seed++) {
    const { horizon, parts } = smallMarket(seed, {
      parts: 1 + (seed % 2),
      demands: 2 + (seed % 2),
      leastSize: 90,
      ...asks,
    });
    const { purchases, bound } = plannedParts(parts, horizon, solver);
    const orders = ordersOf(purchases);
    const total = totalOf(purchases, orders);
    const least = leastTogether(parts, horizon, asks.minimum || asks.breaks || asks.free ? 2 : 0);
    const isRight =
      total === least &&
      areTaken(orders) &&
      purchases.every(({ covers }) => covers) &&
      bound <= total &&
      total - bound < 2_000;
    if (!isRight)
      wrong.push({ seed, total, least, bound, taken: areTaken(orders), covers: purchases.map(({ covers }) => covers) });
  }
  expect(wrong).toEqual([]);
});
