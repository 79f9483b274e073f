import { expect, test } from 'vitest';
import { costOfPurchase, purchaseOf } from '@/lib/engine/buying/bought';
import { shortestPath } from '@/lib/engine/buying/shortest-path';
import { smallMarket } from './any-market';
import { everyPurchase } from './every-purchase';

const ALONE = {
  parts: 1,
  demands: 5,
  leastSize: 60,
  leastPrice: 2_000_000,
  freight: false,
  free: false,
  minimum: false,
  breaks: false,
};

test('the exact path costs what trying everything costs, to the micro, on 2,000 small needs', () => {
  for (let seed = 1; seed <= 2_000; seed++) {
    const { horizon, parts } = smallMarket(seed, ALONE);
    const [part] = parts;
    if (!part) throw new Error('a market has a part');
    const path = shortestPath(part.need, part.packs, horizon);
    const purchase = purchaseOf(part.need, horizon, path?.bought ?? []);
    // Where orders cost nothing, each pack is ordered as late as it can be.
    const least = Math.min(...everyPurchase(part, horizon, null, 0).map(costOfPurchase));
    expect({ seed, total: path?.total, covers: purchase.covers }).toEqual({ seed, total: least, covers: true });
    expect(costOfPurchase(purchase)).toBe(least);
  }
});
