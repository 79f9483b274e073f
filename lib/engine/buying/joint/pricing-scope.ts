import type { Part } from '../baseline-policy';
import type { Horizon } from '../horizon';
import type { RemainingCostBound } from '../remaining-cost-bound';
import type { CandidateOrders } from './candidate-orders';
import { isCertain } from './column-enumeration';
import { fixByCertainReducedCost, fixByReducedCost } from './completion-bound';
import { localOf, mayUseOf, type PartGraph, partGraph } from './part-graph';
import { type DualPrices, type Found, solvePricing } from './pricing-problem';
import { RestrictedMaster } from './restricted-master';

/** The scope of one product's pricing graph: the cost range without orders, and the bound of the remaining cost. */
export type ItemScope = { part: Part; least: number; most: number; ahead: RemainingCostBound };

/** The pricing solutions at some dual prices, the lower bound of each product, and their Lagrangian bound. */
export type Seen = { found: (Found | null)[]; least: number[]; lagrangianBound: number; proves: boolean };

/** The pricing graphs of several products: solves their pricing problems and fixes arcs by reduced cost. */
export class PricingScope {
  readonly mayUse: Set<number>[];

  private constructor(
    readonly graphs: PartGraph[],
    private readonly slots: CandidateOrders,
    private readonly horizon: Horizon,
    /** By part: what anything that is left out costs at least without its orders; +∞ when it is in no better plan. */
    private readonly beyond: number[],
  ) {
    this.mayUse = graphs.map(mayUseOf);
  }

  /**
   * Look at so much of each part, in graphs of so many nodes at most.
   *
   * Takes    whether what is left out is in no better plan, and whether the time is over
   * Gives    null when it is
   */
  static at(
    scopes: readonly ItemScope[],
    slots: CandidateOrders,
    horizon: Horizon,
    { nodes, isAll, isOver }: { nodes: number; isAll: boolean; isOver: () => boolean },
  ): PricingScope | null {
    const graphs: PartGraph[] = [];
    for (const { part, ...within } of scopes) {
      if (isOver()) return null;
      graphs.push(partGraph(part, slots, horizon, { ...within, nodes }));
    }
    const beyond = graphs.map(({ most, isThinned }) => (isAll && !isThinned ? Infinity : most));
    return new PricingScope(graphs, slots, horizon, beyond);
  }

  /** Whether nothing is left out that could be in a better plan. */
  isWhole(): boolean {
    return this.beyond.every((most) => most === Infinity);
  }

  /**
   * The cheapest column of each part at some prices of the orders.
   *
   * What a graph leaves out costs so much without its orders, and being in them costs nothing less; so the smaller of
   * the two is a bound, unless goods are given a reward.
   */
  see(prices: readonly DualPrices[]): Seen {
    let [lagrangianBound, proves] = [RestrictedMaster.ordersAt(this.slots, prices), true];
    const found: (Found | null)[] = [];
    const least: number[] = [];
    for (const [part, graph] of this.graphs.entries()) {
      const its = prices[part];
      const column = its ? solvePricing(graph, this.horizon, localOf(graph, its)) : null;
      const beyond = this.beyond[part] ?? Infinity;
      if (beyond < Infinity && its?.goodsDual.some((goodsDual) => goodsDual > 0)) proves = false;
      found.push(column);
      least.push(Math.min(column?.cost ?? Infinity, beyond));
      lagrangianBound += least[part] ?? -Infinity;
    }
    return { found, least, lagrangianBound, proves };
  }

  /**
   * The same without what comes out above a margin over each part's least, at some prices.
   *
   * Takes    whether nothing may be lost even where packs of different orders are used in turns
   */
  narrowed(prices: readonly DualPrices[], { least, margin, surely }: Narrowing): PricingScope {
    const graphs = this.graphs.map((graph, part) => {
      const its = prices[part];
      const within = surely && !isCertain(graph) ? fixByCertainReducedCost : fixByReducedCost;
      return its ? within(graph, this.horizon, localOf(graph, its), (least[part] ?? 0) + margin) : graph;
    });
    return new PricingScope(graphs, this.slots, this.horizon, this.beyond);
  }
}

export type Narrowing = { least: readonly number[]; margin: number; surely: boolean };
