import { add, type Exact, exact, fraction, multiply } from '@/shared/quantity/exact';
import type { Solver } from '../buying/solver';
import type { Product } from '../shop';
import type { Priced } from './equivalents';
import { type Season, type SeasonCost, seasonCost } from './season';

/** What a season of so much spray, mL, costs with each of two products. */
type Beside = { seasonMl: Exact; seasons: [SeasonCost | null, SeasonCost | null] };

/**
 * Two products whose order by season cost turns round, and how much spray of a season that takes, mL. `before` is a
 * little nearer to the planned use, where the first is still the cheaper; `behind` is where it no longer is.
 */
export type Flip = { between: [Product, Product]; seasonMl: Exact; isAbove: boolean; before: Beside; behind: Beside };

/** Times the planned use that are looked at, outwards from it. */
const UP = [exact(1n), fraction(3n, 2n), exact(2n), exact(4n), exact(8n), exact(16n)];
const DOWN = [exact(1n), fraction(3n, 4n), fraction(1n, 2n), fraction(1n, 4n), fraction(1n, 8n), fraction(1n, 16n)];

/** A span in which the order turns is halved so often. */
const HALVINGS = 8;

/** Where the ranking flips, and whether all of the span was looked at before the time was over. */
export type BreakEven = { flips: Flip[]; isWhole: boolean };

/**
 * Where the ranking flips: for the best candidate and each other that is allowed, the season's spray below and above the
 * plan at which the other one becomes the cheaper. Whole packs make the cost a staircase, so the nearest step is given,
 * to a few thousandths.
 *
 * Gives    nothing for a pair that keeps its order from a sixteenth of the plan to sixteen times it; what was found so
 *          far when the time is over
 */
export function breakEvens(season: Season, candidates: readonly Priced[], best: Priced, solver: Solver): BreakEven {
  const { sprayMl } = season;
  // A use that nobody knows has no turn that could be told.
  if (!sprayMl) return { flips: [], isWhole: true };
  const others = candidates.filter((one) => one !== best && one.season !== null);
  const found = others.flatMap((other) =>
    [DOWN, UP].map((steps): Flip | 'none' | 'no time' => {
      const turn = firstFlip(steps, (at) => isDearer(season, other, best, solver, at), solver);
      const flip =
        typeof turn === 'string' ? turn : flipOf({ ...season, sprayMl }, [best, other], turn, steps === UP, solver);
      // What is priced when the time is over is no longer the cheapest, and says nothing about the order.
      return solver.secondsLeft() > 0 ? flip : 'no time';
    }),
  );
  return { flips: found.flatMap((one) => (typeof one === 'string' ? [] : one)), isWhole: !found.includes('no time') };
}

function flipOf(
  season: Season & { sprayMl: Exact },
  [best, other]: [Priced, Priced],
  turn: Turn,
  isAbove: boolean,
  solver: Solver,
): Flip {
  const at = (times: Exact): Beside => ({
    seasonMl: multiply(season.sprayMl, times),
    seasons: [seasonAt(season, best, solver, times), seasonAt(season, other, solver, times)],
  });
  const behind = at(turn.outside);
  return {
    between: [best.product, other.product],
    seasonMl: behind.seasonMl,
    isAbove,
    before: at(turn.inside),
    behind,
  };
}

const seasonAt = (season: Season, { ingredient }: Priced, solver: Solver, times: Exact): SeasonCost | null =>
  ingredient && seasonCost(season, ingredient, solver, times);

function isDearer(season: Season, one: Priced, other: Priced, solver: Solver, times: Exact): boolean {
  const [a, b] = [one, other].map((each) => seasonAt(season, each, solver, times)?.total ?? 0);
  return (a ?? 0) >= (b ?? 0);
}

/** Times the planned use: the last at which something still holds, and the next at which it does not. */
type Turn = { inside: Exact; outside: Exact };

/** The first step at which something that holds at the beginning no longer does, halved down to where that is. */
function firstFlip(steps: readonly Exact[], holds: (at: Exact) => boolean, solver: Solver): Turn | 'none' | 'no time' {
  for (const [index, to] of steps.entries()) {
    const from = steps[index - 1];
    if (solver.secondsLeft() <= 0) return 'no time';
    if (!from || holds(to)) continue;
    let [inside, outside] = [from, to];
    for (let turn = 0; turn < HALVINGS; turn++) {
      const middle = multiply(add(inside, outside), fraction(1n, 2n));
      if (holds(middle)) inside = middle;
      else outside = middle;
    }
    return { inside, outside };
  }
  return 'none';
}
