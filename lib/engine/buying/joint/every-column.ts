import type { Horizon } from '../horizon';
import { cheapestColumn, type Prices } from './cheapest-column';
import { type Column, columnOf } from './column';
import { localOf, type PartGraph } from './part-graph';
import type { Slots } from './slots';
import { isPlain, Ways } from './ways';

/**
 * Whether the cheapest column of a part is the least for certain: its packs come from one supplier, and nothing asks how
 * large an order is, so that nothing is gained by going back to an order that was used up before another.
 */
export const isCertain = (graph: Pick<PartGraph, 'slots' | 'part'>): boolean =>
  graph.slots.first.size === 1 && isPlain(graph);

/**
 * What no column of each part comes out below at some prices, for certain: in whatever turn the packs of different orders
 * are used, and with whatever stays shut beside them.
 *
 * Gives    null when there are too many ways to look at, or the time is over
 */
export function surelyLeast(
  graphs: readonly PartGraph[],
  slots: Slots,
  horizon: Horizon,
  prices: readonly Prices[],
  isOver: () => boolean,
): number[] | null {
  const least: number[] = [];
  for (const [part, graph] of graphs.entries()) {
    const own = localOf(graph, prices[part] ?? never());
    const found = cheapestColumn(graph, horizon, own);
    const column = found && columnOf(graph.part, slots, horizon, found.bought);
    if (!found || !column || isOver()) return null;
    const most = priced(column, prices[part] ?? never()) + ROUNDING;
    const its = isCertain(graph) ? found.cost : new Ways(graph, slots, horizon, own).least({ most, isOver });
    if (its === null) return null;
    least.push(its);
  }
  return least;
}

/** All columns that come out within a margin of some least: by part. Null when there are too many, or the time is over. */
export function everyColumn(
  graphs: readonly PartGraph[],
  slots: Slots,
  horizon: Horizon,
  prices: readonly Prices[],
  { least, margin, isOver }: { least: readonly number[]; margin: number; isOver: () => boolean },
): Column[][] | null {
  const columns: Column[][] = [];
  for (const [part, graph] of graphs.entries()) {
    const ways = new Ways(graph, slots, horizon, localOf(graph, prices[part] ?? never()));
    const its = ways.columns({ most: (least[part] ?? 0) + margin, isAlone: graphs.length === 1, isOver });
    if (!its) return null;
    columns.push(its);
  }
  return columns;
}

/** Estimates in doubles may lie this far from what whole micros come to. */
const ROUNDING = 100;

/** What a column comes to at some prices of the orders. */
function priced({ cost, goods }: Column, { fixed, reward }: Prices): number {
  let total = cost;
  for (const [slot, value] of goods) total += (fixed[slot] ?? 0) - (reward[slot] ?? 0) * value;
  return total;
}

function never(): never {
  throw new RangeError('buying: a part without prices');
}
