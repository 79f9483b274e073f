import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import { type Column, columnsOf, packsIn, totalOfChoice } from './column';
import type { Slots } from './slots';

/** The best plan of a search so far: without end, until there is one that every supplier takes. */
export class BestPlan {
  columns: readonly Column[] = [];
  total = Infinity;

  constructor(
    private readonly parts: readonly Part[],
    private readonly slots: Slots,
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
