import type { Horizon } from '../horizon';
import { bundlesOf } from './bundles';
import { type Prices, Walk, waitsOf } from './cheapest-column';
import { type Arc, gainBeside, type PartGraph, withArcs } from './part-graph';

/** The least that it can still cost from a node on: with an order open (node × slots + slot), and with none. */
export type Completion = { open: Float64Array; closed: Float64Array };

/** What is still to come at each node of a part at some prices of the orders: the shortest paths from the end back. */
export function completionOf(graph: PartGraph, horizon: Horizon, prices: Prices): Completion {
  const { slots } = graph;
  const width = slots.all.length;
  const open = new Float64Array((graph.nodes + 1) * width).fill(Infinity);
  const closed = new Float64Array(graph.nodes + 1).fill(Infinity);
  const waits = waitsOf(slots, horizon);
  open.fill(0, graph.nodes * width);
  const rate = graph.filling.rate(prices);
  const gain = (to: number, keeps: number) => gainBeside(graph, rate, { to, keeps });
  const behind = (to: number, slot: number) => Math.min(open[to * width + slot] ?? Infinity, closed[to] ?? Infinity);
  const back = (arc: Arc, slot: number): number => {
    const [reward, price] = [prices.reward[slot] ?? 0, arc.pack.levels[0]?.price ?? 0];
    const one = price * (arc.share - (waits[slot] ?? 0) - reward) + behind(arc.to, slot) - gain(arc.to, arc.keeps);
    if (arc.pack.levels.length === 1) return one;
    const orderOn = slots.all[slot]?.day ?? horizon.start;
    const bundles = bundlesOf(graph, horizon, { arc, slot, orderOn, reward });
    return bundles.reduce((least, { to, cost }) => Math.min(least, cost + behind(to, slot) - gain(to, 0)), one);
  };
  for (let node = graph.nodes - 1; node >= 0; node--) {
    for (let index = graph.firstArc[node] ?? 0; index < (graph.firstArc[node + 1] ?? 0); index++) {
      const arc = graph.arcs[index];
      for (let slot = arc?.firstSlot ?? 0; arc && slot <= arc.lastSlot; slot++) {
        const cost = back(arc, slot);
        const here = node * width + slot;
        if (cost < (open[here] ?? Infinity)) open[here] = cost;
        if (cost + (prices.fixed[slot] ?? 0) < (closed[node] ?? Infinity))
          closed[node] = cost + (prices.fixed[slot] ?? 0);
      }
    }
  }
  return { open, closed };
}

/** The least that each node can cost to reach, and to go on from, when no order costs anything to be in. */
type Free = { before: Float64Array; behind: Float64Array };

/**
 * The same when no order costs anything to be in, and each pack is as cheap as it ever becomes: it holds whatever is in
 * the orders already, and whatever will be, in whatever turn.
 */
export function leastFree(graph: PartGraph, horizon: Horizon, prices: Prices): Free {
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

/** What each arc costs at least, by its slots: without the order itself, with what may stay shut beside the last pack. */
function leastCosts(graph: PartGraph, horizon: Horizon, prices: Prices): (arc: Arc) => Float64Array {
  const waits = waitsOf(graph.slots, horizon);
  const rate = graph.filling.rate(prices);
  return ({ pack, to, firstSlot, lastSlot, share, keeps }) => {
    const gain = gainBeside(graph, rate, { to, keeps });
    const costs = new Float64Array(lastSlot - firstSlot + 1);
    for (let slot = firstSlot; slot <= lastSlot; slot++) {
      const off = share - (waits[slot] ?? 0) - (prices.reward[slot] ?? 0);
      let least = Infinity;
      for (const { price } of pack.levels) least = Math.min(least, price * off);
      costs[slot - firstSlot] = least - gain;
    }
    return costs;
  };
}

/**
 * The graph of a part without the steps that are surely in no better plan, whatever asks how large an order is and in
 * whatever turn its packs are used: those that come out above what a better plan could pay for this part even if no order
 * but their own costs anything.
 */
export function surelyWithin(graph: PartGraph, horizon: Horizon, prices: Prices, most: number): PartGraph {
  const { before, behind } = leastFree(graph, horizon, prices);
  const costs = leastCosts(graph, horizon, prices);
  const kept = graph.arcs.flatMap((arc): Arc[] => {
    const its = costs(arc);
    const isWithin = (slot: number) => {
      const own = (its[slot - arc.firstSlot] ?? Infinity) + (prices.fixed[slot] ?? 0);
      return (before[arc.from] ?? Infinity) + own + (behind[arc.to] ?? Infinity) <= most;
    };
    return shortened(arc, isWithin);
  });
  return withArcs(graph, kept);
}

/** An arc without the slots at its ends that are not within reach; none when no slot is. */
function shortened(arc: Arc, isWithin: (slot: number) => boolean): Arc[] {
  let { firstSlot, lastSlot } = arc;
  while (firstSlot <= lastSlot && !isWithin(firstSlot)) firstSlot++;
  while (lastSlot >= firstSlot && !isWithin(lastSlot)) lastSlot--;
  return firstSlot <= lastSlot ? [{ ...arc, firstSlot, lastSlot }] : [];
}

/**
 * The graph of a part without the steps that are in no better plan: those whose cheapest way there and on, at some
 * prices of the orders, comes out above what a better plan could pay for this part. A graph with prices by quantity is
 * left as it is, since its steps do not cost the same on every way.
 */
export function withinReach(graph: PartGraph, horizon: Horizon, prices: Prices, most: number): PartGraph {
  const { slots } = graph;
  if (graph.part.packs.some(({ levels }) => levels.length > 1)) return graph;
  const there = new Walk(graph, horizon, prices);
  there.found();
  const on = completionOf(graph, horizon, prices);
  const [width, waits] = [slots.all.length, waitsOf(slots, horizon)];
  const rate = graph.filling.rate(prices);
  const isWithin = ({ pack, from, to, share, keeps }: Arc, slot: number): boolean => {
    const begun = (there.closed[from] ?? Infinity) + (prices.fixed[slot] ?? 0);
    const before = Math.min(begun, there.open[from * width + slot] ?? Infinity);
    const behind = Math.min(on.closed[to] ?? Infinity, on.open[to * width + slot] ?? Infinity);
    const price = pack.levels[0]?.price ?? 0;
    const gain = gainBeside(graph, rate, { to, keeps });
    return before + price * (share - (waits[slot] ?? 0) - (prices.reward[slot] ?? 0)) + behind - gain <= most;
  };
  return withArcs(
    graph,
    graph.arcs.flatMap((arc) => shortened(arc, (slot) => isWithin(arc, slot))),
  );
}
