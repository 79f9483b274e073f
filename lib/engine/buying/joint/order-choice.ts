import type { Entry, Program, Solver } from '../solver';
import { type CandidateOrders, twinOf } from './candidate-orders';
import type { Column } from './column';
import { MICROS } from './restricted-master';

/** The columns and rows of one order: sent, free of freight, and the minimum of each. */
type OrderRows = { isSent: number; isFree: number | null; free: number | null; minimum: number | null };

/**
 * The cheapest choice of one column of each product, where an order may be free of freight or not, whichever of the two
 * a column was made for. It improves the plan and proves nothing about columns that are not known.
 *
 *   min   Σ cost × column + Σ freight × (sent − free)
 *   s.t.  one column for each product; the orders of a chosen column are sent; a sent order reaches its minimum; a free
 *         order is sent and reaches the free-freight threshold
 *
 * Takes    the columns of each part, a choice that is possible, and how long it may take
 */
export function chooseOrders(
  columns: readonly (readonly Column[])[],
  slots: CandidateOrders,
  solver: Solver,
  start: readonly Column[],
  seconds: number,
): Column[] | null {
  const choice = new Choice(solver.open(), slots);
  for (const its of columns) choice.enter(its);
  return choice.solve(start, seconds);
}

class Choice {
  private readonly columns: { column: Column; number: number; part: number }[] = [];
  private readonly orders = new Map<number, OrderRows>();
  private readonly isFree: number[] = [];
  private parts = 0;

  constructor(
    private readonly program: Program,
    private readonly slots: CandidateOrders,
  ) {}

  /** The columns of one more part. */
  enter(columns: readonly Column[]): void {
    const { program } = this;
    const part = this.parts++;
    const oneOf = program.addRow(1, 1, []);
    const links = new Map<number, number>();
    for (const column of columns) {
      const entries: Entry[] = [[oneOf, 1]];
      for (const [slot, goods] of column.goods) {
        const [paid] = twinOf(this.slots, slot);
        const order = this.orderRows(slot);
        const link = links.get(paid) ?? program.addRow(-Infinity, 0, [[order.isSent, -1]]);
        links.set(paid, link);
        entries.push([link, 1]);
        for (const row of [order.minimum, order.free]) if (row !== null) entries.push([row, goods / MICROS]);
      }
      const number = program.addColumn({ cost: column.cost / MICROS, upper: 1, entries });
      this.columns.push({ column, number, part });
    }
  }

  private orderRows(slot: number): OrderRows {
    const { program } = this;
    const [at, twin] = twinOf(this.slots, slot);
    const known = this.orders.get(at);
    if (known) return known;
    const [paid, free] = [this.slots.all[at], twin === null ? null : this.slots.all[twin]];
    const [freight, minimum] = [paid?.freight ?? 0, paid?.minimum ?? 0];
    const isSent = program.addColumn({ cost: freight / MICROS, upper: 1, entries: [] });
    const isFree = free ? program.addColumn({ cost: -freight / MICROS, upper: 1, entries: [] }) : null;
    const rows: OrderRows = {
      isSent,
      isFree,
      minimum: minimum > 0 ? program.addRow(0, Infinity, [[isSent, -minimum / MICROS]]) : null,
      free: isFree === null ? null : program.addRow(0, Infinity, [[isFree, -(free?.minimum ?? 0) / MICROS]]),
    };
    if (isFree !== null) {
      this.isFree.push(isFree);
      program.addRow(-Infinity, 0, [
        [isFree, 1],
        [isSent, -1],
      ]);
    }
    this.orders.set(at, rows);
    return rows;
  }

  solve(start: readonly Column[], seconds: number): Column[] | null {
    const whole = [...this.columns.map(({ number }) => number), ...this.isFree];
    const found = this.program.whole(whole, this.valuesOf(start), seconds);
    this.program.close();
    if (!found) return null;
    const chosen: Column[] = [];
    for (const { column, number, part } of this.columns) if ((found.values[number] ?? 0) > 0.5) chosen[part] = column;
    return chosen;
  }

  private valuesOf(start: readonly Column[]): number[] {
    const values: number[] = [];
    for (const [part, { key }] of start.entries()) {
      const same = this.columns.findLast((one) => one.part === part && one.column.key === key);
      if (same) values[same.number] = 1;
    }
    const goods = new Map<number, number>();
    for (const [slot, value] of start.flatMap((column) => [...column.goods])) {
      const [at] = twinOf(this.slots, slot);
      goods.set(at, (goods.get(at) ?? 0) + value);
    }
    for (const [at, { isSent, isFree }] of this.orders) {
      const [, twin] = twinOf(this.slots, at);
      values[isSent] = goods.has(at) ? 1 : 0;
      const isLarge = twin !== null && (goods.get(at) ?? 0) >= (this.slots.all[twin]?.minimum ?? 0);
      if (isFree !== null) values[isFree] = goods.has(at) && isLarge ? 1 : 0;
    }
    return Array.from(values, (value) => value ?? 0);
  }
}
