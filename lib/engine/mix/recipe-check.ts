import { type RecipeDraft, recipeOfDraft } from '@/shared/forms/recipe';
import { isBlank } from '@/shared/forms/sent-fields';
import { type Micros, sum } from '@/shared/quantity/amounts';
import { divide, exact, multiply } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { longestReiOf } from '../keepout/reopening';
import type { Severity } from '../rules/flag';
import { mixFindings } from '../rules/must-not-mix';
import { phFindings } from '../rules/ph-outside-range';
import type { Finding } from '../rules/recipe-findings';
import { reiFindings } from '../rules/rei-unknown';
import type { Ingredient, Recipe, Shop } from '../shop';
import { type CheckedLine, checkedLine, type LineFault } from './line-check';
import { type ElementStrength, mixStrength, type SubstanceStrength } from './mix-strength';
import { orderOfAddition } from './order';
import { readLine } from './read-line';
import { wearingFor } from './wearing';

/** What a recipe comes to, as far as it can be read. */
export type RecipeCheck = {
  /** One for each line that was typed, in its place; null for a line in which there is nothing yet. */
  lines: (CheckedLine | LineFault | null)[];
  /** The lines in the order in which they go in, by their place among the typed ones. */
  order: { line: number; name: string; overriddenBy: 'recipe' | 'product' | null; why: string }[];
  /** What a full fill of the first sprayer costs, and a litre. Null as soon as one line has no cost. */
  costPerFill: Micros | null;
  costPerLitre: Micros | null;
  /** What to enter before the cost is known. Empty when it is. */
  toKnowCost: string[];
  strength: SubstanceStrength[];
  elements: ElementStrength[];
  /** Whole minutes until people may go back in; null when a label does not say. */
  reiMinutes: number | null;
  equipment: string[];
  flags: { severity: Severity; message: string }[];
};

/**
 * What a recipe comes to while it is being typed: amounts, strength, cost, label and order, line by line and together.
 *
 *   cost per litre = Σ rate of each line × the unit price of the cheapest offer of its product
 *
 * Nothing is saved, and nothing that cannot be read stops the rest from being worked out.
 *
 * Takes    the shop, and the recipe as it was typed
 * Gives    a cost of null as soon as one line has none
 */
export function recipeCheck(shop: Shop, draft: RecipeDraft): RecipeCheck {
  const reads = draft.lines.map((line) => (isBlank(line) ? null : readLine(shop, line)));
  const ingredients = reads.flatMap((each) => (each?.ok ? [each.value] : []));
  const recipe = recipeWith(draft, ingredients);
  const lines = reads.map((each) =>
    each === null ? null : each.ok ? checkedLine(shop, recipe, each.value) : each.fault,
  );
  const mixed = recipe.ingredients;
  return {
    lines,
    order: orderOfAddition(mixed).map(({ ingredient, overriddenBy, why }) => ({
      line: reads.findIndex((each) => each?.ok && each.value === ingredient),
      name: ingredient.product.name,
      overriddenBy,
      why,
    })),
    ...costOf(shop, lines),
    ...mixStrength(mixed),
    reiMinutes: longestReiOf(mixed.map(({ product }) => product)),
    equipment: wearingFor([...new Set(mixed.map(({ product }) => product))]).equipment,
    flags: flagsOf(shop, recipe),
  };
}

/** The recipe that was typed, with what of its ingredients can be read. */
function recipeWith(draft: RecipeDraft, ingredients: Ingredient[]): Recipe {
  const { recipe } = recipeOfDraft('', draft);
  return { id: '', name: draft.name, targetPh: recipe.targetPh ?? null, useWithin: null, ingredients };
}

function costOf(
  { sprayer }: Shop,
  lines: RecipeCheck['lines'],
): Pick<RecipeCheck, 'costPerLitre' | 'costPerFill' | 'toKnowCost'> {
  const typed = lines.flatMap((line) => line ?? []);
  const toKnowCost = typed.flatMap((line) => (line.kind === 'fault' ? UNREADABLE : (line.cost.missing ?? [])));
  const known = typed.flatMap((line) => (line.kind === 'read' ? (line.cost.perLitre ?? []) : []));
  const isKnown = typed.length > 0 && known.length === typed.length;
  const costPerLitre = isKnown ? sum(known) : null;
  const litres = divide(sprayer.capacity, exact(1000n));
  return {
    costPerLitre,
    costPerFill: costPerLitre === null ? null : wholeNearest<Micros>(multiply(exact(costPerLitre), litres)),
    toKnowCost: [...new Set(toKnowCost)],
  };
}

const UNREADABLE = 'Put the lines right that cannot be read.';

function flagsOf(shop: Shop, recipe: Recipe): RecipeCheck['flags'] {
  const findings = [...mixFindings(recipe), ...phFindings(recipe, shop.water), ...reiFindings(recipe)];
  return [...findings.map(said), ...archivedIn(recipe)];
}

const said = ({ severity, message }: Finding) => ({ severity, message: message() });

const archivedIn = ({ ingredients }: Recipe): RecipeCheck['flags'] =>
  [...new Set(ingredients.map(({ product }) => product))]
    .filter(({ archived }) => archived)
    .map(({ name }) => ({
      severity: 'note',
      message: `${name} was put away and is bought no more. Replace it before it runs out.`,
    }));
