import type { Entry, Program, Relaxed, Solver } from '../solver';
import type { CandidateOrders } from './candidate-orders';
import type { Column } from './column';
import type { DualPrices } from './pricing-problem';

/** The solver gets whole units of the currency: its tolerances are made for such numbers. */
export const MICROS = 1e6;

/** The column and the row of one candidate order. */
type OrderRows = { isSent: number; minimum: number | null };

/**
 * The restricted master problem: choose one of the known columns of each product, and the orders that they need.
 *
 *   min   Σ cost × column + Σ freight × sent
 *   s.t.  one column for each product; the orders of a chosen column are sent; a sent order reaches its minimum
 *
 * The rows and the column of an order are added with the first column that needs them.
 */
export class RestrictedMaster {
  private open: Program | null = null;
  /** Columns that the program does not have yet: many a search ends before it is asked for anything. */
  private waiting: { column: Column; part: number }[] = [];
  /** The columns of each part, and their numbers in the program. */
  private readonly columns: { column: Column; number: number; part: number }[] = [];
  private readonly known: Map<string, number>[];
  private oneOf: number[] = [];
  private readonly links: Map<number, number>[];
  private readonly orders = new Map<number, OrderRows>();

  constructor(
    private readonly solver: Solver,
    private readonly slots: CandidateOrders,
    parts: number,
  ) {
    this.links = Array.from({ length: parts }, () => new Map());
    this.known = Array.from({ length: parts }, () => new Map());
  }

  /** Add a column, unless one that costs no more is in the same orders. Says whether it was added. */
  add(part: number, column: Column): boolean {
    const known = this.known[part];
    if (!known || (known.get(column.key) ?? Infinity) <= column.cost) return false;
    known.set(column.key, column.cost);
    this.waiting.push({ column, part });
    return true;
  }

  /** The program, with every column that was added. */
  private program(): Program {
    this.open ??= this.begun();
    for (const one of this.waiting) this.enter(this.open, one);
    this.waiting = [];
    return this.open;
  }

  private begun(): Program {
    const program = this.solver.open();
    this.oneOf = this.links.map(() => program.addRow(1, 1, []));
    return program;
  }

  private enter(program: Program, { column, part }: { column: Column; part: number }): void {
    const entries: Entry[] = [[this.oneOf[part] ?? 0, 1]];
    for (const [slot, goods] of column.goods) {
      const order = this.orderRows(program, slot);
      if (!order) continue;
      entries.push([this.linkRow(program, part, slot, order), 1]);
      if (order.minimum !== null) entries.push([order.minimum, goods / MICROS]);
    }
    const number = program.addColumn({ cost: column.cost / MICROS, upper: 1, entries });
    this.columns.push({ column, number, part });
  }

  private orderRows(program: Program, slot: number): OrderRows | null {
    const { freight, minimum } = this.slots.all[slot] ?? { freight: 0, minimum: 0 };
    if (freight === 0 && minimum === 0) return null;
    const known = this.orders.get(slot);
    if (known) return known;
    const isSent = program.addColumn({ cost: freight / MICROS, upper: 1, entries: [] });
    const rows: OrderRows = {
      isSent,
      minimum: minimum > 0 ? program.addRow(0, Infinity, [[isSent, -minimum / MICROS]]) : null,
    };
    this.orders.set(slot, rows);
    return rows;
  }

  private linkRow(program: Program, part: number, slot: number, { isSent }: OrderRows): number {
    const links = this.links[part] ?? new Map<number, number>();
    const known = links.get(slot);
    if (known !== undefined) return known;
    const row = program.addRow(-Infinity, 0, [[isSent, -1]]);
    links.set(slot, row);
    return row;
  }

  relaxed(): Relaxed | null {
    return this.program().relaxed();
  }

  /**
   * The prices of the orders at a relaxed solution, for every part: what the solver says where a part is in an order
   * already; an equal share of what is left of its cost where it is not, so that an untried order does not look free.
   */
  pricesAt({ duals }: Relaxed, mayUse: readonly Set<number>[]): DualPrices[] {
    const width = this.slots.all.length;
    const goodsDual = new Float64Array(width);
    const rest = new Float64Array(width);
    const untried = new Float64Array(width);
    for (const [slot, { freight, minimum }] of this.slots.all.entries()) {
      // Worth more than itself a micro of goods is only while the program has too few columns to make an order large.
      goodsDual[slot] = Math.min(1, dual(duals, this.orders.get(slot)?.minimum));
      rest[slot] = freight + minimum * (goodsDual[slot] ?? 0);
      for (const [part, links] of this.links.entries()) {
        if (!links.has(slot) && mayUse[part]?.has(slot)) untried[slot] = (untried[slot] ?? 0) + 1;
        rest[slot] = (rest[slot] ?? 0) + dual(duals, links.get(slot)) * MICROS;
      }
    }
    return this.links.map((links, part) => {
      const orderDual = new Float64Array(width);
      for (const slot of mayUse[part] ?? []) {
        const share = Math.max(0, rest[slot] ?? 0) / (untried[slot] || 1);
        orderDual[slot] = links.has(slot) ? Math.max(0, -dual(duals, links.get(slot)) * MICROS) : share;
      }
      return { orderDual, goodsDual };
    });
  }

  /** What every order would come to at most below nothing, at these prices: what is taken off the parts' own least. */
  static ordersAt({ all }: CandidateOrders, prices: readonly DualPrices[]): number {
    return all.reduce((total, { freight, minimum }, slot) => {
      const asked = prices.reduce((sum, { orderDual }) => sum + (orderDual[slot] ?? 0), 0);
      return total + Math.min(0, freight - asked + minimum * (prices[0]?.goodsDual[slot] ?? 0));
    }, 0);
  }

  /** The cheapest choice of one column of each part, and what none can be below, micros. Takes a choice that is possible. */
  choose(start: readonly Column[], seconds: number): { columns: Column[]; bound: number } | null {
    const program = this.program();
    const found = program.whole(
      this.columns.map(({ number }) => number),
      this.valuesOf(start),
      seconds,
    );
    if (!found) return null;
    const columns: Column[] = [];
    for (const { column, number, part } of this.columns) if ((found.values[number] ?? 0) > 0.5) columns[part] = column;
    return { columns, bound: found.bound * MICROS };
  }

  close(): void {
    this.open?.close();
  }

  /** Every column of each part that was ever added. */
  all(): Column[][] {
    const all: Column[][] = this.links.map(() => []);
    for (const { column, part } of [...this.columns, ...this.waiting]) all[part]?.push(column);
    return all;
  }

  /** A choice of columns as the value of every column of the program. */
  private valuesOf(choice: readonly Column[]): number[] {
    const values: number[] = [];
    const sent = new Set(choice.flatMap(({ goods }) => [...goods.keys()]));
    for (const [part, { key }] of choice.entries()) {
      const same = this.columns.findLast((one) => one.part === part && one.column.key === key);
      if (same) values[same.number] = 1;
    }
    for (const [slot, { isSent }] of this.orders) values[isSent] = sent.has(slot) ? 1 : 0;
    return Array.from(values, (value) => value ?? 0);
  }
}

const dual = (duals: ArrayLike<number>, row: number | null | undefined): number =>
  row === null || row === undefined ? 0 : (duals[row] ?? 0);
