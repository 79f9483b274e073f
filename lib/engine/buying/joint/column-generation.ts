import type { Part } from '../baseline-policy';
import type { Purchase } from '../bought';
import type { Horizon } from '../horizon';
import type { Bought } from '../shortest-path';
import type { Solver } from '../solver';
import { type CandidateOrders, candidateOrdersFor } from './candidate-orders';
import { type Column, columnOf, columnsOf, type Ordered } from './column';
import { Incumbent } from './incumbent';
import { type ItemBound, itemBoundOf } from './item-bound';
import { localSearch } from './local-search';
import { OptimalityCertificate } from './optimality-certificate';
import { chooseOrders } from './order-choice';
import { topUpOrders } from './order-top-up';
import { MOST_NODES } from './part-graph';
import type { DualPrices } from './pricing-problem';
import { type ItemScope, PricingScope } from './pricing-scope';
import { RestrictedMaster } from './restricted-master';
import * as parameters from './search-parameters';
import { ascentStep, between, blended, equalShares, noPresence, spreadOf } from './subgradient-ascent';

/** The best plan found for several products, and a lower bound of every plan. Micros. */
export type JointPlan = { purchases: Purchase[]; total: number; bound: number; isCertain: boolean };

/**
 * Column generation for joint lot sizing: the packs and order days that meet the needs of several products at the least
 * cost, where an order itself costs freight, has a minimum or free freight, or a price depends on the quantity.
 *
 * A column is one product's whole plan. The restricted master problem chooses one column of each product; its dual prices
 * go into a pricing problem for each product, which gives new columns and a Lagrangian bound. Where the columns within
 * the gap can be enumerated, the choice among them is optimal. `FORMULATION.md` states all of it.
 *
 * Takes    feasible plans to start from, at least one: the answer never costs more than any of them
 */
export function generateColumns(
  parts: readonly Part[],
  horizon: Horizon,
  starts: readonly Bought[][][],
  solver: Solver,
): JointPlan | null {
  const search = new ColumnGeneration(parts, horizon, solver);
  for (const start of starts) search.start(start);
  return search.run();
}

/** A gap below this is closed, micros: less than any price. */
const NOTHING = 100;

class ColumnGeneration {
  private readonly slots: CandidateOrders;
  private readonly master: RestrictedMaster;
  private readonly itemBounds: ItemBound[];
  private scope: PricingScope | null = null;
  private readonly best: Incumbent;
  private bound: number;
  /** True when some order has a minimum. */
  private readonly asksHowLarge: boolean;
  private readonly certificate: OptimalityCertificate;
  /** The gap at the last reduced-cost fixing. */
  private narrowed = Infinity;
  /** The stability center: the dual prices of the best Lagrangian bound so far, and the products' bounds there. */
  private center: { prices: DualPrices[]; lagrangianBound: number; least: number[]; proves: boolean } | null = null;

  constructor(
    private readonly parts: readonly Part[],
    private readonly horizon: Horizon,
    private readonly solver: Solver,
  ) {
    this.slots = candidateOrdersFor(parts);
    this.master = new RestrictedMaster(solver, this.slots, parts.length);
    this.best = new Incumbent(parts, this.slots, horizon);
    this.itemBounds = parts.map((part) => itemBoundOf(part, horizon));
    this.asksHowLarge = this.slots.all.some(({ minimum }) => minimum > 0);
    this.bound = this.floor();
    this.certificate = new OptimalityCertificate(parts, this.slots, horizon, this.isOver);
    // Each product by itself, as if orders cost nothing, is a feasible start as well.
    this.start(this.itemBounds.map(({ bought }) => bought));
  }

  private readonly isOver = () => this.solver.secondsLeft() <= 0;

  /** The lower bound of all products without their orders. */
  private readonly floor = (): number => this.itemBounds.reduce((total, { least }) => total + least, 0);

  start(plan: readonly Bought[][]): void {
    this.propose(columnsOf(this.parts, this.slots, this.horizon, plan));
  }

  run(): JointPlan | null {
    if (this.best.total === Infinity) return null;
    // A product that shares its orders with no other is solved at once; several first need a good plan.
    if (this.parts.length > 1 && this.setScope(parameters.FEW_NODES)) {
      this.begin();
      this.ascend(parameters.FOR_PROVING, parameters.COARSE_REACH);
      this.improve(this.best.columns, true);
    }
    if (!this.isProven() && this.isWorthAll()) this.setScope(MOST_NODES);
    if (this.scope && !this.isProven()) this.prove();
    this.master.close();
    const { columns, total } = this.best;
    const purchases = columns.map(({ purchase }) => purchase);
    const bound = Math.min(total, this.certainBound());
    return { purchases, total, bound, isCertain: this.certificate.isCertain() };
  }

  /** The first dual prices: equal shares, with several parts of a freight that can become free. */
  private begin(): void {
    for (const part of this.asksHowLarge ? [1, 0.5, 0] : [1])
      if (this.scope) this.price(equalShares(this.slots, this.scope.mayUse, part));
  }

  /** True when the whole graphs are worth their time. */
  private isWorthAll(): boolean {
    if (this.isOver()) return false;
    return !this.center?.proves || this.gap() * this.parts.length <= this.best.total * parameters.MOST_MARGIN * 2;
  }

  /** Raise the bound to the incumbent, and lower the incumbent to the bound. */
  private prove(): void {
    const { center, scope } = this;
    if (center && scope) this.price(ascentStep(this.slots, center.prices, scope.mayUse, null, 0));
    else this.begin();
    this.narrow();
    this.ascend(parameters.FOR_THE_REST, parameters.FINE_REACH);
    this.generate();
    this.choose();
    this.improve(this.best.columns, true);
    if (!this.isProven()) this.countAll();
  }

  /** Build the pricing graphs of all that a better plan may use, or of the nearest of it. Gives whether it could. */
  private setScope(nodes: number): boolean {
    const isAll = nodes === MOST_NODES;
    const { center } = this;
    const slack = this.best.total - this.floor();
    const scopes = this.parts.map((part, index): ItemScope => {
      const { least, ahead } = this.itemBounds[index] ?? never();
      const reached =
        this.certificate.isSimple && center?.proves
          ? (center.least[index] ?? least) + this.gap() + NOTHING
          : least + slack;
      return { part, least, ahead, most: isAll ? reached : least + slack / this.parts.length };
    });
    const isOver = () => isAll && this.isOver();
    const scope = PricingScope.at(scopes, this.slots, this.horizon, { nodes, isAll, isOver });
    if (!scope) return false;
    this.scope = scope;
    if (center) this.center = { ...center, lagrangianBound: Number.NEGATIVE_INFINITY };
    return true;
  }

  /** Reduced-cost fixing with the bound that is known now. */
  private narrow(): void {
    const { center, scope, best, certificate } = this;
    if (!center?.proves || !scope?.isWhole()) return;
    const { least, lagrangianBound } =
      certificate.at(scope, center.prices) ??
      certificate.lagrangianBoundOf(center.prices, scope.see(center.prices).least);
    const margin = best.total - lagrangianBound + NOTHING;
    // With a margin this large, next to nothing would be fixed.
    if (margin * this.parts.length > best.total * parameters.MOST_MARGIN) return;
    this.scope = scope.narrowed(center.prices, { least, margin, surely: certificate.isWhole });
    this.narrowed = this.gap();
    this.price(ascentStep(this.slots, center.prices, this.scope.mayUse, null, 0), false);
  }

  private gap(): number {
    return this.best.total - this.bound;
  }

  private propose(columns: readonly (Column | null)[]): void {
    if (this.best.offer(columns)) {
      for (const [part, column] of this.best.columns.entries()) this.master.add(part, column);
    }
    if (this.best.total < Infinity) this.solver.told({ best: this.best.total, bound: this.certainBound() });
  }

  /** Subgradient ascent. Takes the share of the time that is kept for what follows, and the shortest step length. */
  private ascend(keep: number, leastReach: number): void {
    const enough = this.solver.secondsLeft() * keep;
    let [at, reach, idle, before] = [this.center?.prices, parameters.FIRST_REACH, 0, this.center?.lagrangianBound ?? 0];
    let presence = noPresence(this.parts.length, this.slots.all.length);
    for (let step = 0; at && reach > leastReach && this.gap() > NOTHING && this.solver.secondsLeft() > enough; step++) {
      const { columns, lagrangianBound } = this.price(at, step % parameters.PLAN_EVERY === 0);
      const mayUse = this.scope?.mayUse ?? [];
      const filled = columns.map((column) => column?.goods ?? new Map<number, number>());
      presence = blended(presence, filled, step === 0 ? 1 : parameters.NEW_WEIGHT);
      const spread = spreadOf(this.slots, mayUse, presence);
      if (spread === 0) return;
      const top: number = this.center?.lagrangianBound ?? 0;
      idle = top > before ? 0 : idle + 1;
      before = top;
      if (idle >= parameters.MOST_IDLE) [at, reach, idle] = [this.center?.prices ?? at, reach / 2, 0];
      const size = (reach * Math.max(0, this.best.total - lagrangianBound)) / spread;
      at = ascentStep(this.slots, at, mayUse, presence, size);
      if (this.gap() * 2 > this.narrowed || !this.scope?.isWhole()) continue;
      this.narrow();
      at = this.center?.prices ?? at;
    }
  }

  /** Column generation proper: until no column of negative reduced cost is left. */
  private generate(): void {
    const enough = this.solver.secondsLeft() * parameters.FOR_CHOOSING;
    while (this.gap() > NOTHING && this.solver.secondsLeft() > enough) {
      const relaxed = this.master.relaxed();
      if (!relaxed || !this.scope) return;
      const now = this.master.pricesAt(relaxed, this.scope.mayUse);
      // Dual prices half way to the stability center swing less than those of few columns.
      const found = this.price(between(this.center?.prices ?? now, now), false).isNew;
      if (!found && !this.price(now, true).isNew) return;
    }
  }

  /** Solve the pricing problems at some dual prices: columns, a Lagrangian bound, and a plan where wanted. */
  private price(
    prices: DualPrices[],
    toPlan = true,
  ): { columns: (Column | null)[]; lagrangianBound: number; isNew: boolean } {
    const { found, least, lagrangianBound, proves } = this.scope?.see(prices) ?? never();
    const columns = found.map((one, part) => one && this.columnOf(part, one.bought));
    let isNew = false;
    for (const [part, column] of columns.entries()) if (column && this.master.add(part, column)) isNew = true;
    this.propose(columns);
    if (toPlan) this.improve(columns);
    if (proves) this.bound = Math.max(this.bound, lagrangianBound - NOTHING);
    if (lagrangianBound > (this.center?.lagrangianBound ?? Number.NEGATIVE_INFINITY))
      this.center = { prices, lagrangianBound, least, proves };
    return { columns, lagrangianBound, isNew };
  }

  private columnOf(part: number, bought: readonly Ordered[]): Column | null {
    const its = this.parts[part];
    return its ? columnOf(its, this.slots, this.horizon, bought) : null;
  }

  /** Local search and order top-up from some columns; the result is kept if it is the best. */
  private improve(choice: readonly (Column | null)[], thoroughly = false): void {
    const whole = choice.flatMap((column) => column ?? []);
    if (whole.length < this.parts.length || !this.scope) return;
    const how = { thoroughly, isOver: this.isOver };
    const columns = localSearch(whole, this.scope.graphs, this.slots, this.horizon, how);
    for (const [part, column] of columns.entries()) this.master.add(part, column);
    this.propose(columns);
    if (this.asksHowLarge) this.propose(topUpOrders(columns, this.parts, this.slots, this.horizon, this.isOver));
  }

  private choose(): void {
    const seconds = this.solver.secondsLeft() * parameters.FOR_CHOOSING;
    if (this.gap() <= NOTHING || seconds <= 0) return;
    const { slots, solver, master, best } = this;
    if (this.asksHowLarge) this.propose(chooseOrders(master.all(), slots, solver, best.columns, seconds) ?? []);
    else this.propose(master.choose(best.columns, seconds)?.columns ?? []);
  }

  /**
   * Column enumeration within the gap: add all columns within a margin, choose among them, and widen the margin. A plan
   * with a column outside the margin costs more than the bound by at least that margin.
   */
  private countAll(): void {
    const { scope, center, certificate } = this;
    const at = scope && center && certificate.at(scope, center.prices);
    if (!at) return;
    certificate.raise(at.lagrangianBound - NOTHING);
    for (const part of parameters.COUNTED) {
      if (this.isProven()) return;
      const margin = Math.max(0, this.best.total - at.lagrangianBound) * part + NOTHING;
      const columns = certificate.near(scope, at, margin);
      const bound = columns && this.chooseFrom(columns);
      if (bound === null) return;
      certificate.raise(Math.min(bound, at.lagrangianBound + margin) - 2 * NOTHING);
    }
  }

  /** Choose among the columns. Gives the lower bound of every choice of them. */
  private chooseFrom(columns: readonly Column[][]): number | null {
    const [its] = columns;
    if (columns.length === 1) {
      for (const column of its ?? []) this.propose([column]);
      return this.best.total;
    }
    for (const [part, all] of columns.entries()) for (const column of all) this.master.add(part, column);
    const chosen = this.master.choose(this.best.columns, this.solver.secondsLeft());
    if (chosen) this.propose(chosen.columns);
    return chosen?.bound ?? null;
  }

  /** True when the incumbent is certified optimal. */
  private isProven(): boolean {
    return this.certificate.isCertain() && this.best.total - this.certainBound() <= NOTHING;
  }

  /** The certified lower bound. */
  private readonly certainBound = (): number => this.certificate.certainBound(this.bound, this.floor());
}

function never(): never {
  throw new RangeError('buying: a part without a bound');
}
