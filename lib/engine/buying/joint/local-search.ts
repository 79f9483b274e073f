import type { Horizon } from '../horizon';
import { type CandidateOrders, twinOf } from './candidate-orders';
import { type Column, columnOf, totalOfChoice } from './column';
import { localOf, type PartGraph } from './part-graph';
import { type DualPrices, solvePricing } from './pricing-problem';

/**
 * Local search on a plan: each product in turn is planned anew with the other products' orders free to join, while that
 * lowers the cost. `thoroughly` also tries to drop each order.
 *
 * Takes    one column and one pricing graph of each product, and whether the time is over
 */
export function localSearch(
  choice: readonly Column[],
  graphs: readonly PartGraph[],
  slots: CandidateOrders,
  horizon: Horizon,
  { thoroughly, isOver }: { thoroughly: boolean; isOver: () => boolean },
): Column[] {
  const search = new LocalSearch(choice, graphs, slots, horizon, isOver);
  search.joinOrders();
  while (thoroughly && search.leaveOrders() && !isOver()) search.joinOrders();
  return search.columns;
}

class LocalSearch {
  private total: number;

  constructor(
    choice: readonly Column[],
    private readonly graphs: readonly PartGraph[],
    private readonly slots: CandidateOrders,
    private readonly horizon: Horizon,
    private readonly isOver: () => boolean,
  ) {
    this.columns = [...choice];
    this.total = totalOfChoice(choice);
  }

  columns: Column[];

  /** Each part in turn, the others' orders being sent anyway, until none gains by it. */
  joinOrders(): void {
    const parts = this.columns.length;
    for (let turn = 0, idle = 0; idle < parts && !this.isOver(); turn++) {
      const part = turn % parts;
      const column = this.cheapest(this.columns, part, null);
      idle = column && this.keep(replaced(this.columns, part, column)) ? 0 : idle + 1;
    }
  }

  /** Each order in turn, without it: those who are in it find another way, one after the other. Says whether any gained. */
  leaveOrders(): boolean {
    let gained = false;
    for (const order of new Set(
      this.columns.flatMap(({ goods }) => [...goods.keys()].map((slot) => this.orderOf(slot))),
    )) {
      if (this.isOver()) return false;
      let next: Column[] | null = this.columns;
      for (const [part, { goods }] of this.columns.entries()) {
        if (!next || ![...goods.keys()].some((slot) => this.orderOf(slot) === order)) continue;
        const column = this.cheapest(next, part, order);
        next = column && replaced(next, part, column);
      }
      if (next && this.keep(next)) gained = true;
    }
    return gained;
  }

  private keep(columns: Column[]): boolean {
    const total = totalOfChoice(columns);
    if (total >= this.total) return false;
    this.columns = columns;
    this.total = total;
    return true;
  }

  /** The cheapest way of a part when the others' orders are sent anyway, and one order is left out. */
  private cheapest(columns: readonly Column[], part: number, without: number | null): Column | null {
    const graph = this.graphs[part];
    const found = graph && solvePricing(graph, this.horizon, localOf(graph, this.besideOthers(columns, part, without)));
    return found ? columnOf(graph.part, this.slots, this.horizon, found.bought) : null;
  }

  /** What being in an order costs a part. */
  private besideOthers(columns: readonly Column[], part: number, without: number | null): DualPrices {
    const { slots } = this;
    const isSent = new Uint8Array(slots.all.length);
    for (const [other, { goods }] of columns.entries()) {
      if (other !== part) for (const slot of goods.keys()) isSent[this.orderOf(slot)] = 1;
    }
    const orderDual = Float64Array.from(slots.all, ({ supplier }, slot) => {
      const order = this.orderOf(slot);
      if (order === without) return Infinity;
      return isSent[order] === 1 ? 0 : (supplier.freightPerOrder ?? 0);
    });
    return { orderDual, goodsDual: new Float64Array(orderDual.length) };
  }

  /** An order that pays its freight and one that is free of it are the same order here. */
  private orderOf(slot: number): number {
    return twinOf(this.slots, slot)[0];
  }
}

const replaced = (columns: readonly Column[], part: number, column: Column): Column[] =>
  columns.map((one, index) => (index === part ? column : one));
