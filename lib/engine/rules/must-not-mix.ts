import type { Product, Recipe } from '../shop';
import type { Flag } from './flag';
import { plain } from './in-words';
import { type Finding, flagRecipes } from './recipe-findings';
import type { Unflagged } from './unflagged';

/**
 * Two products in one tank that a label keeps apart.
 *
 * Looks at  every pair of different products in a recipe, and what each label must not be mixed with
 * Fires     when an entry is the other's id, name, one of its substances, its kind or its formulation, whatever the case;
 *           once for a pair, on the product whose label says it
 * Severity  stop
 * Cleared   by taking one of the two out of the recipe
 */
export const mustNotMix = (plan: Unflagged): Flag[] => flagRecipes(plan, 'must-not-mix', mixFindings);

/** The pairs of a mix that a label keeps apart. */
export function mixFindings({ ingredients }: Pick<Recipe, 'ingredients'>): Finding[] {
  const products = [...new Set(ingredients.map(({ product }) => product))];
  return products.flatMap((one, index) =>
    products.slice(index + 1).flatMap((other) => finding(one, other) ?? finding(other, one) ?? []),
  );
}

function finding(product: Product, other: Product): Finding | null {
  const names = wordsFor(other);
  const entry = product.label.doNotMixWith.find((words) => names.has(plain(words)));
  if (entry === undefined) return null;
  const what = plain(entry) === plain(other.name) ? '' : `, and ${other.name} is that`;
  return {
    severity: 'stop',
    product,
    message: () =>
      `The label of ${product.name} says not to mix it with ${entry.trim()}${what}. Take ${product.name} or ${other.name} out of this recipe and spray it on its own.`,
  };
}

/** Every word by which a label may keep something apart from a product. */
export function wordsFor({ id, name, kind, formulation, contents }: Product): Set<string> {
  const words = [id, name, kind, formulation ?? '', ...contents.map(({ substance }) => substance)].map(plain);
  return new Set(words.filter((word) => word !== ''));
}
