import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import { LeastAhead, leastPrice } from '../least-ahead';
import type { Pack } from '../pack';
import { type Bought, shortestPath } from '../shortest-path';

/** What one part costs at least, whatever its orders cost, and the packs that come to that: a bound and a beginning. */
export type Floor = { ahead: LeastAhead; least: number; bought: Bought[] };

/** The floor of a part: its exact path, with every pack as cheap as a quantity break ever makes it. */
export function floorOf({ need, packs }: Part, horizon: Horizon): Floor {
  const ahead = new LeastAhead(need, packs, horizon);
  const path = shortestPath(need, packs.map(asCheap), horizon, undefined, ahead);
  const asOffered = (path?.bought ?? []).flatMap(({ pack, orderOn }) => {
    const own = packs.find(({ offer }) => offer === pack.offer);
    return own ? [{ pack: own, orderOn }] : [];
  });
  return { ahead, least: path?.total ?? 0, bought: asOffered };
}

/** A pack as cheap as it ever becomes: what is proven with it holds for every number of packs. */
const asCheap = (pack: Pack): Pack => ({ ...pack, levels: [{ atLeast: 1, price: leastPrice(pack) }] });
