import type { RecipeLine } from '@/shared/forms/recipe';
import { mixStrength, type SubstanceStrength } from '../engine/mix/mix-strength';
import { readLine } from '../engine/mix/read-line';
import { fromSolution, solutionsFor } from '../engine/mix/thinned-dose';
import type { Ingredient, Product, Recipe, Shop } from '../engine/shop';

/** A line of a recipe that can take a stock solution instead of its product, at an equal dose. */
export type SolutionOffered = {
  recipe: { id: string; name: string };
  /** Its place in the recipe, from 0. */
  line: number;
  product: { id: string; name: string };
  dose: string;
  solution: { id: string; name: string; dose: string; isOnShelf: boolean };
};

/** Every stock solution that the lines of a recipe could be poured from. */
export const solutionsIn = (shop: Shop, recipe: Recipe): SolutionOffered[] =>
  recipe.ingredients.flatMap((ingredient, line) =>
    solutionsFor(shop, ingredient).flatMap((solution) => offered(shop, recipe, { line, ingredient, solution }) ?? []),
  );

type Place = { line: number; ingredient: Ingredient; solution: Product };

function offered(shop: Shop, { id, name }: Recipe, { line, ingredient, solution }: Place): SolutionOffered | null {
  const dose = fromSolution(ingredient, solution);
  if (dose === null) return null;
  const { product } = ingredient;
  const isOnShelf = shop.containers.some((one) => one.product === solution && one.remaining > 0);
  return {
    ...{ recipe: { id, name }, line, product: { id: product.id, name: product.name }, dose: ingredient.dose.text },
    solution: { id: solution.id, name: solution.name, dose, isOnShelf },
  };
}

/** What was put in the place of a line, and how strong the spray is by either. */
export type Replaced = {
  line: number;
  was: { product: string; dose: string; strength: SubstanceStrength[] };
  now: { product: string; dose: string; strength: SubstanceStrength[] };
};

/** Which line of a recipe is to be poured from which stock solution. */
export type ReplaceAsked = { line: number; from: string };

/**
 * A recipe with one line poured from a stock solution, at an equal dose.
 *
 * Gives    null when there is no such line or solution, or no dose of it is equal
 */
export function replacedIn(
  shop: Shop,
  recipe: Recipe,
  { line, from }: ReplaceAsked,
): { typed: Pick<RecipeLine, 'product' | 'dose'>; replaced: Replaced } | null {
  const ingredient = recipe.ingredients[line];
  const solution = ingredient && solutionsFor(shop, ingredient).find(({ id }) => id === from);
  const dose = solution ? fromSolution(ingredient, solution) : null;
  if (!ingredient || !solution || dose === null) return null;
  const typed = { product: solution.id, dose };
  const now = readLine(shop, { ...typed, use: '', order: '' });
  if (!now.ok) return null;
  const said = ({ product, dose }: Ingredient) => {
    return { product: product.name, dose: dose.text, strength: mixStrength([{ product, dose }]).strength };
  };
  return { typed, replaced: { line, was: said(ingredient), now: said(now.value) } };
}
