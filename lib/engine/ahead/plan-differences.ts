import { type Micros, minus } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { Flag } from '../rules/flag';
import type { Product } from '../shop';
import type { Plan, ProductAhead } from './plan';

/** So much more, or less, than before. */
export type More = { micros: Micros; isMore: boolean };

/** What another plan of the same products has otherwise. */
export type PlanDifferences = {
  /** What would come up that is not flagged now, and what would be gone. */
  newFlags: Flag[];
  cleared: Flag[];
  /** What the whole plan costs more in product, as far as it is known. Null when more, or less, of it would be known. */
  costMore: More | null;
  wasteMore: More | null;
  /**
   * Products that would run out on another day, or no longer, or for the first time. `isKnown` is false where an amount is
   * unknown then, so that no day does not mean that it lasts.
   */
  runsOut: { product: Product; from: Day | null; to: Day | null; isKnown: boolean }[];
};

/**
 * What a plan would have otherwise than the plan as it is.
 *
 * Takes   both, with the same products in the same order
 */
export function planDifferences(plan: Plan, next: Plan): PlanDifferences {
  const known = new Set(plan.flags.map(nameOf));
  const still = new Set(next.flags.map(nameOf));
  return {
    newFlags: next.flags.filter((flag) => !known.has(nameOf(flag))),
    cleared: plan.flags.filter((flag) => !still.has(nameOf(flag))),
    costMore:
      plan.totals.unknownCosts !== next.totals.unknownCosts
        ? null
        : moreOf(plan.totals.materialCost, next.totals.materialCost),
    wasteMore:
      plan.totals.unknownWaste !== next.totals.unknownWaste
        ? null
        : moreOf(plan.totals.wasteCost, next.totals.wasteCost),
    runsOut: plan.products.flatMap((product, number) => runsOutElse(product, next.products[number])),
  };
}

/** A flag by what it is about, whatever day or figures its sentence names. */
const nameOf = ({ rule, program, benches, product, on }: Flag): string =>
  JSON.stringify([rule, program, benches, product, on]);

const moreOf = (before: Micros, after: Micros): More =>
  after >= before ? { micros: minus(after, before), isMore: true } : { micros: minus(before, after), isMore: false };

function runsOutElse(
  { product, runsOutOn: from, unknownSince }: ProductAhead,
  next: ProductAhead | undefined,
): PlanDifferences['runsOut'] {
  const to = next?.runsOutOn ?? null;
  const isKnown = !next || next.unknownSince === null;
  const isSame = from === to && isKnown === (unknownSince === null);
  return isSame ? [] : [{ product, from, to, isKnown }];
}
