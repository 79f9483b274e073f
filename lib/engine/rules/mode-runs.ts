import type { Product, Recipe } from '../shop';
import { withSources } from '../strength/sources';
import { plain } from './in-words';

/** A mode-of-action group in a recipe, as it compares and as it is written, with the first product that brings it. */
export type Mode = { key: string; text: string; product: Product };

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
      for (const text of withSources(product).flatMap(({ label }) => label.modes)) {
        const key = plain(text);
        if (key !== '' && !modes.has(key)) modes.set(key, { key, text: text.trim(), product });
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
 * Gives   of each group how many turns in a row it has come, this one included; nothing for a turn without any group,
 *         which neither counts nor interrupts
 */
export function countTurn(runs: Runs, modes: readonly Mode[]): { mode: Mode; run: number }[] {
  if (modes.length === 0) return [];
  runs.turns += 1;
  return modes.map((mode) => {
    const before = runs.modes.get(mode.key);
    const run = before?.last === runs.turns - 1 ? before.run + 1 : 1;
    runs.modes.set(mode.key, { last: runs.turns, run });
    return { mode, run };
  });
}
