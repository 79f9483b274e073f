import type { Part } from '../baseline-policy';
import type { Horizon } from '../horizon';
import type { Pack } from '../pack';
import { leastPrice, RemainingCostBound } from '../remaining-cost-bound';
import { type Bought, shortestPath } from '../shortest-path';

/** A lower bound of one product's cost without its orders, and the packs that reach it. Micros. */
export type ItemBound = { ahead: RemainingCostBound; least: number; bought: Bought[] };

/** The lower bound of a product: its shortest path with every pack at the lowest price of its quantity breaks. */
export function itemBoundOf({ need, packs }: Part, horizon: Horizon): ItemBound {
  const ahead = new RemainingCostBound(need, packs, horizon);
  const path = shortestPath(need, packs.map(asCheap), horizon, undefined, ahead);
  const asOffered = (path?.bought ?? []).flatMap(({ pack, orderOn }) => {
    const own = packs.find(({ offer }) => offer === pack.offer);
    return own ? [{ pack: own, orderOn }] : [];
  });
  return { ahead, least: path?.total ?? 0, bought: asOffered };
}

/** A pack at its lowest price: a bound with it holds for every quantity. */
const asCheap = (pack: Pack): Pack => ({ ...pack, levels: [{ atLeast: 1, price: leastPrice(pack) }] });
