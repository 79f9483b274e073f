import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import type { Prices } from './cheapest-column';
import type { Column } from './column';
import { everyColumn, isCertain, surelyLeast } from './every-column';
import type { Look } from './look';
import { Master } from './master';
import { type Slots, slotsOf, suppliersOf } from './slots';

/** Prices of the orders, what each part comes to at least there, and what no plan can be below for that. */
export type Height = { prices: readonly Prices[]; least: readonly number[]; height: number };

/**
 * What is proven of a search, for certain. The cheapest columns are found as if each order of a part were used up before
 * its next one; where packs come from several suppliers, or something asks how large an order is, that is nearly always
 * so, and not certain. There every way is looked at, as long as there are not too many.
 */
export class Proof {
  /** Whether the cheapest columns are certain by themselves. */
  readonly isSimple: boolean;
  /** What no plan can be below. */
  bound = Number.NEGATIVE_INFINITY;
  /** Whether nothing was left out yet that is not for certain in no better plan. */
  isWhole = true;

  constructor(
    parts: readonly Part[],
    private readonly slots: Slots,
    private readonly horizon: Horizon,
    private readonly isOver: () => boolean,
  ) {
    this.isSimple = parts.every((part) => isCertain({ part, slots: slotsOf(slots, suppliersOf(part)).slots }));
  }

  /** Whether what is said in the end is certain. */
  isCertain(): boolean {
    return this.isSimple || this.bound > Number.NEGATIVE_INFINITY;
  }

  /**
   * What no plan can be below. The bound of the priced columns counts only where those columns are certain; elsewhere it
   * is what the parts cost without their orders, or what was counted.
   */
  certainBound(priced: number, withoutOrders: number): number {
    return Math.max(this.isSimple ? priced : withoutOrders, this.bound);
  }

  /** What no plan can be below at some prices; null, from then on, once that takes too long to say. */
  at(look: Look, prices: readonly Prices[]): Height | null {
    if (!this.isWhole || !look.isWhole()) return null;
    const least = surelyLeast(look.graphs, this.slots, this.horizon, prices, this.isOver);
    if (!least) this.isWhole = false;
    return least && this.heightOf(prices, least);
  }

  /** The same by some least of each part. */
  heightOf(prices: readonly Prices[], least: readonly number[]): Height {
    return { prices, least, height: least.reduce((sum, one) => sum + one, Master.ordersAt(this.slots, prices)) };
  }

  /** Every column that comes out within a margin of each part's least: by part; null when there are too many. */
  near({ graphs }: Look, { prices, least }: Height, margin: number): Column[][] | null {
    return everyColumn(graphs, this.slots, this.horizon, prices, { least, margin, isOver: this.isOver });
  }

  raise(bound: number): void {
    this.bound = Math.max(this.bound, bound);
  }
}
