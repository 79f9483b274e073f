import type { Purchase } from '../bought';
import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import { LeastAhead, leastPrice } from '../least-ahead';
import type { Pack } from '../pack';
import { type Bought, shortestPath } from '../shortest-path';
import type { Solver } from '../solver';
import { allColumns } from './all-columns';
import { cheapestColumn, type Prices } from './cheapest-column';
import { between, blended, type Dual, equalShares, type Presence, spreadOf, stepUp } from './climb';
import { type Column, columnOf, totalOfChoice } from './column';
import { withinReach } from './completion';
import { Master } from './master';
import { localOf, MOST_NODES, mayUseOf, type PartGraph, partGraph } from './part-graph';
import { type Slots, slotsFor } from './slots';

/** The best plan found for some parts together, and what no plan can be below. Micros. */
export type Joint = { purchases: Purchase[]; total: number; bound: number };

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
  private readonly ahead: LeastAhead[];
  private readonly least: number[];
  private graphs: PartGraph[] = [];
  private mayUse: Set<number>[] = [];
  private best: { columns: Column[]; total: number } | null = null;
  private bound: number;
  /** How large the gap was when the graphs were last made smaller. */
  private narrowed = Infinity;
  /** The prices at which most was proven so far, and how much that is. */
  private center: Dual | null = null;
  private proven = Number.NEGATIVE_INFINITY;

  constructor(
    private readonly parts: readonly Part[],
    private readonly horizon: Horizon,
    private readonly solver: Solver,
  ) {
    this.slots = slotsFor(parts);
    this.master = new Master(solver, this.slots, parts.length);
    this.ahead = parts.map(({ need, packs }) => new LeastAhead(need, packs, horizon));
    this.least = parts.map(({ need, packs }, part) => {
      return shortestPath(need, packs.map(asCheap), horizon, Infinity, this.ahead[part])?.total ?? 0;
    });
    this.bound = this.least.reduce((total, one) => total + one, 0);
  }

  start(plan: readonly Bought[][]): void {
    const columns = this.parts.map((part, index) => columnOf(part, this.slots, this.horizon, plan[index] ?? []));
    for (const [part, column] of columns.entries()) if (column) this.master.add(part, column);
    this.propose(columns);
  }

  run(): Joint | null {
    if (!this.best) return null;
    // A part that shares its orders with no other is solved at once; several first need a plan to start from.
    if (this.parts.length > 1) {
      this.lookAt(FEW_NODES);
      this.price(equalShares(this.slots, this.mayUse, 1));
      this.improve(this.best.columns);
    }
    if (this.solver.secondsLeft() > 0 && this.lookAt(MOST_NODES)) this.prove();
    this.master.program.close();
    const { columns, total } = this.best;
    return { purchases: columns.map(({ purchase }) => purchase), total, bound: Math.min(total, this.bound) };
  }

  /** Bring the bound up to the best plan, and the best plan down to it. */
  private prove(): void {
    const counted = this.slots.all.some(({ freeOver }) => freeOver !== null) ? [1, 0.5, 0] : [1];
    for (const part of counted) this.price(equalShares(this.slots, this.mayUse, part), part === 1);
    this.narrow();
    this.climb();
    this.generate();
    this.choose();
    this.improve(this.best?.columns ?? []);
    if (this.gap() > NOTHING) this.countAll();
  }

  /** What could be in a better plan than the best so far: the graphs of the parts, up to so many nodes each. */
  private lookAt(nodes: number): boolean {
    const slack = (this.best?.total ?? 0) - this.least.reduce((total, one) => total + one, 0);
    const graphs: PartGraph[] = [];
    for (const [index, part] of this.parts.entries()) {
      const [least, ahead] = [this.least[index] ?? 0, this.ahead[index] ?? never()];
      if (this.solver.secondsLeft() <= 0 && nodes > FEW_NODES) return false;
      graphs.push(partGraph(part, this.slots, this.horizon, { least, most: least + slack, nodes, ahead }));
    }
    this.graphs = graphs;
    this.mayUse = graphs.map(mayUseOf);
    return true;
  }

  /** Leave out what cannot be in a better plan, now that more is proven. */
  private narrow(): void {
    const { center } = this;
    if (!center || this.graphs.some(({ isThinned }) => isThinned)) return;
    const margin = (this.best?.total ?? 0) - this.proven + NOTHING;
    this.graphs = this.graphs.map((graph, part) => {
      const prices = center.prices[part];
      const least = prices && cheapestColumn(graph, this.horizon, localOf(graph, prices))?.cost;
      if (!prices || least === undefined) return graph;
      return withinReach(graph, this.horizon, localOf(graph, prices), least + margin);
    });
    this.mayUse = this.graphs.map(mayUseOf);
    this.narrowed = this.gap();
    this.price(stepUp(this.slots, center, this.mayUse, [], 0), false);
  }

  private gap(): number {
    return (this.best?.total ?? 0) - this.bound;
  }

  /** Keep a choice of columns when it is possible and the cheapest so far. */
  private propose(columns: readonly (Column | null)[]): void {
    const whole = columns.flatMap((column) => column ?? []);
    if (whole.length < this.parts.length) return;
    const total = totalOfChoice(whole);
    if (total === Infinity) return;
    if (!this.best || total < this.best.total) this.best = { columns: whole, total };
    this.solver.told({ best: this.best.total, bound: this.bound });
  }

  /** Better prices and a better bound, step by step, for as long as the bound goes on to climb. */
  private climb(): void {
    if (!this.center) return;
    const enough = this.solver.secondsLeft() * FOR_THE_REST;
    let [at, reach, idle, before] = [this.center, 0.2, 0, this.bound];
    let presence: Presence = this.parts.map(() => new Float64Array(this.slots.all.length));
    for (let step = 0; reach > LEAST_REACH && this.gap() > NOTHING && this.solver.secondsLeft() > enough; step++) {
      const { columns, least } = this.price(at, step % PLAN_EVERY === 0);
      const isIn = columns.map((column) => new Set(column?.goods.keys()));
      presence = blended(presence, isIn, step === 0 ? 1 : NEW_WEIGHT);
      const spread = spreadOf(this.slots, this.mayUse, presence);
      if (spread === 0) return;
      idle = this.bound > before ? 0 : idle + 1;
      before = this.bound;
      if (idle >= MOST_IDLE) [at, reach, idle] = [this.center, reach / 2, 0];
      const size = (reach * Math.max(0, (this.best?.total ?? 0) - least)) / spread;
      at = stepUp(this.slots, at, this.mayUse, presence, size);
      if (this.gap() * 2 > this.narrowed) continue;
      this.narrow();
      at = this.center ?? at;
    }
  }

  /** New columns, and a better bound, until the relaxed program has nothing to gain. */
  private generate(): void {
    const enough = this.solver.secondsLeft() * FOR_CHOOSING;
    while (this.gap() > NOTHING && this.solver.secondsLeft() > enough) {
      const relaxed = this.master.relaxed();
      if (!relaxed) return;
      const now = { prices: this.master.pricesAt(relaxed, this.mayUse), free: this.master.freeAt(relaxed) };
      // Prices half way to the best ones so far swing less than those of the few columns that there are.
      const found = this.price(between(this.center ?? now, now), false).isNew;
      if (!found && !this.price(now, true).isNew) return;
    }
  }

  /** The cheapest column of each part at some prices, with a bound, and a plan made of them where that is asked for. */
  private price(dual: Dual, toPlan = true): { columns: (Column | null)[]; least: number; isNew: boolean } {
    let [isNew, least] = [false, Master.ordersAt(this.slots, dual.prices, dual.free)];
    const columns = this.graphs.map((graph, part) => {
      const prices = dual.prices[part];
      const found = prices && cheapestColumn(graph, this.horizon, localOf(graph, prices));
      least += found?.cost ?? -Infinity;
      const column = found ? columnOf(graph.part, this.slots, this.horizon, found.bought) : null;
      if (column && this.master.add(part, column)) isNew = true;
      return column;
    });
    this.propose(columns);
    if (toPlan) this.improve(columns.flatMap((column) => column ?? []));
    const proves = this.graphs.every(({ isThinned }) => !isThinned);
    if (proves && least - NOTHING > this.proven) {
      this.proven = least - NOTHING;
      this.center = dual;
      this.bound = Math.max(this.bound, this.proven);
    }
    return { columns, least, isNew };
  }

  /** Let each part of a choice in turn join the orders of the others, as long as that makes it cheaper. */
  private improve(choice: readonly Column[]): void {
    if (choice.length < this.parts.length) return;
    let [columns, total] = [choice, totalOfChoice(choice)];
    for (let turn = 0, idle = 0; idle < this.parts.length && this.solver.secondsLeft() > 0; turn++) {
      const part = turn % this.parts.length;
      const graph = this.graphs[part];
      const found = graph && cheapestColumn(graph, this.horizon, localOf(graph, this.besideOthers(columns, part)));
      const column = found ? columnOf(graph.part, this.slots, this.horizon, found.bought) : null;
      const next = columns.map((one, index) => (index === part && column ? column : one));
      const cost = totalOfChoice(next);
      idle = cost < total ? 0 : idle + 1;
      if (cost < total) [columns, total] = [next, cost];
    }
    for (const [part, column] of columns.entries()) this.master.add(part, column);
    this.propose(columns);
  }

  /** What being in an order costs a part when the others' orders are sent anyway. */
  private besideOthers(columns: readonly Column[], part: number): Prices {
    const fixed = Float64Array.from(this.slots.all, ({ freight }) => freight);
    for (const [other, { goods }] of columns.entries()) {
      if (other !== part) for (const slot of goods.keys()) fixed[slot] = 0;
    }
    return { fixed, reward: new Float64Array(fixed.length) };
  }

  private choose(): void {
    const seconds = this.solver.secondsLeft() * FOR_CHOOSING;
    if (!this.best || this.gap() <= NOTHING || seconds <= 0) return;
    const chosen = this.master.whole(this.best.columns, seconds);
    if (chosen) this.propose(this.master.chosen(chosen));
  }

  /**
   * Add every column that could be in a better plan, where they can be counted, and choose among them: first those that
   * lie nearest to the least, which may bring the best plan down already, then more. A plan with a column that was not
   * counted lies above what is proven by as much as was counted up to.
   */
  private countAll(): void {
    if (this.graphs.some(({ isThinned }) => isThinned)) return;
    for (const part of [0.1, 0.3, 1]) {
      const margin = ((this.best?.total ?? 0) - this.proven) * part + NOTHING;
      if (this.gap() <= NOTHING || !this.count(margin)) return;
      const chosen = this.master.whole(this.best?.columns ?? [], this.solver.secondsLeft());
      if (!chosen) return;
      this.propose(this.master.chosen(chosen));
      const above = Math.min(chosen.bound * 1e6 - NOTHING, this.proven + margin - NOTHING);
      this.bound = Math.max(this.bound, Math.min(this.best?.total ?? 0, above));
    }
  }

  /** Add all columns that come out within a margin of each part's least. Says whether it could. */
  private count(margin: number): boolean {
    const isOver = () => this.solver.secondsLeft() <= 0;
    for (const [part, graph] of this.graphs.entries()) {
      const prices = this.center?.prices[part];
      const least = prices && cheapestColumn(graph, this.horizon, localOf(graph, prices))?.cost;
      if (!prices || least === undefined || isOver()) return false;
      const all = allColumns(graph, this.horizon, localOf(graph, prices), { most: least + margin, isOver });
      if (!all) return false;
      for (const { purchase } of all) {
        const column = columnOf(graph.part, this.slots, this.horizon, purchase.packs);
        if (column) this.master.add(part, column);
      }
    }
    return true;
  }
}

function never(): never {
  throw new RangeError('buying: a part without a bound');
}

/** At first only so many nodes of each part are looked at, so that a good plan is there soon. */
const FEW_NODES = 400;

/** The part of the time that is kept for choosing whole columns, and for counting them. */
const FOR_CHOOSING = 0.5;

/** Steps shorter than this, as a part of what the gap allows, are no climb any more. */
const LEAST_REACH = 0.005;
const MOST_IDLE = 8;
/** How much the newest choice counts among the last ones. */
const NEW_WEIGHT = 0.35;
/** A plan is made of every so many choices. */
const PLAN_EVERY = 6;

/** The part of the time that is kept for what follows the climb. */
const FOR_THE_REST = 0.4;

/** A pack as cheap as it ever becomes: what is proven with it holds for every number of packs. */
const asCheap = (pack: Pack): Pack => ({ ...pack, levels: [{ atLeast: 1, price: leastPrice(pack) }] });
