import type { Horizon } from '../horizon';
import { bundlesOf, type Prices, Walk, waitsOf } from './cheapest-column';
import { extrasFor } from './extras';
import { type Arc, type PartGraph, withArcs } from './part-graph';

/** The least that it can still cost from a node on: with an order open (node × slots + slot), and with none. */
export type Completion = { open: Float64Array; closed: Float64Array };

/** What is still to come at each node of a part at some prices of the orders: the shortest paths from the end back. */
export function completionOf(graph: PartGraph, horizon: Horizon, prices: Prices): Completion {
  const { slots } = graph;
  const width = slots.all.length;
  const open = new Float64Array((graph.nodes + 1) * width).fill(Infinity);
  const closed = new Float64Array(graph.nodes + 1).fill(Infinity);
  const waits = waitsOf(slots, horizon);
  for (let slot = 0; slot < width; slot++) {
    open[graph.nodes * width + slot] = extrasFor(graph.part, slots, horizon, {
      slot,
      reward: prices.reward[slot] ?? 0,
    }).cost;
  }
  const behind = (to: number, slot: number) => Math.min(open[to * width + slot] ?? Infinity, closed[to] ?? Infinity);
  const back = (arc: Arc, slot: number): number => {
    const [reward, price] = [prices.reward[slot] ?? 0, arc.pack.levels[0]?.price ?? 0];
    const one = price * (arc.share - (waits[slot] ?? 0) - reward) + behind(arc.to, slot);
    if (arc.pack.levels.length === 1) return one;
    const orderOn = slots.all[slot]?.day ?? horizon.start;
    const bundles = bundlesOf(graph, horizon, { arc, slot, orderOn, reward });
    return bundles.reduce((least, { to, cost }) => Math.min(least, cost + behind(to, slot)), one);
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
  const isWithin = ({ pack, from, to, share }: Arc, slot: number): boolean => {
    const begun = (there.closed[from] ?? Infinity) + (prices.fixed[slot] ?? 0);
    const before = Math.min(begun, there.open[from * width + slot] ?? Infinity);
    const behind = Math.min(on.closed[to] ?? Infinity, on.open[to * width + slot] ?? Infinity);
    const price = pack.levels[0]?.price ?? 0;
    return before + price * (share - (waits[slot] ?? 0) - (prices.reward[slot] ?? 0)) + behind <= most;
  };
  const kept = graph.arcs.flatMap((arc): Arc[] => {
    let [firstSlot, lastSlot] = [arc.firstSlot, arc.lastSlot];
    while (firstSlot <= lastSlot && !isWithin(arc, firstSlot)) firstSlot++;
    while (lastSlot >= firstSlot && !isWithin(arc, lastSlot)) lastSlot--;
    return firstSlot <= lastSlot ? [{ ...arc, firstSlot, lastSlot }] : [];
  });
  return withArcs(graph, kept);
}
