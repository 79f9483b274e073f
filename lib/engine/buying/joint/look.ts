import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import type { LeastAhead } from '../least-ahead';
import { cheapestColumn, type Found, type Prices } from './cheapest-column';
import { surelyWithin, withinReach } from './completion';
import { isCertain } from './every-column';
import { Master } from './master';
import { localOf, mayUseOf, type PartGraph, partGraph } from './part-graph';
import type { Slots } from './slots';

/** What is looked at of each part: how much it may cost without its orders, and what bounds its rest from below. */
export type Scope = { part: Part; least: number; most: number; ahead: LeastAhead };

/** The cheapest columns at some prices, what each part comes to at least, and what all come to with the orders. */
export type Seen = { found: (Found | null)[]; least: number[]; height: number; proves: boolean };

/** The graphs of several parts, and what they say of prices of their orders. */
export class Look {
  readonly mayUse: Set<number>[];

  private constructor(
    readonly graphs: PartGraph[],
    private readonly slots: Slots,
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
    scopes: readonly Scope[],
    slots: Slots,
    horizon: Horizon,
    { nodes, isAll, isOver }: { nodes: number; isAll: boolean; isOver: () => boolean },
  ): Look | null {
    const graphs: PartGraph[] = [];
    for (const { part, ...within } of scopes) {
      if (isOver()) return null;
      graphs.push(partGraph(part, slots, horizon, { ...within, nodes }));
    }
    const beyond = graphs.map(({ most, isThinned }) => (isAll && !isThinned ? Infinity : most));
    return new Look(graphs, slots, horizon, beyond);
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
  see(prices: readonly Prices[]): Seen {
    let [height, proves] = [Master.ordersAt(this.slots, prices), true];
    const found: (Found | null)[] = [];
    const least: number[] = [];
    for (const [part, graph] of this.graphs.entries()) {
      const its = prices[part];
      const column = its ? cheapestColumn(graph, this.horizon, localOf(graph, its)) : null;
      const beyond = this.beyond[part] ?? Infinity;
      if (beyond < Infinity && its?.reward.some((reward) => reward > 0)) proves = false;
      found.push(column);
      least.push(Math.min(column?.cost ?? Infinity, beyond));
      height += least[part] ?? -Infinity;
    }
    return { found, least, height, proves };
  }

  /**
   * The same without what comes out above a margin over each part's least, at some prices.
   *
   * Takes    whether nothing may be lost even where packs of different orders are used in turns
   */
  narrowed(prices: readonly Prices[], { least, margin, surely }: Narrowing): Look {
    const graphs = this.graphs.map((graph, part) => {
      const its = prices[part];
      const within = surely && !isCertain(graph) ? surelyWithin : withinReach;
      return its ? within(graph, this.horizon, localOf(graph, its), (least[part] ?? 0) + margin) : graph;
    });
    return new Look(graphs, this.slots, this.horizon, this.beyond);
  }
}

export type Narrowing = { least: readonly number[]; margin: number; surely: boolean };
