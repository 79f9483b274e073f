import { priceOfOne } from '@/shared/measure/price-break';
import type { Horizon } from '../horizon';
import { leastPrice } from '../least-ahead';
import type { Pack } from '../pack';
import { type Prices, waitsOf } from './cheapest-column';
import { type Column, columnOf, type Ordered } from './column';
import { completionOf, leastFree } from './completion';
import { mixturesFor } from './mixtures';
import { type Arc, gainBeside, type PartGraph } from './part-graph';
import { hasOrderCost, type Slots } from './slots';

/**
 * A way to a node: what it costs at least at the prices of the orders, the orders that it is in, as far as they cost or
 * ask for something, and what is in them.
 */
export type Way = {
  cost: number;
  slots: readonly number[];
  /** Micros by slot, where a minimum asks for them: at the least price of each pack, so never more than they are worth. */
  goods: ReadonlyMap<number, number>;
  /** How many packs of each kind in each order, where a quantity break may make them cheaper. */
  counts: ReadonlyMap<string, number>;
  /** What the last pack leaves over to be used. */
  keeps: number;
  last: Step | null;
};
type Step = { one: Ordered; before: Step | null };

/** How ways are followed: no further than to a cost, as long as the time lasts, and whether what is in the orders counts. */
export type Following = { most: number; isOver: () => boolean; toColumns: boolean };

/** What columns are asked for, and whether each must be a plan by itself. */
export type Asking = { most: number; isAlone: boolean; isOver: () => boolean };

/** So many ways are followed; with more, the answer is not complete. */
const MOST_WAYS = 60_000;

/**
 * Every way through a part's graph that may be in a better plan, whatever the turn in which the packs of its orders are
 * used, and whatever is put into the orders beside them.
 */
export class Ways {
  /** Whether one order is used up before the next of its supplier begins: nothing then asks how large an order is. */
  private readonly isInTurn: boolean;
  private readonly hasLevels: boolean;
  private readonly width: number;
  private readonly waits: Float64Array;
  private readonly behind: (to: number, slot: number) => number;
  private readonly rate: number;
  private count = 0;

  constructor(
    private readonly graph: PartGraph,
    private readonly slots: Slots,
    private readonly horizon: Horizon,
    private readonly prices: Prices,
  ) {
    this.isInTurn = isPlain(graph);
    this.hasLevels = graph.part.packs.some(({ levels }) => levels.length > 1);
    this.width = graph.slots.all.length;
    this.waits = waitsOf(graph.slots, horizon);
    this.rate = graph.filling.rate(prices);
    this.behind = this.restOf();
  }

  /** What is still to come at least behind a node. */
  private restOf(): (to: number, slot: number) => number {
    const { graph, horizon, prices, width } = this;
    if (this.isInTurn && graph.slots.first.size === 1) {
      const { open, closed } = completionOf(graph, horizon, prices);
      return (to, slot) => Math.min(open[to * width + slot] ?? Infinity, closed[to] ?? Infinity);
    }
    // An order that was begun may be gone on with at any time, so none of those to come may cost anything.
    const { behind } = leastFree(graph, horizon, prices);
    return (to) => behind[to] ?? Infinity;
  }

  /** What no column of the part comes out below; null when there are too many ways, or the time is over. */
  least({ most, isOver }: Omit<Following, 'toColumns'>): number | null {
    const { graph } = this;
    const ways = this.follow({ most, isOver, toColumns: false });
    if (!ways) return null;
    return ways.reduce((least, { cost, keeps }) => Math.min(least, cost - graph.filling.gain(this.rate, keeps)), most);
  }

  /** Every column that comes out no higher, the cheapest of those that do the same for all orders; null as before. */
  columns({ most, isAlone, isOver }: Asking): Column[] | null {
    const { graph, horizon, prices } = this;
    const ways = this.follow({ most, isOver, toColumns: true });
    if (!ways) return null;
    const columns = new Map<string, Column>();
    for (const way of ways) {
      const path = packsOf(way);
      const mixtures = mixturesFor(graph, horizon, prices, { way, most, rate: this.rate, isAlone, isOver });
      if (!mixtures) return null;
      for (const extras of mixtures) {
        if (++this.count > MOST_WAYS || (this.count % 256 === 0 && isOver())) return null;
        const column = columnOf(graph.part, this.slots, horizon, [...path, ...extras]);
        const same = column && columns.get(column.key);
        if (column && (!same || column.cost < same.cost)) columns.set(column.key, column);
      }
    }
    return [...columns.values()];
  }

  /** The ways to the end, the cheapest of those that are alike. */
  private follow(following: Following): Way[] | null {
    const { graph } = this;
    const ways = Array.from({ length: graph.nodes + 1 }, () => new Map<string, Way>());
    ways[0]?.set('', { cost: 0, slots: [], goods: new Map(), counts: new Map(), keeps: 0, last: null });
    this.count = 0;
    for (let node = 0; node < graph.nodes; node++) {
      for (const way of ways[node]?.values() ?? []) {
        for (let index = graph.firstArc[node] ?? 0; index < (graph.firstArc[node + 1] ?? 0); index++) {
          const arc = graph.arcs[index];
          for (let slot = arc?.firstSlot ?? 0; arc && slot <= arc.lastSlot; slot++) {
            this.extend(way, arc, slot, following, ways[arc.to] ?? new Map());
          }
        }
        if (this.count > MOST_WAYS || following.isOver()) return null;
      }
      ways[node]?.clear();
    }
    return [...(ways[graph.nodes]?.values() ?? [])];
  }

  private extend(way: Way, arc: Arc, slot: number, { most, toColumns }: Following, there: Map<string, Way>): void {
    const { prices, graph } = this;
    const one = graph.slots.all[slot];
    if (!one) return;
    const counts = hasOrderCost(one.supplier) && (toColumns || (prices.fixed[slot] ?? 0) > 0);
    const isNew = counts && !way.slots.includes(slot);
    if (
      isNew &&
      this.isInTurn &&
      way.slots.some((other) => other > slot && graph.slots.all[other]?.supplier === one.supplier)
    )
      return;
    const cost =
      way.cost +
      (isNew ? (prices.fixed[slot] ?? 0) : 0) +
      leastCost(arc, (this.waits[slot] ?? 0) + (prices.reward[slot] ?? 0));
    const gain = gainBeside(graph, this.rate, arc);
    if (cost - gain + this.behind(arc.to, slot) > most) return;
    const slots = isNew ? [...way.slots, slot].sort((a, b) => a - b) : way.slots;
    const goods = toColumns && one.minimum > 0 ? added(way.goods, slot, leastPrice(arc.pack)) : way.goods;
    const packs = this.hasLevels ? added(way.counts, `${arc.packIndex}@${slot}`, 1) : way.counts;
    const key =
      this.keyOf(slots, goods, packs) + (arc.to === graph.nodes ? `k${arc.keeps}` : '') + this.ownKey(toColumns);
    const same = there.get(key);
    if (same && same.cost <= cost) return;
    const step = { one: { pack: arc.pack, orderOn: one.day, slot: graph.at[slot] ?? slot }, before: way.last };
    there.set(key, { cost, slots, goods, counts: packs, keeps: arc.keeps, last: step });
    this.count += 1;
  }

  /**
   * Of two ways with the same packs in the same orders the cheaper one will do, unless prices by quantity decide which of
   * them that is: then every way is kept.
   */
  private ownKey(toColumns: boolean): string {
    return toColumns && this.hasLevels ? `w${this.count}` : '';
  }

  private keyOf(slots: readonly number[], goods: Way['goods'], counts: Way['counts']): string {
    const lists: Iterable<unknown>[] = [slots, goods.size > 0 ? [...goods].sort(([a], [b]) => a - b) : []];
    return `${lists.map((list) => [...list].join(' ')).join('|')}|${[...counts].map(String).sort().join(' ')}`;
  }
}

/** Whether nothing asks how large an order is: no minimum, no price by quantity. */
export const isPlain = ({ slots, part }: Pick<PartGraph, 'slots' | 'part'>): boolean =>
  slots.all.every(({ minimum }) => minimum === 0) && part.packs.every(({ levels }) => levels.length === 1);

/** One pack at the price that comes out least here. */
function leastCost({ pack, share }: Arc, off: number): number {
  let least = Infinity;
  for (const { price } of pack.levels) least = Math.min(least, price * (share - off));
  return least;
}

function added<Key>(to: ReadonlyMap<Key, number>, key: Key, value: number): ReadonlyMap<Key, number> {
  return new Map(to).set(key, (to.get(key) ?? 0) + value);
}

function packsOf(way: Way): Ordered[] {
  const packs: Ordered[] = [];
  for (let step = way.last; step; step = step.before) packs.push(step.one);
  return packs.reverse();
}

/** What the packs of a way in one order are worth at the prices that so many of each have, micros. */
export function goodsIn(
  way: Way,
  packs: readonly Pack[],
  slot: number,
  beside: readonly { pack: Pack; slot: number }[],
) {
  let goods = 0;
  for (const pack of packs) {
    const count =
      countOf(way, pack, packs, slot) + beside.filter((one) => one.pack === pack && one.slot === slot).length;
    if (count > 0) goods += count * priceOfOne(pack.offer, count);
  }
  return goods;
}

/** How many packs of a kind a way has in an order already. */
export const countOf = ({ counts }: Way, pack: Pack, packs: readonly Pack[], slot: number): number =>
  counts.get(`${packs.indexOf(pack)}@${slot}`) ?? 0;
