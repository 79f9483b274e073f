import { type Exact, exact, multiply } from '@/shared/quantity/exact';
import type { Application, Ingredient, Product } from '../shop';
import { type Ground, ratePerMl } from '../strength/dose-in-stock';

/** Two products of a mix that the shop's records never had in one tank. */
export type UntriedPair = [Product, Product];

/**
 * The pairs of a mix that ought to be tried in a jar first, since nothing on record had both of them in it.
 *
 * Takes    what is mixed, and the shop's applications
 * Gives    each pair once, in the order of the recipe
 */
export function untriedPairs(ingredients: readonly Ingredient[], applications: readonly Application[]): UntriedPair[] {
  const products = [...new Set(ingredients.map(({ product }) => product))];
  const tanks = new Set(applications.map(({ recipe }) => recipe));
  const together = (one: Product, other: Product): boolean =>
    [...tanks].some((tank) => holds(tank.ingredients, one) && holds(tank.ingredients, other));
  return products.flatMap((one, at) =>
    products.slice(at + 1).flatMap((other) => (together(one, other) ? [] : [[one, other] satisfies UntriedPair])),
  );
}

const holds = (ingredients: readonly Ingredient[], product: Product): boolean =>
  ingredients.some((ingredient) => ingredient.product.id === product.id);

/** Half a litre: a jar that everyone has. */
const JAR_ML = exact(500n);

/** How long a jar stands before it is judged. Source: Utah State University Extension, "Using a Jar Test", 2012. */
export const JAR_STANDS_MINUTES = 15;

/**
 * What goes into a jar of half a litre: everything in the proportion of the recipe, in the order of addition.
 *
 * Gives    null for a dose that cannot be turned into an amount
 * Units    µL of a liquid, mg of a powder, exact
 */
export function jarAmount({ dose, product }: Ingredient, ground: Ground): Exact | null {
  const rate = ratePerMl(dose, product, ground);
  return rate && multiply(rate, JAR_ML);
}
