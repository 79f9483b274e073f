import type { Part } from '../baseline-policy';
import type { Horizon } from '../horizon';
import { type CandidateOrders, candidateOrdersOf, suppliersOf } from './candidate-orders';
import type { Column } from './column';
import { certainItemBounds, enumerateColumns, isCertain } from './column-enumeration';
import type { DualPrices } from './pricing-problem';
import type { PricingScope } from './pricing-scope';
import { RestrictedMaster } from './restricted-master';

/** Dual prices, the lower bound of each product at them, and the Lagrangian bound of every plan. Micros. */
export type LagrangianBound = { prices: readonly DualPrices[]; least: readonly number[]; lagrangianBound: number };

/**
 * The optimality certificate of a search: which bounds hold for certain. Where the pricing problem is not exact (several
 * suppliers of one product, or terms that depend on an order's size), only label setting or enumeration certify.
 */
export class OptimalityCertificate {
  /** True when the pricing problem of every product is exact. */
  readonly isSimple: boolean;
  /** The certified lower bound, micros. */
  bound = Number.NEGATIVE_INFINITY;
  /** True while every arc that was removed is certain to be in no better plan. */
  isWhole = true;

  constructor(
    parts: readonly Part[],
    private readonly slots: CandidateOrders,
    private readonly horizon: Horizon,
    private readonly isOver: () => boolean,
  ) {
    this.isSimple = parts.every((part) =>
      isCertain({ part, slots: candidateOrdersOf(slots, suppliersOf(part)).slots }),
    );
  }

  /** True when the final bound is certified. */
  isCertain(): boolean {
    return this.isSimple || this.bound > Number.NEGATIVE_INFINITY;
  }

  /**
   * The certified lower bound of every plan: the Lagrangian bound where the pricing problem is exact, else the products'
   * cost without orders, or the bound of an enumeration.
   */
  certainBound(priced: number, withoutOrders: number): number {
    return Math.max(this.isSimple ? priced : withoutOrders, this.bound);
  }

  /** The certified Lagrangian bound at some dual prices; null from the first time that it takes too long. */
  at(look: PricingScope, prices: readonly DualPrices[]): LagrangianBound | null {
    if (!this.isWhole || !look.isWhole()) return null;
    const least = certainItemBounds(look.graphs, this.slots, this.horizon, prices, this.isOver);
    if (!least) this.isWhole = false;
    return least && this.lagrangianBoundOf(prices, least);
  }

  /** The Lagrangian bound by lower bounds of the products. */
  lagrangianBoundOf(prices: readonly DualPrices[], least: readonly number[]): LagrangianBound {
    return {
      prices,
      least,
      lagrangianBound: least.reduce((sum, one) => sum + one, RestrictedMaster.ordersAt(this.slots, prices)),
    };
  }

  /** Every column within a margin of each product's least reduced cost; null when there are too many. */
  near({ graphs }: PricingScope, { prices, least }: LagrangianBound, margin: number): Column[][] | null {
    return enumerateColumns(graphs, this.slots, this.horizon, prices, { least, margin, isOver: this.isOver });
  }

  raise(bound: number): void {
    this.bound = Math.max(this.bound, bound);
  }
}
