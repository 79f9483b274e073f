import type { Supplier } from '../shop';
import { cheapestPerMl, followPolicy, type Part, smallestPack } from './baseline-policy';
import { type Purchase, purchaseOf } from './bought';
import type { Horizon } from './horizon';
import { hasOrderCost } from './joint/candidate-orders';
import { generateColumns } from './joint/column-generation';
import { ordersOf, totalOf } from './orders';
import { shortestPath } from './shortest-path';
import type { Progress, Solver } from './solver';

/**
 * The packs of each part, in the order of the parts, and what no choice of them can be below, in micros: for certain, or
 * only as far as each order of a part is used up before its next one.
 */
export type PlannedParts = { purchases: Purchase[]; bound: number; isCertain: boolean };

type Answer = PlannedParts & { parts: Part[]; best: number };

/**
 * The cheapest packs for every part. Parts that share no order are planned apart from each other: one that stands alone
 * by the exact path, several that share a supplier's orders by the solver, which has its share of the time.
 *
 * Takes    parts that somebody offers packs for
 */
export function plannedParts(parts: readonly Part[], horizon: Horizon, solver: Solver): PlannedParts {
  const done: Answer[] = parts.filter(standsAlone).map((part) => alone(part, horizon));
  // The smallest first: they leave most of their time to the others.
  const groups = groupsOf(parts.filter((part) => !standsAlone(part))).sort((a, b) => a.length - b.length);
  for (const [index, group] of groups.entries()) {
    const share = group.length / groups.slice(index).reduce((sum, one) => sum + one.length, 0);
    const until = solver.secondsLeft() * (1 - share);
    const told = (own: Progress) =>
      solver.told(addedUp([...done.map((one) => ({ best: one.best, bound: one.bound })), own]));
    done.push(together(group, horizon, { ...solver, told, secondsLeft: () => solver.secondsLeft() - until }));
  }
  const byPart = new Map(done.flatMap(({ parts: its, purchases }) => its.map((part, at) => [part, purchases[at]])));
  const bound = done.reduce((total, one) => total + one.bound, 0);
  return {
    purchases: parts.flatMap((part) => byPart.get(part) ?? []),
    bound,
    isCertain: done.every((one) => one.isCertain),
  };
}

const addedUp = (all: readonly Progress[]): Progress => ({
  best: all.reduce((total, { best }) => total + best, 0),
  bound: all.reduce((total, { bound }) => total + bound, 0),
});

function alone(part: Part, horizon: Horizon): Answer {
  const path = shortestPath(part.need, part.packs, horizon);
  const purchase = purchaseOf(part.need, horizon, path?.bought ?? []);
  const total = path?.total ?? 0;
  return { parts: [part], purchases: [purchase], best: total, bound: total, isCertain: true };
}

function together(parts: Part[], horizon: Horizon, solver: Solver): Answer {
  const habits = [smallestPack, cheapestPerMl].map((habit) => followPolicy(parts, habit, horizon));
  const found = generateColumns(parts, horizon, habits, solver);
  if (found)
    return { parts, purchases: found.purchases, best: found.total, bound: found.bound, isCertain: found.isCertain };
  // No plan is known that every supplier would take. What is bought by habit is still the best that can be said.
  const purchases = parts.map(({ need }, at) => purchaseOf(need, horizon, habits[0]?.[at] ?? []));
  return { parts, purchases, best: totalOf(purchases, ordersOf(purchases)), bound: 0, isCertain: true };
}

/** Parts that share a supplier whose orders cost something, or share one with a part that does. */
function groupsOf(parts: readonly Part[]): Part[][] {
  const groups: { parts: Part[]; suppliers: Set<Supplier> }[] = [];
  for (const part of parts) {
    const its = new Set(part.packs.map(({ offer }) => offer.supplier).filter(hasOrderCost));
    const joined = groups.filter(({ suppliers }) => [...its].some((one) => suppliers.has(one)));
    for (const one of joined) groups.splice(groups.indexOf(one), 1);
    groups.push({
      parts: [...joined.flatMap((one) => one.parts), part],
      suppliers: new Set([...joined.flatMap(({ suppliers }) => [...suppliers]), ...its]),
    });
  }
  return groups.map((group) => group.parts);
}

/** Whether one product's packs can be chosen by themselves: no order costs anything, and no number changes a price. */
const standsAlone = ({ packs }: Part): boolean =>
  packs.every(({ offer, levels }) => levels.length === 1 && !hasOrderCost(offer.supplier));
