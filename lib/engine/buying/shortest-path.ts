import { cheapestPerMl, followPolicy, smallestPack } from './baseline-policy';
import { costOfPurchase, purchaseOf } from './bought';
import { Frontier } from './frontier';
import type { Horizon } from './horizon';
import { type Need, placeAfter, toBuy } from './need';
import type { Pack } from './pack';
import { capitalOf, creditOf, openPack } from './pack-use';
import { RemainingCostBound } from './remaining-cost-bound';

/** So many packs, one after another: each from one order. */
export type Bought = { pack: Pack; orderOn: number };

/** Packs that meet a need, and what they cost: packs and capital, less what is left and will still be used. Micros. */
export type Path = { bought: Bought[]; total: number };

/** A coverage that can be reached, the least that it costs, and the pack that reaches it. */
type Stop = { covered: number; cost: number; pack: Pack | null; orderOn: number; from: Stop | null };

/**
 * The packs that meet one product's need at the least cost, where an order costs nothing by itself: exact, to the micro.
 *
 *   total = price of the packs + capital tied up − what is left and will still be used
 *
 * It is a shortest path over what can be covered: each pack is one step, opened on the day of the first need that is not
 * covered, ordered on the last day on which it still comes in time, and it reaches as far as its size and its life. What
 * is covered only grows, so every coverage is settled once, in order. A coverage from which even the cheapest price per
 * unit cannot come out below a plan that is known is left alone.
 *
 * Takes    the need, its packs, a total that is known to be possible (left out: that of a habit), and the bound of what lies ahead
 * Gives    null when a day cannot be met by any pack, which is so only where nobody offers the product
 */
export function shortestPath(
  need: Need,
  packs: readonly Pack[],
  horizon: Horizon,
  known = byHabits(need, packs, horizon),
  ahead = new RemainingCostBound(need, packs, horizon),
): Path | null {
  if (toBuy(need) === 0) return { bought: [], total: 0 };
  const search = new Search(need, packs, horizon, known, ahead);
  search.reach({ covered: 0, cost: 0, pack: null, orderOn: 0, from: null }, 0);
  search.frontier.walk((stop, place) => search.goOn(stop, place));
  return search.best && { bought: boughtOn(search.best), total: search.best.cost };
}

/** What the cheaper of two habits costs: a total that is possible, and soon known. */
function byHabits(need: Need, packs: readonly Pack[], horizon: Horizon): number {
  const part = { need, packs: [...packs], isLate: [] };
  const totals = [smallestPack, cheapestPerMl].map((habit) => {
    const purchase = purchaseOf(need, horizon, followPolicy([part], habit, horizon)[0] ?? []);
    return purchase.covers ? costOfPurchase(purchase) : Infinity;
  });
  return Math.min(...totals);
}

/** Estimates in doubles may lie this far from what whole micros come to. */
export const MICROS_OF_ROUNDING = 1_000;

class Search {
  readonly frontier: Frontier<Stop>;
  best: Stop | null = null;
  private readonly all: number;

  constructor(
    private readonly need: Need,
    private readonly packs: readonly Pack[],
    private readonly horizon: Horizon,
    private readonly known: number,
    private readonly ahead: RemainingCostBound,
  ) {
    this.frontier = new Frontier(need.days.length);
    this.all = toBuy(need);
  }

  /** Open one pack of every kind where a coverage ends. */
  goOn(stop: Stop, place: number): void {
    const ahead = this.ahead.from(stop.covered, place);
    if (stop.cost + ahead > Math.min(this.known, this.best?.cost ?? Infinity) + MICROS_OF_ROUNDING) return;
    for (const pack of this.packs) {
      const way = pack.ways[place];
      if (way) this.open(stop, place, pack, way);
    }
  }

  private open(stop: Stop, place: number, pack: Pack, way: NonNullable<Pack['ways'][number]>): void {
    const { need, horizon } = this;
    const price = pack.levels[0]?.price ?? 0;
    const use = openPack(need, horizon, pack, { ...way, covered: stop.covered, place });
    const tied = { ...use, price, orderOn: way.orderOn, from: stop.covered, place };
    let cost = stop.cost + price + capitalOf(need, horizon, pack.size, tied);
    const isLast = use.to === this.all;
    if (isLast) cost -= creditOf(need, horizon, { price, size: pack.size }, use);
    const next: Stop = { covered: use.to, cost, pack, orderOn: way.orderOn, from: stop };
    if (!isLast) this.reach(next, placeAfter(need, use.to, place));
    else if (!this.best || cost < this.best.cost) this.best = next;
  }

  reach(stop: Stop, place: number): void {
    const same = this.frontier.at(stop.covered);
    if (!same) this.frontier.add(stop, place);
    else if (stop.cost < same.cost) Object.assign(same, stop);
  }
}

function boughtOn(last: Stop): Bought[] {
  const bought: Bought[] = [];
  for (let stop: Stop | null = last; stop?.pack; stop = stop.from) {
    bought.push({ pack: stop.pack, orderOn: stop.orderOn });
  }
  return bought.reverse();
}
