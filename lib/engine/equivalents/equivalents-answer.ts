import { accept, type Outcome, type Refusal, refuse } from '@/shared/outcome';
import type { LeftOut } from '@/shared/shop-file/left-out';
import { pathText } from '@/shared/shop-file/path';
import type { Day } from '@/shared/time/day';
import type { Solver } from '../buying/solver';
import type { Shop } from '../shop';
import { wantedIn } from './candidate';
import { equivalentsOf } from './equivalents';
import { type EquivalentsDocument, equivalentsDocument } from './equivalents-document';

type Ids = { recipe: string; product: string };

/**
 * What could stand in a recipe in the place of one of its products, by their ids.
 *
 * Refuses   'not-found' without such a recipe or product; 'faults' when the recipe does not have the product, or at its
 *           place in the file when no substance of it is known
 */
export function equivalentsAnswerOf(
  shop: Shop,
  asked: Ids,
  when: { today: Day; weeks: number },
  solver: Solver,
  leftOut: readonly LeftOut[] = [],
): Outcome<EquivalentsDocument> {
  const recipe = shop.recipes.find(({ id }) => id === asked.recipe);
  const product = shop.products.find(({ id }) => id === asked.product);
  const fault = equivalentsFault(shop, asked);
  const found = recipe && product && !fault ? equivalentsOf(shop, { recipe, product }, when, solver) : null;
  return found ? accept(equivalentsDocument(found, leftOut)) : refuse(fault ?? nowhere(asked));
}

const nowhere = ({ product }: Ids): Refusal => ({ code: 'not-found', what: 'product', id: product });

/** What is wrong with such a question; null when nothing is. */
export function equivalentsFault(shop: Shop, asked: Ids): Refusal | null {
  const recipe = shop.recipes.find(({ id }) => id === asked.recipe);
  if (!recipe) return { code: 'not-found', what: 'recipe', id: asked.recipe };
  const product = shop.products.find(({ id }) => id === asked.product);
  if (!product) return nowhere(asked);
  const wrong = (path: string, message: string): Refusal => ({ code: 'faults', faults: [{ path, message }] });
  if (!recipe.ingredients.some((one) => one.product === product)) {
    return wrong('product', `${product.name} is not in the recipe ${recipe.name}. Name a product that is.`);
  }
  if (wantedIn(shop, recipe, product)) return null;
  const path = pathText(['products', shop.products.indexOf(product), 'contents']);
  return wrong(path, `Nobody has entered what is in ${product.name}. Enter its contents from the label.`);
}
