import type { Horizon } from '../horizon';
import type { CandidateOrders } from './candidate-orders';
import { type Column, columnOf } from './column';
import { ignoresOrderSize, LabelSetting } from './label-setting';
import { localOf, type PartGraph } from './part-graph';
import { type DualPrices, solvePricing } from './pricing-problem';

/**
 * True when the pricing problem is exact: the packs come from one supplier and no term depends on an order's size, so that
 * using one order up before the next costs nothing.
 */
export const isCertain = (graph: Pick<PartGraph, 'slots' | 'part'>): boolean =>
  graph.slots.first.size === 1 && ignoresOrderSize(graph);

/**
 * An exact lower bound of the reduced cost of each product, by label setting where the pricing problem is not exact.
 *
 * Gives    null when there are too many labels, or the time is over
 */
export function certainItemBounds(
  graphs: readonly PartGraph[],
  slots: CandidateOrders,
  horizon: Horizon,
  prices: readonly DualPrices[],
  isOver: () => boolean,
): number[] | null {
  const least: number[] = [];
  for (const [part, graph] of graphs.entries()) {
    const own = localOf(graph, prices[part] ?? never());
    const found = solvePricing(graph, horizon, own);
    const column = found && columnOf(graph.part, slots, horizon, found.bought);
    if (!found || !column || isOver()) return null;
    const most = priced(column, prices[part] ?? never()) + ROUNDING;
    const its = isCertain(graph) ? found.cost : new LabelSetting(graph, slots, horizon, own).least({ most, isOver });
    if (its === null) return null;
    least.push(its);
  }
  return least;
}

/** All columns whose reduced cost lies within a margin of the least, by product. Null when there are too many, or the time is over. */
export function enumerateColumns(
  graphs: readonly PartGraph[],
  slots: CandidateOrders,
  horizon: Horizon,
  prices: readonly DualPrices[],
  { least, margin, isOver }: { least: readonly number[]; margin: number; isOver: () => boolean },
): Column[][] | null {
  const columns: Column[][] = [];
  for (const [part, graph] of graphs.entries()) {
    const ways = new LabelSetting(graph, slots, horizon, localOf(graph, prices[part] ?? never()));
    const its = ways.columns({ most: (least[part] ?? 0) + margin, isAlone: graphs.length === 1, isOver });
    if (!its) return null;
    columns.push(its);
  }
  return columns;
}

/** Doubles and whole micros may differ by this. */
const ROUNDING = 100;

/** The reduced cost of a column at the dual prices. */
function priced({ cost, goods }: Column, { orderDual, goodsDual }: DualPrices): number {
  let total = cost;
  for (const [slot, value] of goods) total += (orderDual[slot] ?? 0) - (goodsDual[slot] ?? 0) * value;
  return total;
}

function never(): never {
  throw new RangeError('buying: a part without prices');
}
