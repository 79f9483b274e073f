import type { Part } from '../baseline-policy';
import { comingFor } from '../bought';
import { Frontier } from '../frontier';
import type { Horizon } from '../horizon';
import { placeAfter, toBuy } from '../need';
import type { Pack } from '../pack';
import { openPack, type PackUse, ratePerDay, stillUsed, tiedUp } from '../pack-use';
import { leastPrice, type RemainingCostBound } from '../remaining-cost-bound';
import { MICROS_OF_ROUNDING } from '../shortest-path';
import { type CandidateOrders, candidateOrdersOf, suppliersOf } from './candidate-orders';
import { FillerGain } from './filler-gain';
import type { DualPrices } from './pricing-problem';

/**
 * The pricing graph of one product: nodes are coverages of its need, arcs are packs that lead from one coverage to the
 * next. The last node is the whole need. Arcs are sorted by their first node; each holds for a run of candidate orders.
 */
export type PartGraph = {
  part: Part;
  /** The orders that its packs can be in, and the place of each among those of all parts. */
  slots: CandidateOrders;
  at: number[];
  /** How many nodes there are before the last one. */
  nodes: number;
  arcs: Arc[];
  /** The first arc of each node, and behind the last node's. */
  firstArc: number[];
  /** What is left out costs more than this without its orders; whether that is more than was asked for. */
  most: number;
  isThinned: boolean;
  /** What packs that are never opened can gain beside the others. */
  fillerGain: FillerGain;
};

/**
 * One pack opened at a node, from one of some candidate orders.
 *
 *   cost = price × (share + rate × days from the slot)
 */
export type Arc = {
  pack: Pack;
  packIndex: number;
  from: number;
  to: number;
  firstSlot: number;
  lastSlot: number;
  /** What counts of the price: 1, less what is left over and still used, and the capital as from the first day on. */
  share: number;
  /** What is left over at the end and still used, µL or mg. */
  keeps: number;
};

type Stop = { covered: number; least: number; arcs: Reach[] };
type Reach = Omit<Arc, 'from' | 'to'> & { covered: number };

/** A graph has at most this many nodes; beyond it, dear ones are left out and the graph proves nothing. */
export const MOST_NODES = 12_000;

/**
 * Build the pricing graph of one product. Nodes that no plan within the highest cost can use are left out; where too many
 * remain, the highest cost is lowered.
 *
 * Takes    the lowest and the highest cost of this product without its orders, micros, and the number of nodes wanted
 */
export function partGraph(part: Part, all: CandidateOrders, horizon: Horizon, within: Within): PartGraph {
  const { slots, at } = candidateOrdersOf(all, suppliersOf(part));
  const { least, most, nodes } = within;
  const fillerGain = new FillerGain(part, slots, horizon);
  for (let above = most - least; ; above /= 4) {
    const isThinned = above < most - least;
    const graph = graphWithin(part, slots, horizon, {
      ...within,
      most: least + above,
      nodes: above > 1 ? nodes : Infinity,
    });
    if (graph) return { ...graph, at, most: least + above, isThinned, fillerGain };
  }
}

/** The most that fillers can gain beside an arc: more than 0 only where the arc reaches the last node. */
export const gainBeside = ({ nodes, fillerGain }: PartGraph, rate: number, { to, keeps }: Pick<Arc, 'to' | 'keeps'>) =>
  to === nodes ? fillerGain.gain(rate, keeps) : 0;

/** A graph before its candidate orders are numbered among those of all products. */
type Drawn = Omit<PartGraph, 'at' | 'most' | 'isThinned' | 'fillerGain'>;

export type Within = { least: number; most: number; nodes: number; ahead: RemainingCostBound };

function graphWithin(
  part: Part,
  slots: CandidateOrders,
  horizon: Horizon,
  { most, nodes, ahead }: Within,
): Drawn | null {
  const { need, packs } = part;
  const all = toBuy(need);
  const cheapest = packs.map(leastPrice);
  const lastOf = packs.map((pack) => lastSlots(pack, slots));
  const frontier = new Frontier<Stop>(need.days.length);
  const stops: Stop[] = [];
  frontier.add({ covered: 0, least: 0, arcs: [] }, 0);
  frontier.walk((stop, place) => {
    if (stop.least + ahead.from(stop.covered, place) > most + MICROS_OF_ROUNDING) return;
    stops.push(stop);
    if (stops.length > nodes) return;
    for (const [index, pack] of packs.entries()) {
      for (const reach of reachesOf(part, slots, horizon, {
        covered: stop.covered,
        place,
        pack,
        index,
        lastSlot: lastOf[index]?.[place] ?? -1,
      })) {
        stop.arcs.push(reach);
        if (reach.covered === all) continue;
        const least = stop.least + (cheapest[index] ?? 0) * (reach.share + offsetRate(reach, slots, horizon));
        const same = frontier.at(reach.covered);
        if (same) same.least = Math.min(same.least, least);
        else frontier.add({ covered: reach.covered, least, arcs: [] }, placeAfter(need, reach.covered, place));
      }
    }
  });
  return stops.length > nodes ? null : pruned(assembled(part, stops, all, slots), slots, horizon, most);
}

/** By needed day: the last candidate order in time for it; −1 where there is none. */
function lastSlots({ offer, ways }: Pack, { all, first, behind }: CandidateOrders): number[] {
  return ways.map((way) => {
    let slot = (behind.get(offer.supplier) ?? 0) - 1;
    while (way && slot >= (first.get(offer.supplier) ?? 0) && (all[slot]?.day ?? 0) > way.orderOn) slot--;
    return way && slot >= (first.get(offer.supplier) ?? 0) ? slot : -1;
  });
}

/** What the wait from the last possible order day takes off the capital as from the first day on. */
const offsetRate = ({ lastSlot }: { lastSlot: number }, slots: CandidateOrders, horizon: Horizon): number =>
  -ratePerDay(horizon) * ((slots.all[lastSlot]?.day ?? horizon.start) - horizon.start);

type Opening = { covered: number; place: number; pack: Pack; index: number; lastSlot: number };

/** Where one pack leads to, by the slots in which it can be ordered: a pack ordered earlier may die earlier. */
function reachesOf({ need }: Part, slots: CandidateOrders, horizon: Horizon, opening: Opening): Reach[] {
  const { covered, place, pack, index, lastSlot } = opening;
  const use = (slot: number) => {
    const coming = comingFor(need, horizon, { pack, orderOn: slots.all[slot]?.day ?? 0 }, place);
    return typeof coming === 'string' ? null : openPack(need, horizon, pack, { ...coming, covered, place });
  };
  const first = slots.first.get(pack.offer.supplier) ?? 0;
  const earliest = lastSlot < first ? null : use(first);
  const reaches: Reach[] = [];
  for (let slot = lastSlot; slot >= first; ) {
    const here = use(slot);
    if (!here) break;
    let from = slot;
    if (earliest && isSame(here, earliest)) from = first;
    else while (from > first && isSame(here, use(from - 1))) from--;
    const tied = tiedUp(need, horizon, pack.size, { ...here, orderOn: horizon.start, from: covered, place });
    const keeps = here.to === toBuy(need) ? stillUsed(need, horizon, here) : 0;
    const share = 1 + ratePerDay(horizon) * (tied / pack.size) - keeps / pack.size;
    reaches.push({ pack, packIndex: index, covered: here.to, firstSlot: from, lastSlot: slot, share, keeps });
    slot = from - 1;
  }
  return reaches;
}

/** Whether two uses of a pack come to the same: its last day only matters when something is left in it. */
const isSame = (a: PackUse, b: PackUse | null): boolean =>
  b !== null && a.to === b.to && (a.left === 0 || a.lastDay === b.lastDay);

function assembled(part: Part, stops: Stop[], all: number, slots: CandidateOrders): Drawn {
  const number = new Map(stops.map(({ covered }, node) => [covered, node]));
  const arcs: Arc[] = [];
  const firstArc: number[] = [];
  for (const [from, stop] of stops.entries()) {
    firstArc.push(arcs.length);
    for (const { covered, ...reach } of stop.arcs) {
      const to = covered === all ? stops.length : number.get(covered);
      if (to !== undefined) arcs.push({ ...reach, from, to });
    }
  }
  firstArc.push(arcs.length);
  return { part, slots, nodes: stops.length, arcs, firstArc };
}

/** The graph without what leads through no plan of at most the given cost. */
function pruned(graph: Drawn, slots: CandidateOrders, horizon: Horizon, most: number): Drawn {
  const least = leastOf(graph, slots, horizon);
  const costs = (arc: Arc) => leastPrice(arc.pack) * (arc.share + offsetRate(arc, slots, horizon));
  return withArcs(
    graph,
    graph.arcs.filter(
      (arc) =>
        valueAt(least.before, arc.from) + costs(arc) + valueAt(least.behind, arc.to) <= most + MICROS_OF_ROUNDING,
    ),
  );
}

/** A graph with some of its arcs, and the nodes that they need. */
export function withArcs<Graph extends Drawn>(graph: Graph, kept: readonly Arc[]): Graph {
  const used = new Set(kept.flatMap(({ from, to }) => [from, to]));
  const numbers = new Map<number, number>();
  for (let node = 0; node < graph.nodes; node++) if (node === 0 || used.has(node)) numbers.set(node, numbers.size);
  const nodes = numbers.size;
  numbers.set(graph.nodes, nodes);
  const arcs = kept.map((arc) => ({ ...arc, from: numbers.get(arc.from) ?? 0, to: numbers.get(arc.to) ?? nodes }));
  const firstArc: number[] = [];
  for (const [index, { from }] of arcs.entries()) while (firstArc.length <= from) firstArc.push(index);
  while (firstArc.length <= nodes) firstArc.push(arcs.length);
  return { ...graph, nodes, arcs, firstArc };
}

/** The least that each node can cost to reach, and to go on from, without any cost of an order. Micros. */
function leastOf({ nodes, arcs }: Drawn, slots: CandidateOrders, horizon: Horizon) {
  const before = new Float64Array(nodes + 1).fill(Infinity);
  const behind = new Float64Array(nodes + 1).fill(Infinity);
  before[0] = 0;
  behind[nodes] = 0;
  const costs = arcs.map((arc) => leastPrice(arc.pack) * (arc.share + offsetRate(arc, slots, horizon)));
  for (const [index, { from, to }] of arcs.entries()) {
    before[to] = Math.min(valueAt(before, to), valueAt(before, from) + (costs[index] ?? 0));
  }
  for (let index = arcs.length - 1; index >= 0; index--) {
    const arc = arcs[index];
    if (arc) behind[arc.from] = Math.min(valueAt(behind, arc.from), valueAt(behind, arc.to) + (costs[index] ?? 0));
  }
  return { before, behind };
}

const valueAt = (list: Float64Array, index: number): number => list[index] ?? Infinity;

/** The slots, among those of all parts, in which a part's packs may be ordered. */
export function mayUseOf({ arcs, at }: PartGraph): Set<number> {
  // Each arc holds for a run of slots: where runs begin and end says how many lie over each slot.
  const begun = new Int32Array(at.length + 1);
  for (const { firstSlot, lastSlot } of arcs) {
    begun[firstSlot] = (begun[firstSlot] ?? 0) + 1;
    begun[lastSlot + 1] = (begun[lastSlot + 1] ?? 0) - 1;
  }
  let open = 0;
  return new Set(
    at.filter((_, slot) => {
      open += begun[slot] ?? 0;
      return open > 0;
    }),
  );
}

/** Prices of all orders as a graph counts its own. */
export const localOf = ({ at }: PartGraph, { orderDual, goodsDual }: DualPrices): DualPrices => ({
  orderDual: Float64Array.from(at, (slot) => orderDual[slot] ?? 0),
  goodsDual: Float64Array.from(at, (slot) => goodsDual[slot] ?? 0),
});
