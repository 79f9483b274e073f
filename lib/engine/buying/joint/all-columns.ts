import type { Horizon } from '../horizon';
import type { Bought } from '../shortest-path';
import { bundlesOf, type Prices, waitsOf } from './cheapest-column';
import { type Column, columnOf, keyOf } from './column';
import { type Completion, completionOf } from './completion';
import { packsFor, shutCosts } from './extras';
import type { Arc, PartGraph } from './part-graph';

/** A way to a node: which order is open, what it costs at the prices of the orders, and what is in each order so far. */
type Label = { open: number; cost: number; goods: Map<number, number>; last: Step | null };
type Step = { bought: Bought[]; before: Step | null };

/** So many ways are followed; with more, the answer is not complete. */
const MOST_LABELS = 40_000;

/**
 * Every column of a part that may be in a better plan: those that come out within a margin of the least, at the prices
 * of the orders. Of columns that are in the same orders only the cheapest is given; those are counted by the graph's own slots.
 *
 * Takes    the most that a column may come to at these prices, micros, and whether the time is over
 * Gives    null when there are too many of them, or the time is over
 */
export function allColumns(
  graph: PartGraph,
  horizon: Horizon,
  prices: Prices,
  { most, isOver }: { most: number; isOver: () => boolean },
): Column[] | null {
  const labelling = new Labelling(graph, horizon, prices, most);
  return labelling.follow(isOver) ? labelling.columns() : null;
}

class Labelling {
  private readonly completion: Completion;
  private readonly width: number;
  private readonly waits: Float64Array;
  private readonly labels: Map<string, Label>[];
  private readonly ended = new Map<string, Column>();
  private count = 0;

  constructor(
    private readonly graph: PartGraph,
    private readonly horizon: Horizon,
    private readonly prices: Prices,
    private readonly most: number,
  ) {
    this.completion = completionOf(graph, horizon, prices);
    this.width = graph.slots.all.length;
    this.waits = waitsOf(graph.slots, horizon);
    this.labels = Array.from({ length: graph.nodes + 1 }, () => new Map());
  }

  /** Follow every way to the end. Says whether all were followed. */
  follow(isOver: () => boolean): boolean {
    const { graph } = this;
    this.labels[0]?.set('', { open: -1, cost: 0, goods: new Map(), last: null });
    for (let node = 0; node < graph.nodes; node++) {
      for (const label of this.labels[node]?.values() ?? []) {
        for (let index = graph.firstArc[node] ?? 0; index < (graph.firstArc[node + 1] ?? 0); index++) {
          const arc = graph.arcs[index];
          for (let slot = arc?.firstSlot ?? 0; arc && slot <= arc.lastSlot; slot++) this.extend(label, arc, slot);
        }
        if (this.count > MOST_LABELS || isOver()) return false;
      }
      this.labels[node]?.clear();
    }
    return true;
  }

  columns(): Column[] {
    for (const label of this.labels[this.graph.nodes]?.values() ?? []) this.finish(label);
    return [...this.ended.values()];
  }

  private extend(label: Label, arc: Arc, slot: number): void {
    const reward = this.prices.reward[slot] ?? 0;
    const price = arc.pack.levels[0]?.price ?? 0;
    const base = label.cost + (slot === label.open ? 0 : (this.prices.fixed[slot] ?? 0));
    const share = arc.share - (this.waits[slot] ?? 0) - reward;
    this.arrive(label, arc, slot, { to: arc.to, count: 1, price, cost: base + price * share });
    if (arc.pack.levels.length === 1) return;
    const orderOn = this.graph.slots.all[slot]?.day ?? this.horizon.start;
    for (const { to, count, cost } of bundlesOf(this.graph, this.horizon, { arc, slot, orderOn, reward })) {
      const each = arc.pack.levels.findLast(({ atLeast }) => atLeast <= count)?.price ?? price;
      this.arrive(label, arc, slot, { to, count, price: each, cost: base + cost });
    }
  }

  private arrive(
    label: Label,
    arc: Arc,
    slot: number,
    { to, count, price, cost }: { to: number; count: number; price: number; cost: number },
  ): void {
    const { open, closed } = this.completion;
    const behind = Math.min(open[to * this.width + slot] ?? Infinity, closed[to] ?? Infinity);
    if (cost + behind > this.most) return;
    const goods = new Map(label.goods).set(slot, (label.goods.get(slot) ?? 0) + count * price);
    const key = `${slot}|${keyOf(this.graph.slots, goods)}`;
    const same = this.labels[to]?.get(key);
    if (same && same.cost <= cost) return;
    const orderOn = this.graph.slots.all[slot]?.day ?? 0;
    const bought = Array.from({ length: count }, () => ({ pack: arc.pack, orderOn }));
    this.labels[to]?.set(key, { open: slot, cost, goods, last: { bought, before: label.last } });
    this.count += 1;
  }

  /** A way that meets the whole need, as it is and with packs beside it that make its last order larger. */
  private finish(label: Label): void {
    const bought: Bought[] = [];
    for (let step = label.last; step; step = step.before) bought.unshift(...step.bought);
    this.end(bought);
    const slot = this.graph.slots.all[label.open];
    if (!slot || (slot.minimum === 0 && slot.freeOver === null)) return;
    for (const pack of this.graph.part.packs) {
      if (pack.offer.supplier !== slot.supplier) continue;
      const price = pack.levels[0]?.price ?? 0;
      const costs = shutCosts(this.graph.part, this.horizon, { pack, orderOn: slot.day, price });
      for (const [index, cost] of costs.slice(0, packsFor(pack)).entries()) {
        const given = (this.prices.reward[label.open] ?? 0) * price * (index + 1);
        if (label.cost + cost - given > this.most) continue;
        this.end([...bought, ...Array.from({ length: index + 1 }, () => ({ pack, orderOn: slot.day }))]);
      }
    }
  }

  private end(bought: Bought[]): void {
    const column = columnOf(this.graph.part, this.graph.slots, this.horizon, bought);
    const same = column && this.ended.get(column.key);
    if (column && (!same || column.cost < same.cost)) this.ended.set(column.key, column);
  }
}
