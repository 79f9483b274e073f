import { type Micros, minus } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { Flag } from '../rules/flag';
import type { Product, Program, Shop } from '../shop';
import type { Plan, ProductAhead, Spraying } from './plan';
import { planAhead } from './plan-ahead';

/** Where a spraying goes: a day, and minutes since its midnight. */
export type Place = { day: Day; startMinute: number };

/** What moving one spraying changes of the weeks ahead. */
export type MovedPlan = {
  /** The spraying as it would be; null when the plan does not reach that far. */
  spraying: Spraying | null;
  /** What would be flagged about it, and what would come up elsewhere that is not flagged now. */
  flags: Flag[];
  newElsewhere: Flag[];
  /** How many flags of now would be gone. */
  cleared: number;
  /** What the whole plan costs more in product, as far as it is known. Null when more, or less, of it would be known. */
  costMore: { micros: Micros; isMore: boolean } | null;
  wasteMore: { micros: Micros; isMore: boolean };
  /** Products that would run out on another day, or no longer, or for the first time. */
  runsOut: { product: Product; from: Day | null; to: Day | null }[];
};

/** A shop in which one spraying of a program, by the day on which the program itself has it, is somewhere else. */
export function shopWithMoved(shop: Shop, id: string, on: Day, { day, startMinute }: Place): Shop {
  const moved = { on, kind: 'moved', application: null, movedTo: day, startMinute, reason: null } as const;
  const change = (program: Program): Program => ({
    ...program,
    changes: [...program.changes.filter((one) => one.on !== on), moved],
  });
  return { ...shop, programs: shop.programs.map((program) => (program.id === id ? change(program) : program)) };
}

/**
 * The weeks ahead with one spraying moved, beside the weeks ahead as they are. Nothing is changed by asking.
 *
 * Takes   the plan as it is, the spraying as its program has it, and where it would go
 * Units   micros; runs out on days
 */
export function movedPlan(plan: Plan, id: string, on: Day, place: Place): MovedPlan {
  const next = planAhead(shopWithMoved(plan.shop, id, on, place), plan.today, plan.weeks);
  const isIt = ({ program, date }: Spraying) => program.id === id && date === place.day;
  const own = (flag: Flag) => flag.program === id && flag.on === place.day;
  const known = new Set(plan.flags.map(nameOf));
  const still = new Set(next.flags.map(nameOf));
  return {
    spraying: next.sprayings.find(isIt) ?? null,
    flags: next.flags.filter(own),
    newElsewhere: next.flags.filter((flag) => !own(flag) && !known.has(nameOf(flag))),
    cleared: plan.flags.filter((flag) => !still.has(nameOf(flag))).length,
    costMore:
      plan.totals.unknownCosts !== next.totals.unknownCosts
        ? null
        : moreOf(plan.totals.materialCost, next.totals.materialCost),
    wasteMore: moreOf(plan.totals.wasteCost, next.totals.wasteCost),
    runsOut: plan.products.flatMap((product, number) => runsOutElse(product, next.products[number])),
  };
}

/** A flag by what it is about, whatever day or figures its sentence names. */
const nameOf = ({ rule, program, benches, product, on }: Flag): string =>
  JSON.stringify([rule, program, benches, product, on]);

const moreOf = (before: Micros, after: Micros): MovedPlan['wasteMore'] =>
  after >= before ? { micros: minus(after, before), isMore: true } : { micros: minus(before, after), isMore: false };

function runsOutElse({ product, runsOutOn: from }: ProductAhead, next: ProductAhead | undefined): MovedPlan['runsOut'] {
  const to = next?.runsOutOn ?? null;
  return from === to ? [] : [{ product, from, to }];
}
