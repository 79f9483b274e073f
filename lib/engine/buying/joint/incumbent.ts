import type { Part } from '../baseline-policy';
import type { Horizon } from '../horizon';
import type { CandidateOrders } from './candidate-orders';
import { type Column, columnsOf, packsIn, totalOfChoice } from './column';

/** The incumbent: the best feasible plan so far. Its total is infinite until there is one. */
export class Incumbent {
  columns: readonly Column[] = [];
  total = Infinity;

  constructor(
    private readonly parts: readonly Part[],
    private readonly slots: CandidateOrders,
    private readonly horizon: Horizon,
  ) {}

  /**
   * Keep a choice of one column of each part when it is the cheapest so far, or as cheap with fewer packs; each of its
   * orders as large as all parts together make it.
   *
   * Gives    whether it was kept
   */
  offer(columns: readonly (Column | null)[]): boolean {
    const whole = columns.flatMap((column) => column ?? []);
    if (whole.length < this.parts.length) return false;
    const total = totalOfChoice(whole);
    const isFewer = total < Infinity && total === this.total && packsIn(whole) < packsIn(this.columns);
    if (total >= this.total && !isFewer) return false;
    const packs = whole.map(({ purchase }) => purchase.packs);
    this.columns = columnsOf(this.parts, this.slots, this.horizon, packs).flatMap((column) => column ?? []);
    this.total = total;
    return true;
  }
}
