import type { Spraying } from '../ahead/plan';
import type { Product, Program, Recipe } from '../shop';
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

/**
 * The same for what depends on the benches and their spray as well: each program's use of a recipe is looked at once,
 * since neither changes from one day to the next.
 */
export function flagBatches({ sprayings }: Unflagged, rule: RuleName, find: (batch: Batch) => Finding[]): Flag[] {
  const found = new Map<Program, Map<Recipe, Finding[]>>();
  const flags: Flag[] = [];
  for (const spraying of sprayings) {
    const { program, recipe } = spraying;
    const ofProgram = found.get(program) ?? new Map<Recipe, Finding[]>();
    const findings = ofProgram.get(recipe) ?? find(spraying);
    found.set(program, ofProgram.set(recipe, findings));
    for (const { severity, product, message } of findings) {
      flags.push(flagSpraying(spraying, { rule, severity, benches: program.benches, product }, message));
    }
  }
  return flags;
}

/** A recipe as one program sprays it. */
export type Batch = Pick<Spraying, 'recipe' | 'program' | 'spray'>;
