import type { Product, Recipe } from '../shop';
import type { Flag, RuleName, Severity } from './flag';
import { flagSpraying } from './raise';
import type { Unflagged } from './unflagged';

/** Something wrong in a recipe, whenever it is sprayed. */
export type Finding = { severity: Severity; product: Product; message: () => string };

/**
 * Flag every planned spraying of a recipe in which a rule finds something. Each recipe is looked at once, however often
 * it is sprayed.
 */
export function flagRecipes({ sprayings }: Unflagged, rule: RuleName, find: (recipe: Recipe) => Finding[]): Flag[] {
  const found = new Map<Recipe, Finding[]>();
  const flags: Flag[] = [];
  for (const spraying of sprayings) {
    const findings = found.get(spraying.recipe) ?? find(spraying.recipe);
    found.set(spraying.recipe, findings);
    for (const { severity, product, message } of findings) {
      flags.push(flagSpraying(spraying, { rule, severity, benches: spraying.program.benches, product }, message));
    }
  }
  return flags;
}
