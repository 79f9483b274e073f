import { expect, test } from 'vitest';
import { areTaken, ordersOf, totalOf } from '@/lib/engine/buying/orders';
import { plannedParts } from '@/lib/engine/buying/planned-parts';
import { highsSolver } from '@/lib/solver/highs';
import { smallMarket } from './any-market';
import { leastTogether } from './every-purchase';

const UNTIMED = { secondsLeft: () => 60, told: () => {} };

test.each([
  ['freight', { freight: true, free: false, minimum: false, breaks: false }],
  ['prices by quantity', { freight: true, free: false, minimum: false, breaks: true }],
])('with %s, the solver finds what trying everything finds', async (_, asks) => {
  const wrong = (await answers(asks)).filter(
    ({ total, least, bound, isPossible }) =>
      !(isPossible && total === least && bound <= total && total - bound < 2_000),
  );
  expect(wrong).toEqual([]);
});

/*
 * Filling an order up with a mixture of packs is not looked at, so that trying everything may find a cheaper one. What
 * the solver gives must still be possible, and its bound must be one.
 */
test.each([
  ['freight that becomes free', { freight: true, free: true, minimum: false, breaks: false }],
  ['a minimum order', { freight: true, free: false, minimum: true, breaks: false }],
])('with %s, the answer is possible, and nothing that trying everything finds is below its bound', async (_, asks) => {
  const all = await answers(asks);
  expect(all.filter(({ least, bound, isPossible }) => !(isPossible && bound <= least))).toEqual([]);
  expect(all.filter(({ total, least }) => total <= least).length).toBeGreaterThan(all.length * 0.9);
});

type Asks = { freight: boolean; free: boolean; minimum: boolean; breaks: boolean };

async function answers(asks: Asks) {
  const solver = await highsSolver(UNTIMED);
  return Array.from({ length: Number(process.env.BUYING_CASES ?? 200) / 4 }, (_, place) => place + 1).map((seed) => {
    const size = { parts: 1 + (seed % 2), demands: 2 + (seed % 2), leastSize: 90 };
    const { horizon, parts } = smallMarket(seed, { ...size, ...asks });
    const { purchases, bound } = plannedParts(parts, horizon, solver);
    const orders = ordersOf(purchases);
    const least = leastTogether(parts, horizon, asks.minimum || asks.breaks || asks.free ? 2 : 0);
    const isPossible = areTaken(orders) && purchases.every(({ covers }) => covers);
    return { seed, total: totalOf(purchases, orders), least, bound, isPossible };
  });
}
