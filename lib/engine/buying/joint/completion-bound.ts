import type { Horizon } from '../horizon';
import { bundlesOf } from './bundles';
import { type Arc, gainBeside, type PartGraph, withArcs } from './part-graph';
import { type DualPrices, PricingSearch, waitsOf } from './pricing-problem';

/** The least reduced cost from a node to the end: with an order open (node × slots + slot), and with none. */
export type CompletionBound = { open: Float64Array; closed: Float64Array };

/** The completion bound at each node at some dual prices: shortest paths backwards from the end. */
export function completionBoundOf(graph: PartGraph, horizon: Horizon, prices: DualPrices): CompletionBound {
  const { slots } = graph;
  const width = slots.all.length;
  const open = new Float64Array((graph.nodes + 1) * width).fill(Infinity);
  const closed = new Float64Array(graph.nodes + 1).fill(Infinity);
  const waits = waitsOf(slots, horizon);
  open.fill(0, graph.nodes * width);
  const rate = graph.fillerGain.rate(prices);
  const gain = (to: number, keeps: number) => gainBeside(graph, rate, { to, keeps });
  const behind = (to: number, slot: number) => Math.min(open[to * width + slot] ?? Infinity, closed[to] ?? Infinity);
  const back = (arc: Arc, slot: number): number => {
    const [goodsDual, price] = [prices.goodsDual[slot] ?? 0, arc.pack.levels[0]?.price ?? 0];
    const one = price * (arc.share - (waits[slot] ?? 0) - goodsDual) + behind(arc.to, slot) - gain(arc.to, arc.keeps);
    if (arc.pack.levels.length === 1) return one;
    const orderOn = slots.all[slot]?.day ?? horizon.start;
    const bundles = bundlesOf(graph, horizon, { arc, slot, orderOn, goodsDual });
    return bundles.reduce((least, { to, cost }) => Math.min(least, cost + behind(to, slot) - gain(to, 0)), one);
  };
  for (let node = graph.nodes - 1; node >= 0; node--) {
    for (let index = graph.firstArc[node] ?? 0; index < (graph.firstArc[node + 1] ?? 0); index++) {
      const arc = graph.arcs[index];
      for (let slot = arc?.firstSlot ?? 0; arc && slot <= arc.lastSlot; slot++) {
        const cost = back(arc, slot);
        const here = node * width + slot;
        if (cost < (open[here] ?? Infinity)) open[here] = cost;
        if (cost + (prices.orderDual[slot] ?? 0) < (closed[node] ?? Infinity))
          closed[node] = cost + (prices.orderDual[slot] ?? 0);
      }
    }
  }
  return { open, closed };
}

/** Forward and backward bounds of each node with every `orderDual` at 0. */
type Free = { before: Float64Array; behind: Float64Array };

/**
 * Bounds with every `orderDual` at 0 and every pack at its lowest price: they hold whatever the orders contain, in any
 * turn.
 */
export function orderFreeBounds(graph: PartGraph, horizon: Horizon, prices: DualPrices): Free {
  const before = new Float64Array(graph.nodes + 1).fill(Infinity);
  const behind = new Float64Array(graph.nodes + 1).fill(Infinity);
  [before[0], behind[graph.nodes]] = [0, 0];
  const costs = graph.arcs.map(leastCosts(graph, horizon, prices));
  const of = (index: number) => costs[index]?.reduce((least, cost) => Math.min(least, cost), Infinity) ?? Infinity;
  for (const [index, { from, to }] of graph.arcs.entries()) {
    before[to] = Math.min(before[to] ?? Infinity, (before[from] ?? Infinity) + of(index));
  }
  for (let index = graph.arcs.length - 1; index >= 0; index--) {
    const arc = graph.arcs[index];
    if (arc) behind[arc.from] = Math.min(behind[arc.from] ?? Infinity, (behind[arc.to] ?? Infinity) + of(index));
  }
  return { before, behind };
}

/** The least reduced cost of each arc by slot: without the order itself, with the most that fillers gain at the end. */
function leastCosts(graph: PartGraph, horizon: Horizon, prices: DualPrices): (arc: Arc) => Float64Array {
  const waits = waitsOf(graph.slots, horizon);
  const rate = graph.fillerGain.rate(prices);
  return ({ pack, to, firstSlot, lastSlot, share, keeps }) => {
    const gain = gainBeside(graph, rate, { to, keeps });
    const costs = new Float64Array(lastSlot - firstSlot + 1);
    for (let slot = firstSlot; slot <= lastSlot; slot++) {
      const off = share - (waits[slot] ?? 0) - (prices.goodsDual[slot] ?? 0);
      let least = Infinity;
      for (const { price } of pack.levels) least = Math.min(least, price * off);
      costs[slot - firstSlot] = least - gain;
    }
    return costs;
  };
}

/**
 * Reduced-cost fixing that holds for certain: remove the arcs whose best completion costs more than a better plan could
 * pay for this product, even if no order but their own had a price.
 */
export function fixByCertainReducedCost(
  graph: PartGraph,
  horizon: Horizon,
  prices: DualPrices,
  most: number,
): PartGraph {
  const { before, behind } = orderFreeBounds(graph, horizon, prices);
  const costs = leastCosts(graph, horizon, prices);
  const kept = graph.arcs.flatMap((arc): Arc[] => {
    const its = costs(arc);
    const isWithin = (slot: number) => {
      const own = (its[slot - arc.firstSlot] ?? Infinity) + (prices.orderDual[slot] ?? 0);
      return (before[arc.from] ?? Infinity) + own + (behind[arc.to] ?? Infinity) <= most;
    };
    return shortened(arc, isWithin);
  });
  return withArcs(graph, kept);
}

/** An arc without the slots at its ends that are fixed at 0; none when all are. */
function shortened(arc: Arc, isWithin: (slot: number) => boolean): Arc[] {
  let { firstSlot, lastSlot } = arc;
  while (firstSlot <= lastSlot && !isWithin(firstSlot)) firstSlot++;
  while (lastSlot >= firstSlot && !isWithin(lastSlot)) lastSlot--;
  return firstSlot <= lastSlot ? [{ ...arc, firstSlot, lastSlot }] : [];
}

/**
 * Reduced-cost fixing: remove the arcs whose shortest path through them, at some dual prices, costs more than a better plan
 * could pay for this product. A graph with quantity breaks is kept whole, since its arcs have no single cost.
 */
export function fixByReducedCost(graph: PartGraph, horizon: Horizon, prices: DualPrices, most: number): PartGraph {
  const { slots } = graph;
  if (graph.part.packs.some(({ levels }) => levels.length > 1)) return graph;
  const there = new PricingSearch(graph, horizon, prices);
  there.found();
  const on = completionBoundOf(graph, horizon, prices);
  const [width, waits] = [slots.all.length, waitsOf(slots, horizon)];
  const rate = graph.fillerGain.rate(prices);
  const isWithin = ({ pack, from, to, share, keeps }: Arc, slot: number): boolean => {
    const begun = (there.closed[from] ?? Infinity) + (prices.orderDual[slot] ?? 0);
    const before = Math.min(begun, there.open[from * width + slot] ?? Infinity);
    const behind = Math.min(on.closed[to] ?? Infinity, on.open[to * width + slot] ?? Infinity);
    const price = pack.levels[0]?.price ?? 0;
    const gain = gainBeside(graph, rate, { to, keeps });
    return before + price * (share - (waits[slot] ?? 0) - (prices.goodsDual[slot] ?? 0)) + behind - gain <= most;
  };
  return withArcs(
    graph,
    graph.arcs.flatMap((arc) => shortened(arc, (slot) => isWithin(arc, slot))),
  );
}
