import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';
import type { Solver } from '../buying/solver';
import type { Shop } from '../shop';
import { equivalentsOf } from './equivalents';
import { type EquivalentsDocument, equivalentsDocument } from './equivalents-document';

/**
 * What could stand in a recipe in the place of one of its products, by their ids.
 *
 * Refuses   'not-found' without such a recipe or product; 'faults' when the recipe does not have the product, or no
 *           substance of it is known
 */
export function equivalentsAnswerOf(
  shop: Shop,
  asked: { recipe: string; product: string },
  when: { today: Day; weeks: number },
  solver: Solver,
): Outcome<EquivalentsDocument> {
  const recipe = shop.recipes.find(({ id }) => id === asked.recipe);
  if (!recipe) return refuse({ code: 'not-found', what: 'recipe', id: asked.recipe });
  const product = shop.products.find(({ id }) => id === asked.product);
  if (!product) return refuse({ code: 'not-found', what: 'product', id: asked.product });
  const wrong = (message: string) => refuse({ code: 'faults', faults: [{ path: 'product', message }] });
  if (!recipe.ingredients.some((one) => one.product === product)) {
    return wrong(`${product.name} is not in the recipe ${recipe.name}. Name a product that is.`);
  }
  const found = equivalentsOf(shop, { recipe, product }, when, solver);
  if (!found) return wrong(`Nobody has entered what is in ${product.name}. Enter its contents from the label.`);
  return accept(equivalentsDocument(found));
}
