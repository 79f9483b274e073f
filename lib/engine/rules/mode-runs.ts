import { canRepeat, type ModeGroup, modesOf, mostInARow } from '../rotation/mode-group';
import type { Product, Recipe } from '../shop';

/** A mode-of-action group in a recipe, with the first product that brings it. */
export type Mode = ModeGroup & { product: Product };

/** A mode on a bench: how many times in a row it has come with this turn, and whether that is more often than it may. */
export type CountedMode = { mode: Mode; run: number; isOver: boolean };

/** How many turns with any group a bench has had, and for each group its last one, and how many in a row that was. */
export type Runs = { turns: number; modes: Map<string, { last: number; run: number }> };

export const noRuns = (): Runs => ({ turns: 0, modes: new Map() });

/**
 * Each mode of a recipe once, worked out once for each recipe. A stock solution brings the groups of what it is made from;
 * a product of several groups brings each of them.
 */
export function modesByRecipe(): (recipe: Recipe) => readonly Mode[] {
  const known = new Map<Recipe, Mode[]>();
  return (recipe) => {
    const before = known.get(recipe);
    if (before) return before;
    const modes = new Map<string, Mode>();
    for (const { product } of recipe.ingredients) {
      for (const mode of modesOf(product)) {
        if (!modes.has(mode.group)) modes.set(mode.group, { ...mode, product });
      }
    }
    const found = [...modes.values()];
    known.set(recipe, found);
    return found;
  };
}

/**
 * Count one more turn on a bench.
 *
 * Takes   how often in a row the shop allows a group
 * Gives   of each group how many turns in a row it has come, this one included; 1 for a group that is never a repetition;
 *         nothing for a turn without any group, which neither counts nor interrupts
 */
export function countTurn(runs: Runs, modes: readonly Mode[], shopAllows: number): CountedMode[] {
  if (modes.length === 0) return [];
  runs.turns += 1;
  return modes.map((mode) => {
    const before = runs.modes.get(mode.group);
    const run = canRepeat(mode) && before?.last === runs.turns - 1 ? before.run + 1 : 1;
    runs.modes.set(mode.group, { last: runs.turns, run });
    return { mode, run, isOver: run > mostInARow(mode, shopAllows) };
  });
}
