import type { Day } from '@/shared/time/day';
import type { Flag } from '../rules/flag';
import type { Program, Shop } from '../shop';
import type { Plan, Spraying } from './plan';
import { planAhead } from './plan-ahead';
import { type PlanDifferences, planDifferences } from './plan-differences';

/** Where a spraying goes: a day, and minutes since its midnight. */
export type Place = { day: Day; startMinute: number };

/** What moving one spraying changes of the weeks ahead. */
export type MovedPlan = Pick<PlanDifferences, 'costMore' | 'wasteMore' | 'runsOut'> & {
  /** The spraying as it would be; null when the plan does not reach that far. */
  spraying: Spraying | null;
  /** What would be flagged about it, and what would come up elsewhere that is not flagged now. */
  flags: Flag[];
  newElsewhere: Flag[];
  /** How many flags of now would be gone. */
  cleared: number;
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
  const { newFlags, cleared, ...more } = planDifferences(plan, next);
  return {
    ...more,
    spraying: next.sprayings.find(isIt) ?? null,
    flags: next.flags.filter(own),
    newElsewhere: newFlags.filter((flag) => !own(flag)),
    cleared: cleared.length,
  };
}
