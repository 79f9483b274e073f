import type { Horizon } from '../horizon';
import { ratePerDay } from '../pack-use';
import type { Bought } from '../shortest-path';
import { extrasFor, MOST_SHUT, shutCosts } from './extras';
import type { Arc, PartGraph } from './part-graph';
import type { Slots } from './slots';

/**
 * What the other parts make of each order, for one part: what it costs to be in it at all, and how much of each micro of
 * goods it gives back by making the order larger. Both by the number of the slot.
 */
export type Prices = { fixed: Float64Array; reward: Float64Array };

/** Packs that meet one part's need, and what they come to at some prices of the orders. Micros, an estimate in doubles. */
export type Found = { cost: number; bought: Bought[] };

/**
 * The packs that meet one part's need at the least cost, when being in an order has a price: a shortest path again, with
 * the order that is open as a part of where one stands. An order of one product is used up before the next begins.
 *
 * Gives    null when nothing meets it
 */
export function cheapestColumn(graph: PartGraph, horizon: Horizon, prices: Prices): Found | null {
  return new Walk(graph, horizon, prices).found();
}

export class Walk {
  private readonly width: number;
  /** The least cost of standing at a node with an order open: node × width + slot. */
  readonly open: Float64Array;
  /** The least cost of standing at a node with all orders closed. */
  readonly closed: Float64Array;
  /** How one got there: the first arc, how many packs of its kind, and whether the order was open already. */
  private readonly arcBefore: Int32Array;
  private readonly counts: Int32Array;
  private readonly isFromOpen: Uint8Array;
  private readonly closedBy: Int32Array;
  private readonly waits: Float64Array;

  constructor(
    private readonly graph: PartGraph,
    private readonly horizon: Horizon,
    private readonly prices: Prices,
  ) {
    this.width = graph.slots.all.length;
    const room = roomFor(graph.nodes, this.width);
    this.open = room.open.fill(Infinity, 0, (graph.nodes + 1) * this.width);
    this.arcBefore = room.arcBefore;
    this.isFromOpen = room.isFromOpen;
    this.counts = room.counts;
    this.closed = room.closed.fill(Infinity, 0, graph.nodes + 1);
    this.closedBy = room.closedBy.fill(-1, 0, graph.nodes + 1);
    this.waits = waitsOf(graph.slots, horizon);
  }

  found(): Found | null {
    const { graph } = this;
    this.closed[0] = 0;
    for (let node = 0; node < graph.nodes; node++) {
      if (node > 0) this.close(node);
      if (this.closed[node] === Infinity) continue;
      for (let index = graph.firstArc[node] ?? 0; index < (graph.firstArc[node + 1] ?? 0); index++) {
        const arc = graph.arcs[index];
        if (!arc) continue;
        this.follow(arc, index);
        if (arc.pack.levels.length > 1) this.followMany(arc, index);
      }
    }
    return this.end();
  }

  /** The cheapest of the orders that could be open at a node, closed there. */
  private close(node: number): void {
    const { open, width } = this;
    for (let slot = 0; slot < width; slot++) {
      const cost = open[node * width + slot] ?? Infinity;
      if (cost < (this.closed[node] ?? 0)) {
        this.closed[node] = cost;
        this.closedBy[node] = slot;
      }
    }
  }

  /** One pack more, from an order that is open or from one that is begun. */
  private follow({ pack, from, to, firstSlot, lastSlot, share }: Arc, index: number): void {
    const { open, width, waits } = this;
    const { fixed, reward } = this.prices;
    const price = pack.levels[0]?.price ?? 0;
    const closed = this.closed[from] ?? Infinity;
    for (let slot = firstSlot; slot <= lastSlot; slot++) {
      const begun = closed + (fixed[slot] ?? 0);
      const going = open[from * width + slot] ?? Infinity;
      const isOpen = going <= begun;
      const cost = (isOpen ? going : begun) + price * (share - (waits[slot] ?? 0) - (reward[slot] ?? 0));
      const there = to * width + slot;
      if (cost >= (open[there] ?? Infinity)) continue;
      open[there] = cost;
      this.arcBefore[there] = index;
      this.isFromOpen[there] = isOpen ? 1 : 0;
      this.counts[there] = 1;
    }
  }

  /** So many packs at once that a quantity break makes each of them cheaper. */
  private followMany(arc: Arc, index: number): void {
    const { open, width, graph, horizon } = this;
    for (let slot = arc.firstSlot; slot <= arc.lastSlot; slot++) {
      const begun = (this.closed[arc.from] ?? Infinity) + (this.prices.fixed[slot] ?? 0);
      const going = open[arc.from * width + slot] ?? Infinity;
      const [base, wasOpen] = [Math.min(begun, going), going <= begun];
      const chain = chainOf(graph, arc, slot);
      const reward = this.prices.reward[slot] ?? 0;
      const off = (this.waits[slot] ?? 0) + reward;
      for (const { to, count, price, shares } of chain.bundles) {
        this.arrive(to * width + slot, base + price * (shares - count * off), { index, count, wasOpen });
      }
      if (!chain.isAtEnd || chain.count >= (arc.pack.levels.at(-1)?.atLeast ?? 1)) continue;
      const orderOn = graph.slots.all[slot]?.day ?? horizon.start;
      const shares = chain.shares - chain.count * off;
      const given = { arc, orderOn, reward, shares, count: chain.count };
      for (const { to, count, cost } of shutBundles(graph, horizon, given)) {
        this.arrive(to * width + slot, base + cost, { index, count, wasOpen });
      }
    }
  }

  private arrive(there: number, cost: number, { index, count, wasOpen }: Bundling): void {
    if (cost >= (this.open[there] ?? Infinity)) return;
    this.open[there] = cost;
    this.arcBefore[there] = index;
    this.counts[there] = count;
    this.isFromOpen[there] = wasOpen ? 1 : 0;
  }

  private end(): Found | null {
    const { open, width, graph } = this;
    let best: { cost: number; slot: number; extras: Bought[] } | null = null;
    for (let slot = 0; slot < width; slot++) {
      const cost = open[graph.nodes * width + slot] ?? Infinity;
      if (cost === Infinity) continue;
      const extras = extrasFor(graph.part, graph.slots, this.horizon, { slot, reward: this.prices.reward[slot] ?? 0 });
      if (!best || cost + extras.cost < best.cost) best = { cost: cost + extras.cost, slot, extras: extras.bought };
    }
    return best && { cost: best.cost, bought: [...this.way(best.slot), ...best.extras] };
  }

  /** The packs on the way to the end with an order open. */
  private way(slot: number): Bought[] {
    const bought: Bought[] = [];
    let [node, open] = [this.graph.nodes, slot];
    while (node > 0) {
      const there = node * this.width + open;
      const arc = this.graph.arcs[this.arcBefore[there] ?? 0];
      if (!arc) break;
      const orderOn = this.graph.slots.all[open]?.day ?? 0;
      for (let count = this.counts[there] ?? 1; count > 0; count--) bought.push({ pack: arc.pack, orderOn });
      node = arc.from;
      if (this.isFromOpen[there] === 0) open = this.closedBy[node] ?? 0;
    }
    return bought.reverse();
  }
}

type Bundling = { index: number; count: number; wasOpen: boolean };

type Room = Pick<Walk, 'open' | 'closed'> &
  Record<'arcBefore' | 'counts' | 'closedBy', Int32Array> & { isFromOpen: Uint8Array };

/** One walk is done before the next begins, and there are thousands of them: all of them use the same room. */
let room: Room | null = null;

function roomFor(nodes: number, width: number): Room {
  const size = (nodes + 1) * width;
  if (room && room.open.length >= size && room.closed.length > nodes) return room;
  const most = Math.max(size, room?.open.length ?? 0);
  const mostNodes = Math.max(nodes + 1, room?.closed.length ?? 0);
  room = {
    open: new Float64Array(most),
    closed: new Float64Array(mostNodes),
    arcBefore: new Int32Array(most),
    counts: new Int32Array(most),
    isFromOpen: new Uint8Array(most),
    closedBy: new Int32Array(mostNodes),
  };
  return room;
}

/** By slot: the part of a price that an order on that day ties up less than one on the first day. */
export const waitsOf = ({ all }: Slots, horizon: Horizon): Float64Array =>
  Float64Array.from(all, ({ day }) => ratePerDay(horizon) * (day - horizon.start));

export type Bundle = { to: number; count: number; cost: number };

/**
 * Several packs of one kind from one order, one after another, at the price that so many of them have: one bundle for
 * each number that a quantity break reaches. Those that the need does not take any more stay shut.
 */
export function bundlesOf(
  graph: PartGraph,
  horizon: Horizon,
  { arc, slot, orderOn, reward }: { arc: Arc; slot: number; orderOn: number; reward: number },
): Bundle[] {
  const chain = chainOf(graph, arc, slot);
  const off = ratePerDay(horizon) * (orderOn - horizon.start) + reward;
  const bundles = chain.bundles.map(({ to, count, price, shares }) => ({
    to,
    count,
    cost: price * (shares - count * off),
  }));
  if (!chain.isAtEnd) return bundles;
  const { shares, count } = chain;
  return [...bundles, ...shutBundles(graph, horizon, { arc, orderOn, reward, shares: shares - count * off, count })];
}

/** The same packs whatever the order's price: how far so many reach, and what counts of each one's price. */
type Chain = {
  bundles: { to: number; count: number; price: number; shares: number }[];
  count: number;
  shares: number;
  isAtEnd: boolean;
};

/** A chain holds for all order days of its first arc, unless one of those behind it does not: then it is kept by slot. */
const chains = new WeakMap<Arc, Map<number, Chain>>();

function chainOf(graph: PartGraph, arc: Arc, slot: number): Chain {
  const known = chains.get(arc) ?? new Map<number, Chain>();
  chains.set(arc, known);
  const kept = known.get(slot) ?? known.get(ANY_SLOT);
  if (kept) return kept;
  const { chain, isForAll } = followChain(graph, arc, slot);
  known.set(isForAll ? ANY_SLOT : slot, chain);
  return chain;
}

const ANY_SLOT = -1;

function followChain(graph: PartGraph, arc: Arc, slot: number): { chain: Chain; isForAll: boolean } {
  const { levels } = arc.pack;
  const chain: Chain = { bundles: [], count: 0, shares: 0, isAtEnd: false };
  let isForAll = true;
  for (let next: Arc | undefined = arc; next && !chain.isAtEnd; next = arcFrom(graph, next.to, arc, slot)) {
    if (next.firstSlot > arc.firstSlot || next.lastSlot < arc.lastSlot) isForAll = false;
    chain.shares += next.share;
    chain.count += 1;
    chain.isAtEnd = next.to === graph.nodes;
    const level = levels.findLast(({ atLeast }) => atLeast <= chain.count);
    const { count, shares } = chain;
    if (level && level.atLeast > 1) chain.bundles.push({ to: next.to, count, price: level.price, shares });
  }
  // An order day that stops short would go on another way for another slot.
  return { chain, isForAll: isForAll && chain.isAtEnd };
}

/** The numbers of packs that a break asks for and the need does not take: what is more stays shut. */
function shutBundles(
  graph: PartGraph,
  horizon: Horizon,
  { arc, orderOn, reward, shares, count }: { arc: Arc; orderOn: number; reward: number; shares: number; count: number },
): Bundle[] {
  return arc.pack.levels.flatMap(({ atLeast, price }) => {
    const shut = atLeast - count;
    if (shut <= 0 || shut > MOST_SHUT) return [];
    const cost = shutCosts(graph.part, horizon, { pack: arc.pack, orderOn, price })[shut - 1] ?? 0;
    return [{ to: graph.nodes, count: atLeast, cost: price * (shares - shut * reward) + cost }];
  });
}

/** The arc of the same kind of pack that leaves a node and holds for an order day. */
export function arcFrom({ arcs, firstArc, nodes }: PartGraph, node: number, like: Arc, slot: number): Arc | undefined {
  if (node >= nodes) return undefined;
  for (let index = firstArc[node] ?? 0; index < (firstArc[node + 1] ?? 0); index++) {
    const arc = arcs[index];
    if (arc && arc.packIndex === like.packIndex && arc.firstSlot <= slot && slot <= arc.lastSlot) return arc;
  }
  return undefined;
}
