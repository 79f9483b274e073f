import type { Purchase } from '../bought';
import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import type { Bought } from '../shortest-path';
import type { Solver } from '../solver';
import { BestPlan } from './best-plan';
import type { Prices } from './cheapest-column';
import { chooseFreely } from './choice';
import { between, blended, equalShares, noPresence, spreadOf, stepUp } from './climb';
import { type Column, columnOf, columnsOf, type Ordered } from './column';
import { filledUp } from './filled-up';
import { type Floor, floorOf } from './floor';
import { improved } from './improved';
import { Look, type Scope } from './look';
import { Master } from './master';
import * as pace from './pace';
import { MOST_NODES } from './part-graph';
import { Proof } from './proof';
import { type Slots, slotsFor } from './slots';

/** The best plan found for some parts together, and what no plan can be below. Micros. */
export type Joint = { purchases: Purchase[]; total: number; bound: number; isCertain: boolean };

/**
 * The packs and order days that meet the needs of several products together at the least cost, where orders cost
 * something by themselves: freight, a minimum, a value from which freight is free, prices by quantity.
 *
 * Each product's whole way through the horizon is one column of a mixed-integer program. The relaxed program is solved
 * again and again; its prices of the orders go into a shortest path for each product, which gives the next columns, and
 * a proven bound. Then the program chooses whole columns. Where all columns that could be in a better plan can be
 * counted, they are, and the choice among them is proven to be the best.
 *
 * Takes    plans that are possible, as starts: the answer is never dearer than any of them. At least one must be.
 */
export function jointSearch(
  parts: readonly Part[],
  horizon: Horizon,
  starts: readonly Bought[][][],
  solver: Solver,
): Joint | null {
  const search = new JointSearch(parts, horizon, solver);
  for (const start of starts) search.start(start);
  return search.run();
}

/** What is left to prove is nothing below this, micros: less than any price. */
const NOTHING = 100;

class JointSearch {
  private readonly slots: Slots;
  private readonly master: Master;
  private readonly floors: Floor[];
  private look: Look | null = null;
  private readonly best: BestPlan;
  private bound: number;
  /** Whether any order may have to be of a size. */
  private readonly asksHowLarge: boolean;
  private readonly proof: Proof;
  /** How large the gap was when the graphs were last made smaller. */
  private narrowed = Infinity;
  /** The prices at which most was reached so far, how much that is, and what each part came to there. */
  private center: { prices: Prices[]; height: number; least: number[]; proves: boolean } | null = null;

  constructor(
    private readonly parts: readonly Part[],
    private readonly horizon: Horizon,
    private readonly solver: Solver,
  ) {
    this.slots = slotsFor(parts);
    this.master = new Master(solver, this.slots, parts.length);
    this.best = new BestPlan(parts, this.slots, horizon);
    this.floors = parts.map((part) => floorOf(part, horizon));
    this.asksHowLarge = this.slots.all.some(({ minimum }) => minimum > 0);
    this.bound = this.floor();
    this.proof = new Proof(parts, this.slots, horizon, this.isOver);
    // Each part by itself, as if orders cost nothing, is a plan as well.
    this.start(this.floors.map(({ bought }) => bought));
  }

  private readonly isOver = () => this.solver.secondsLeft() <= 0;

  /** What all parts cost at least without their orders. */
  private floor(): number {
    return this.floors.reduce((total, { least }) => total + least, 0);
  }

  start(plan: readonly Bought[][]): void {
    this.propose(columnsOf(this.parts, this.slots, this.horizon, plan));
  }

  run(): Joint | null {
    if (this.best.total === Infinity) return null;
    // A part that shares its orders with no other is solved at once; several first need a plan to start from.
    if (this.parts.length > 1 && this.lookAt(pace.FEW_NODES)) {
      this.begin();
      this.climb(pace.FOR_PROVING, pace.COARSE_REACH);
      this.improve(this.best.columns, true);
    }
    if (!this.isProven() && this.isWorthAll()) this.lookAt(MOST_NODES);
    if (this.look && !this.isProven()) this.prove();
    this.master.close();
    const { columns, total } = this.best;
    const purchases = columns.map(({ purchase }) => purchase);
    const bound = Math.min(total, this.certainBound());
    return { purchases, total, bound, isCertain: this.proof.isCertain() };
  }

  /** The first prices: an order's cost is shared by all alike; how much of a freight that can become free is tried. */
  private begin(): void {
    for (const part of this.asksHowLarge ? [1, 0.5, 0] : [1])
      if (this.look) this.price(equalShares(this.slots, this.look.mayUse, part));
  }

  /** Whether everything that could be in a better plan is few enough to look at. */
  private isWorthAll(): boolean {
    if (this.isOver()) return false;
    return !this.center?.proves || this.gap() * this.parts.length <= this.best.total * pace.MOST_MARGIN * 2;
  }

  /** Bring the bound up to the best plan, and the best plan down to it. */
  private prove(): void {
    const { center, look } = this;
    if (center && look) this.price(stepUp(this.slots, center.prices, look.mayUse, null, 0));
    else this.begin();
    this.narrow();
    this.climb(pace.FOR_THE_REST, pace.FINE_REACH);
    this.generate();
    this.choose();
    this.improve(this.best.columns, true);
    if (!this.isProven()) this.countAll();
  }

  /** Look at what could be in a better plan than the best so far, or first at the nearest of it. Says whether it could. */
  private lookAt(nodes: number): boolean {
    const isAll = nodes === MOST_NODES;
    const { center } = this;
    const slack = this.best.total - this.floor();
    const scopes = this.parts.map((part, index): Scope => {
      const { least, ahead } = this.floors[index] ?? never();
      const reached =
        this.proof.isSimple && center?.proves ? (center.least[index] ?? least) + this.gap() + NOTHING : least + slack;
      return { part, least, ahead, most: isAll ? reached : least + slack / this.parts.length };
    });
    const isOver = () => isAll && this.isOver();
    const look = Look.at(scopes, this.slots, this.horizon, { nodes, isAll, isOver });
    if (!look) return false;
    this.look = look;
    if (center) this.center = { ...center, height: Number.NEGATIVE_INFINITY };
    return true;
  }

  /** Leave out what cannot be in a better plan, now that more is proven. */
  private narrow(): void {
    const { center, look, best, proof } = this;
    if (!center?.proves || !look?.isWhole()) return;
    const { least, height } =
      proof.at(look, center.prices) ?? proof.heightOf(center.prices, look.see(center.prices).least);
    const margin = best.total - height + NOTHING;
    // Where a part alone could cost that much more, next to nothing would be left out.
    if (margin * this.parts.length > best.total * pace.MOST_MARGIN) return;
    this.look = look.narrowed(center.prices, { least, margin, surely: proof.isWhole });
    this.narrowed = this.gap();
    this.price(stepUp(this.slots, center.prices, this.look.mayUse, null, 0), false);
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

  /**
   * Better prices and a better bound, step by step, for as long as that goes on.
   *
   * Takes    the part of the time that is kept for what follows, and how short a step may become
   */
  private climb(keep: number, leastReach: number): void {
    const enough = this.solver.secondsLeft() * keep;
    let [at, reach, idle, before] = [this.center?.prices, pace.FIRST_REACH, 0, this.center?.height ?? 0];
    let presence = noPresence(this.parts.length, this.slots.all.length);
    for (let step = 0; at && reach > leastReach && this.gap() > NOTHING && this.solver.secondsLeft() > enough; step++) {
      const { columns, height } = this.price(at, step % pace.PLAN_EVERY === 0);
      const mayUse = this.look?.mayUse ?? [];
      const filled = columns.map((column) => column?.goods ?? new Map<number, number>());
      presence = blended(presence, filled, step === 0 ? 1 : pace.NEW_WEIGHT);
      const spread = spreadOf(this.slots, mayUse, presence);
      if (spread === 0) return;
      const top: number = this.center?.height ?? 0;
      idle = top > before ? 0 : idle + 1;
      before = top;
      if (idle >= pace.MOST_IDLE) [at, reach, idle] = [this.center?.prices ?? at, reach / 2, 0];
      const size = (reach * Math.max(0, this.best.total - height)) / spread;
      at = stepUp(this.slots, at, mayUse, presence, size);
      if (this.gap() * 2 > this.narrowed || !this.look?.isWhole()) continue;
      this.narrow();
      at = this.center?.prices ?? at;
    }
  }

  /** New columns, and a better bound, until the relaxed program has nothing to gain. */
  private generate(): void {
    const enough = this.solver.secondsLeft() * pace.FOR_CHOOSING;
    while (this.gap() > NOTHING && this.solver.secondsLeft() > enough) {
      const relaxed = this.master.relaxed();
      if (!relaxed || !this.look) return;
      const now = this.master.pricesAt(relaxed, this.look.mayUse);
      // Prices half way to the best ones so far swing less than those of the few columns that there are.
      const found = this.price(between(this.center?.prices ?? now, now), false).isNew;
      if (!found && !this.price(now, true).isNew) return;
    }
  }

  /** The cheapest column of each part at some prices, with a bound, and a plan made of them where that is asked for. */
  private price(prices: Prices[], toPlan = true): { columns: (Column | null)[]; height: number; isNew: boolean } {
    const { found, least, height, proves } = this.look?.see(prices) ?? never();
    const columns = found.map((one, part) => one && this.columnOf(part, one.bought));
    let isNew = false;
    for (const [part, column] of columns.entries()) if (column && this.master.add(part, column)) isNew = true;
    this.propose(columns);
    if (toPlan) this.improve(columns);
    if (proves) this.bound = Math.max(this.bound, height - NOTHING);
    if (height > (this.center?.height ?? Number.NEGATIVE_INFINITY)) this.center = { prices, height, least, proves };
    return { columns, height, isNew };
  }

  private columnOf(part: number, bought: readonly Ordered[]): Column | null {
    const its = this.parts[part];
    return its ? columnOf(its, this.slots, this.horizon, bought) : null;
  }

  /** Bring a choice of columns down as far as one part after the other can, and keep it if it is the best. */
  private improve(choice: readonly (Column | null)[], thoroughly = false): void {
    const whole = choice.flatMap((column) => column ?? []);
    if (whole.length < this.parts.length || !this.look) return;
    const how = { thoroughly, isOver: this.isOver };
    const columns = improved(whole, this.look.graphs, this.slots, this.horizon, how);
    for (const [part, column] of columns.entries()) this.master.add(part, column);
    this.propose(columns);
    if (this.asksHowLarge) this.propose(filledUp(columns, this.parts, this.slots, this.horizon, this.isOver));
  }

  private choose(): void {
    const seconds = this.solver.secondsLeft() * pace.FOR_CHOOSING;
    if (this.gap() <= NOTHING || seconds <= 0) return;
    const { slots, solver, master, best } = this;
    if (this.asksHowLarge) this.propose(chooseFreely(master.all(), slots, solver, best.columns, seconds) ?? []);
    else this.propose(master.choose(best.columns, seconds)?.columns ?? []);
  }

  /**
   * Add every column that could be in a better plan, where they can be counted, and choose among them: first those that
   * lie nearest to the least, which may bring the best plan down already, then more. A plan with a column that was not
   * counted lies above what is proven by as much as was counted up to.
   */
  private countAll(): void {
    const { look, center, proof } = this;
    const at = look && center && proof.at(look, center.prices);
    if (!at) return;
    proof.raise(at.height - NOTHING);
    for (const part of pace.COUNTED) {
      if (this.isProven()) return;
      const margin = Math.max(0, this.best.total - at.height) * part + NOTHING;
      const columns = proof.near(look, at, margin);
      const bound = columns && this.chooseFrom(columns);
      if (bound === null) return;
      proof.raise(Math.min(bound, at.height + margin) - 2 * NOTHING);
    }
  }

  /** Choose among some columns of each part. Gives what no choice of them can be below. */
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

  /** Whether no plan can be cheaper, for certain. */
  private isProven(): boolean {
    return this.proof.isCertain() && this.best.total - this.certainBound() <= NOTHING;
  }

  /** What no plan can be below, for certain. */
  private readonly certainBound = (): number => this.proof.certainBound(this.bound, this.floor());
}

function never(): never {
  throw new RangeError('buying: a part without a bound');
}
