import type { Product, Recipe } from '../shop';
import { withSources } from '../strength/sources';
import type { Flag } from './flag';
import { plain } from './in-words';
import { type Finding, flagRecipes } from './recipe-findings';
import type { Unflagged } from './unflagged';

/**
 * Two products in one tank that a label keeps apart.
 *
 * Looks at  every pair of different products in a recipe, and what each label must not be mixed with; what a stock solution
 *           is made from stands beside it, and is never kept apart from the solution itself
 * Fires     when an entry is the other's id, name, one of its substances, its kind or its formulation, whatever the case;
 *           once for a pair of the recipe, on the product whose label says it
 * Severity  stop
 * Cleared   by taking one of the two out of the recipe
 */
export const mustNotMix = (plan: Unflagged): Flag[] => flagRecipes(plan, 'must-not-mix', mixFindings);

/** The pairs of a mix that a label keeps apart. */
export function mixFindings({ ingredients }: Pick<Recipe, 'ingredients'>): Finding[] {
  const products = [...new Set(ingredients.map(({ product }) => product))];
  return products.flatMap((one, index) =>
    products.slice(index).flatMap((other) => keptApart(withSources(one), withSources(other)) ?? []),
  );
}

/** The first pair between two products of a mix, or between what they are made from. */
function keptApart(these: readonly Product[], others: readonly Product[]): Finding | null {
  for (const one of these) {
    for (const other of others) {
      const found = isOfTheOther(one, other) ? null : (finding(one, other) ?? finding(other, one));
      if (found) return found;
    }
  }
  return null;
}

/** Whether they are one product, or one is made from the other. */
const isOfTheOther = (one: Product, other: Product): boolean =>
  withSources(one).includes(other) || withSources(other).includes(one);

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
