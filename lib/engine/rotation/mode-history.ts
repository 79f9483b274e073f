import type { Day } from '@/shared/time/day';
import { dayFromNumber } from '@/shared/time/day';
import type { Spraying } from '../ahead/plan';
import { countTurn, modesByRecipe, noRuns } from '../rules/mode-runs';
import { benchMemory, turnsOf } from '../rules/turns';
import type { Unflagged } from '../rules/unflagged';
import type { Bench, Recipe } from '../shop';
import { canRepeat } from './mode-group';

/**
 * A group that a bench gets, and how many times in a row with this turn; whether that is more often than it may come.
 *
 * `group` is written with its sub-group, and `countsAs` is the group that is counted; null for one that is never a repetition.
 */
type ModeInTurn = { group: string; countsAs: string | null; inARow: number; isOver: boolean };

/** A bench is sprayed: on record, or as planned. `modes` is empty when nothing in it has a group. */
type ModeTurn = { day: Day; recipe: Recipe; planned: Spraying | null; modes: ModeInTurn[] };

/** The modes of action that a bench has had and will have, in order. */
export type BenchModes = { bench: Bench; turns: ModeTurn[] };

/**
 * Which modes of action each bench has had, from its records, and will have, as planned, each counted in a row as
 * `mode-repeated` counts them.
 *
 * Gives    the benches in the shop's order, each with its turns in the order of their start
 */
export function modeHistory(plan: Unflagged): BenchModes[] {
  const most = plan.shop.sameModeInARow;
  const modesOf = modesByRecipe();
  const runsOn = benchMemory(noRuns);
  const turns = new Map<string, ModeTurn[]>(plan.shop.benches.map(({ id }) => [id, []]));
  for (const turn of turnsOf(plan)) {
    const { recipe, planned, day } = turn;
    for (const spot of turn.spots) {
      const modes = countTurn(runsOn(spot), modesOf(recipe), most).map(({ mode, run, isOver }) => ({
        group: mode.text,
        countsAs: canRepeat(mode) ? mode.group : null,
        inARow: run,
        isOver,
      }));
      turns.get(spot.bench.id)?.push({ day: dayFromNumber(day), recipe, planned, modes });
    }
  }
  return plan.shop.benches.map((bench) => ({ bench, turns: turns.get(bench.id) ?? [] }));
}
