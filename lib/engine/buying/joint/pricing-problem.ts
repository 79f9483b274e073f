import type { Horizon } from '../horizon';
import { ratePerDay } from '../pack-use';
import { chainOf, fillerBundles } from './bundles';
import type { CandidateOrders } from './candidate-orders';
import type { Ordered } from './column';
import { fillersFor } from './fillers';
import { type Arc, gainBeside, type PartGraph } from './part-graph';

/**
 * The dual prices of the orders for one product, by the number of the candidate order: `orderDual` is the cost of taking
 * part in it, micros; `goodsDual` is what each micro of goods is worth towards its minimum, from 0 to 1.
 */
export type DualPrices = { orderDual: Float64Array; goodsDual: Float64Array };

/**
 * A solution of the pricing problem: its packs, and a lower bound of the reduced cost of every column, micros in doubles.
 * The bound allows for all that fillers could gain.
 */
export type Found = { cost: number; bought: Ordered[] };

/**
 * The pricing problem of one product: the column of least reduced cost at the dual prices. A shortest path over the states
 * (coverage, open order); it assumes that an order's packs are used up before the next order's.
 *
 * Gives    null when no packs meet the need
 */
export function solvePricing(graph: PartGraph, horizon: Horizon, prices: DualPrices): Found | null {
  return new PricingSearch(graph, horizon, prices).found();
}

export class PricingSearch {
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
  /** What a unit that stays shut can gain. */
  private readonly rate: number;

  constructor(
    private readonly graph: PartGraph,
    private readonly horizon: Horizon,
    private readonly prices: DualPrices,
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
    this.rate = graph.fillerGain.rate(prices);
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
  private follow({ pack, from, to, firstSlot, lastSlot, share, keeps }: Arc, index: number): void {
    const { open, width, waits, graph } = this;
    const { orderDual, goodsDual } = this.prices;
    const price = pack.levels[0]?.price ?? 0;
    const gain = gainBeside(graph, this.rate, { to, keeps });
    const closed = (this.closed[from] ?? Infinity) - gain;
    for (let slot = firstSlot; slot <= lastSlot; slot++) {
      const begun = closed + (orderDual[slot] ?? 0);
      const going = (open[from * width + slot] ?? Infinity) - gain;
      const isOpen = going <= begun;
      const cost = (isOpen ? going : begun) + price * (share - (waits[slot] ?? 0) - (goodsDual[slot] ?? 0));
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
      const begun = (this.closed[arc.from] ?? Infinity) + (this.prices.orderDual[slot] ?? 0);
      const going = open[arc.from * width + slot] ?? Infinity;
      const [base, wasOpen] = [Math.min(begun, going), going <= begun];
      const gain = graph.fillerGain.gain(this.rate, 0);
      const chain = chainOf(graph, arc, slot);
      const goodsDual = this.prices.goodsDual[slot] ?? 0;
      const off = (this.waits[slot] ?? 0) + goodsDual;
      for (const { to, count, price, shares } of chain.bundles) {
        const cost = base + price * (shares - count * off) - (to === graph.nodes ? gain : 0);
        this.arrive(to * width + slot, cost, { index, count, wasOpen });
      }
      if (!chain.isAtEnd || chain.count >= (arc.pack.levels.at(-1)?.atLeast ?? 1)) continue;
      const orderOn = graph.slots.all[slot]?.day ?? horizon.start;
      const shares = chain.shares - chain.count * off;
      const given = { arc, orderOn, goodsDual, shares, count: chain.count };
      for (const { to, count, cost } of fillerBundles(graph, horizon, given)) {
        this.arrive(to * width + slot, base + cost - gain, { index, count, wasOpen });
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
    let [cost, last] = [Infinity, -1];
    for (let slot = 0; slot < width; slot++) {
      const here = open[graph.nodes * width + slot] ?? Infinity;
      if (here < cost) [cost, last] = [here, slot];
    }
    if (last < 0) return null;
    const bought = this.way(last);
    return { cost, bought: [...bought, ...(this.rate > 0 ? this.beside(bought) : [])] };
  }

  /** The packs that gain most in one of the orders that there are. */
  private beside(bought: readonly Ordered[]): Ordered[] {
    const { graph, horizon, prices } = this;
    const slots = new Set(bought.map(({ slot }) => graph.at.indexOf(slot)));
    const all = [...slots].map((slot) => ({
      slot,
      extras: fillersFor(graph.part, graph.slots, horizon, { slot, goodsDual: prices.goodsDual[slot] ?? 0 }),
    }));
    const best = all.reduce((least, one) => (one.extras.cost < least.extras.cost ? one : least), all[0] ?? never());
    return best.extras.bought.map((one) => ({ ...one, slot: graph.at[best.slot] ?? never() }));
  }

  /** The packs on the way to the end with an order open. */
  private way(last: number): Ordered[] {
    const { graph, width } = this;
    const bought: Ordered[] = [];
    let [node, open] = [graph.nodes, last];
    while (node > 0) {
      const there = node * width + open;
      const arc = graph.arcs[this.arcBefore[there] ?? 0];
      if (!arc) break;
      const one = { pack: arc.pack, orderOn: graph.slots.all[open]?.day ?? never(), slot: graph.at[open] ?? never() };
      for (let count = this.counts[there] ?? 1; count > 0; count--) bought.push(one);
      node = arc.from;
      if (this.isFromOpen[there] === 0) open = this.closedBy[node] ?? 0;
    }
    return bought.reverse();
  }
}

function never(): never {
  throw new RangeError('buying: a way without an order');
}

type Bundling = { index: number; count: number; wasOpen: boolean };

type Room = Pick<PricingSearch, 'open' | 'closed'> &
  Record<'arcBefore' | 'counts' | 'closedBy', Int32Array> & { isFromOpen: Uint8Array };

/** Searches run one after another, thousands of them, so they share their arrays. */
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

/** By candidate order: the capital that an order on that day saves against one on the first day, as a part of the price. */
export const waitsOf = ({ all }: CandidateOrders, horizon: Horizon): Float64Array =>
  Float64Array.from(all, ({ day }) => ratePerDay(horizon) * (day - horizon.start));
