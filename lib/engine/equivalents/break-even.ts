import { add, type Exact, exact, fraction, multiply } from '@/shared/quantity/exact';
import type { Solver } from '../buying/solver';
import type { Product } from '../shop';
import type { Priced } from './equivalents';
import { type Season, seasonCost } from './season';

/** Two products whose order by season cost turns round, and how much spray of a season that takes, mL. */
export type Flip = { between: [Product, Product]; seasonMl: Exact };

/** Times the planned use that are looked at, outwards from it. */
const UP = [exact(1n), fraction(3n, 2n), exact(2n), exact(4n), exact(8n), exact(16n)];
const DOWN = [exact(1n), fraction(3n, 4n), fraction(1n, 2n), fraction(1n, 4n), fraction(1n, 8n), fraction(1n, 16n)];

/** A span in which the order turns is halved so often. */
const HALVINGS = 8;

/**
 * Where the ranking flips: for the best candidate and each other that is allowed, the season's spray below and above the
 * plan at which the other one becomes the cheaper. Whole packs make the cost a staircase, so the nearest step is given,
 * to a few thousandths.
 *
 * Gives    nothing for a pair that keeps its order from a sixteenth of the plan to sixteen times it; what was found so
 *          far when the time is over
 */
export function breakEvens(season: Season, candidates: readonly Priced[], best: Priced, solver: Solver): Flip[] {
  const others = candidates.filter((one) => one !== best && one.season !== null);
  return others.flatMap((other) =>
    [DOWN, UP].flatMap((steps): Flip[] => {
      const times = firstFlip(steps, (at) => isDearer(season, other, best, solver, at), solver);
      return times ? [{ between: [best.product, other.product], seasonMl: multiply(season.sprayMl, times) }] : [];
    }),
  );
}

function isDearer(season: Season, one: Priced, other: Priced, solver: Solver, times: Exact): boolean {
  const [a, b] = [one, other].map(({ ingredient }) => ingredient && seasonCost(season, ingredient, solver, times));
  return (a?.total ?? 0) >= (b?.total ?? 0);
}

/** The first step at which something that holds at the beginning no longer does, halved down to where that is. */
function firstFlip(steps: readonly Exact[], holds: (at: Exact) => boolean, solver: Solver): Exact | null {
  for (const [index, to] of steps.entries()) {
    const from = steps[index - 1];
    if (solver.secondsLeft() <= 0) return null;
    if (!from || holds(to)) continue;
    let [inside, outside] = [from, to];
    for (let turn = 0; turn < HALVINGS; turn++) {
      const middle = multiply(add(inside, outside), fraction(1n, 2n));
      if (holds(middle)) inside = middle;
      else outside = middle;
    }
    return outside;
  }
  return null;
}
