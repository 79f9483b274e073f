import { priceOfOne } from '@/shared/measure/price-break';
import type { Horizon } from '../horizon';
import type { Pack } from '../pack';
import { leastPrice } from '../remaining-cost-bound';
import { type CandidateOrders, hasOrderCost } from './candidate-orders';
import { type Column, columnOf, type Ordered } from './column';
import { completionBoundOf, orderFreeBounds } from './completion-bound';
import { enumerateFillers } from './filler-enumeration';
import { type Arc, gainBeside, type PartGraph } from './part-graph';
import { type DualPrices, waitsOf } from './pricing-problem';

/**
 * A label at a node: the least reduced cost of the packs up to there, the orders that they use, and what is in them.
 */
export type Label = {
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

/** The limits of a search: the highest reduced cost, the time, and whether the goods in the orders count. */
export type Following = { most: number; isOver: () => boolean; toColumns: boolean };

/** Which columns are wanted: up to a reduced cost; `isAlone` when each must satisfy its orders' minimum by itself. */
export type Asking = { most: number; isAlone: boolean; isOver: () => boolean };

/** More labels than this make the enumeration incomplete. */
const MOST_WAYS = 60_000;

/**
 * Label setting over one product's pricing graph: every column that a better plan may use, with orders used in any turn
 * and fillers in any order. Exact where the pricing problem's assumption may fail.
 */
export class LabelSetting {
  /** True when each order is used up before the next of its supplier: no term depends on an order's size. */
  private readonly isInTurn: boolean;
  private readonly hasLevels: boolean;
  private readonly width: number;
  private readonly waits: Float64Array;
  private readonly behind: (to: number, slot: number) => number;
  private readonly rate: number;
  private count = 0;

  constructor(
    private readonly graph: PartGraph,
    private readonly slots: CandidateOrders,
    private readonly horizon: Horizon,
    private readonly prices: DualPrices,
  ) {
    this.isInTurn = ignoresOrderSize(graph);
    this.hasLevels = graph.part.packs.some(({ levels }) => levels.length > 1);
    this.width = graph.slots.all.length;
    this.waits = waitsOf(graph.slots, horizon);
    this.rate = graph.fillerGain.rate(prices);
    this.behind = this.restOf();
  }

  /** What is still to come at least behind a node. */
  private restOf(): (to: number, slot: number) => number {
    const { graph, horizon, prices, width } = this;
    if (this.isInTurn && graph.slots.first.size === 1) {
      const { open, closed } = completionBoundOf(graph, horizon, prices);
      return (to, slot) => Math.min(open[to * width + slot] ?? Infinity, closed[to] ?? Infinity);
    }
    // An order that was begun may be gone on with at any time, so none of those to come may cost anything.
    const { behind } = orderFreeBounds(graph, horizon, prices);
    return (to) => behind[to] ?? Infinity;
  }

  /** What no column of the part comes out below; null when there are too many ways, or the time is over. */
  least({ most, isOver }: Omit<Following, 'toColumns'>): number | null {
    const { graph } = this;
    const labels = this.follow({ most, isOver, toColumns: false });
    if (!labels) return null;
    return labels.reduce(
      (least, { cost, keeps }) => Math.min(least, cost - graph.fillerGain.gain(this.rate, keeps)),
      most,
    );
  }

  /** Every column that comes out no higher, the cheapest of those that do the same for all orders; null as before. */
  columns({ most, isAlone, isOver }: Asking): Column[] | null {
    const { graph, horizon, prices } = this;
    const labels = this.follow({ most, isOver, toColumns: true });
    if (!labels) return null;
    const columns = new Map<string, Column>();
    for (const label of labels) {
      const path = packsOf(label);
      const mixtures = enumerateFillers(graph, horizon, prices, { label, most, rate: this.rate, isAlone, isOver });
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
  private follow(following: Following): Label[] | null {
    const { graph } = this;
    const labels = Array.from({ length: graph.nodes + 1 }, () => new Map<string, Label>());
    labels[0]?.set('', { cost: 0, slots: [], goods: new Map(), counts: new Map(), keeps: 0, last: null });
    this.count = 0;
    for (let node = 0; node < graph.nodes; node++) {
      for (const label of labels[node]?.values() ?? []) {
        for (let index = graph.firstArc[node] ?? 0; index < (graph.firstArc[node + 1] ?? 0); index++) {
          const arc = graph.arcs[index];
          for (let slot = arc?.firstSlot ?? 0; arc && slot <= arc.lastSlot; slot++) {
            this.extend(label, arc, slot, following, labels[arc.to] ?? new Map());
          }
        }
        if (this.count > MOST_WAYS || following.isOver()) return null;
      }
      labels[node]?.clear();
    }
    return [...(labels[graph.nodes]?.values() ?? [])];
  }

  private extend(
    label: Label,
    arc: Arc,
    slot: number,
    { most, toColumns }: Following,
    there: Map<string, Label>,
  ): void {
    const { prices, graph } = this;
    const one = graph.slots.all[slot];
    if (!one) return;
    const counts = hasOrderCost(one.supplier) && (toColumns || (prices.orderDual[slot] ?? 0) > 0);
    const isNew = counts && !label.slots.includes(slot);
    if (
      isNew &&
      this.isInTurn &&
      label.slots.some((other) => other > slot && graph.slots.all[other]?.supplier === one.supplier)
    )
      return;
    const cost =
      label.cost +
      (isNew ? (prices.orderDual[slot] ?? 0) : 0) +
      leastCost(arc, (this.waits[slot] ?? 0) + (prices.goodsDual[slot] ?? 0));
    const gain = gainBeside(graph, this.rate, arc);
    if (cost - gain + this.behind(arc.to, slot) > most) return;
    const slots = isNew ? [...label.slots, slot].sort((a, b) => a - b) : label.slots;
    const goods = toColumns && one.minimum > 0 ? added(label.goods, slot, leastPrice(arc.pack)) : label.goods;
    const packs = this.hasLevels ? added(label.counts, `${arc.packIndex}@${slot}`, 1) : label.counts;
    const key =
      this.keyOf(slots, goods, packs) + (arc.to === graph.nodes ? `k${arc.keeps}` : '') + this.ownKey(toColumns);
    const same = there.get(key);
    if (same && same.cost <= cost) return;
    const step = { one: { pack: arc.pack, orderOn: one.day, slot: graph.at[slot] ?? slot }, before: label.last };
    there.set(key, { cost, slots, goods, counts: packs, keeps: arc.keeps, last: step });
    this.count += 1;
  }

  /** Labels with equal orders dominate each other by cost, but not where quantity breaks may still change their order. */
  private ownKey(toColumns: boolean): string {
    return toColumns && this.hasLevels ? `w${this.count}` : '';
  }

  private keyOf(slots: readonly number[], goods: Label['goods'], counts: Label['counts']): string {
    const lists: Iterable<unknown>[] = [slots, goods.size > 0 ? [...goods].sort(([a], [b]) => a - b) : []];
    return `${lists.map((list) => [...list].join(' ')).join('|')}|${[...counts].map(String).sort().join(' ')}`;
  }
}

/** True when no term depends on the size of an order: no minimum, no quantity break. */
export const ignoresOrderSize = ({ slots, part }: Pick<PartGraph, 'slots' | 'part'>): boolean =>
  slots.all.every(({ minimum }) => minimum === 0) && part.packs.every(({ levels }) => levels.length === 1);

/** The reduced cost of one pack at the best of its prices: a lower bound. */
function leastCost({ pack, share }: Arc, off: number): number {
  let least = Infinity;
  for (const { price } of pack.levels) least = Math.min(least, price * (share - off));
  return least;
}

function added<Key>(to: ReadonlyMap<Key, number>, key: Key, value: number): ReadonlyMap<Key, number> {
  return new Map(to).set(key, (to.get(key) ?? 0) + value);
}

function packsOf(label: Label): Ordered[] {
  const packs: Ordered[] = [];
  for (let step = label.last; step; step = step.before) packs.push(step.one);
  return packs.reverse();
}

/** The value of a label's packs and fillers in one order, each at the price of its quantity there. Micros. */
export function goodsIn(
  label: Label,
  packs: readonly Pack[],
  slot: number,
  beside: readonly { pack: Pack; slot: number }[],
) {
  let goods = 0;
  for (const pack of packs) {
    const count =
      countOf(label, pack, packs, slot) + beside.filter((one) => one.pack === pack && one.slot === slot).length;
    if (count > 0) goods += count * priceOfOne(pack.offer, count);
  }
  return goods;
}

/** How many packs of an offer a label has in an order. */
export const countOf = ({ counts }: Label, pack: Pack, packs: readonly Pack[], slot: number): number =>
  counts.get(`${packs.indexOf(pack)}@${slot}`) ?? 0;
