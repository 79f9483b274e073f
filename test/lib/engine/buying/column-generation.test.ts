import { expect, test } from 'vitest';
import { areTaken, ordersOf, totalOf } from '@/lib/engine/buying/orders';
import { plannedParts } from '@/lib/engine/buying/planned-parts';
import { highsSolver } from '@/lib/solver/highs';
import { runs } from '@/test/runs';
import { type MarketKind, smallMarket } from './any-market';
import { leastTogether } from './every-purchase';

const UNTIMED = { secondsLeft: () => 60, told: () => {} };

const FREIGHT = { freight: true, free: false, minimum: false, breaks: false, leastPrice: 2_000_000 };
// Packs that are not too cheap: few of them make an order large enough, so that trying everything comes to an end.
const ASKING = { ...FREIGHT, leastPrice: 15_000_000 };

/** How many packs beside the need are tried: for one part, and for each of two. */
const NONE = [0, 0] as const;
const FEW = [4, 2] as const;

test.each([
  ['freight', FREIGHT, NONE],
  ['prices by quantity', { ...FREIGHT, breaks: true }, [2, 2] as const],
  ['freight that becomes free', { ...ASKING, free: true }, FEW],
  ['a minimum order', { ...ASKING, minimum: true }, FEW],
  ['all of these', { ...ASKING, free: true, minimum: true, breaks: true }, FEW],
])(
  'with %s, the solver finds what trying everything finds, and proves it',
  async (_, asks, beside) => {
    const all = await answers(asks, beside);
    const wrong = all.filter(({ total, least, bound, isPossible }) => !isPossible || total > least || bound > total);
    expect(wrong).toEqual([]);
    expect(all.filter(({ total, bound, isCertain }) => !isCertain || total - bound > 2_000)).toEqual([]);
    // Where more packs beside the need than were tried come out cheaper still, the solver is below what was tried.
    const isSame = all.filter(({ total, least }) => total === least);
    expect(isSame.length).toBeGreaterThanOrEqual(beside === FEW ? all.length * 0.9 : all.length);
  },
  300_000,
);

type Asks = Omit<MarketKind, 'parts' | 'demands' | 'leastSize'>;

async function answers(asks: Asks, [ofOne, ofTwo]: readonly [number, number]) {
  const solver = await highsSolver(UNTIMED);
  return Array.from({ length: runs(16, 1_000) }, (_, place) => place + 1).map((seed) => {
    const size = { parts: 1 + (seed % 2), demands: 3 - (seed % 2), leastSize: 90 };
    const { horizon, parts } = smallMarket(seed, { ...size, ...asks });
    const { purchases, bound, isCertain } = plannedParts(parts, horizon, solver);
    const orders = ordersOf(purchases);
    const least = leastTogether(parts, horizon, parts.length === 1 ? ofOne : ofTwo);
    const isPossible = areTaken(orders) && purchases.every(({ covers }) => covers);
    return { seed, total: totalOf(purchases, orders), least, bound, isCertain, isPossible };
  });
}
