import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Exact } from '@/shared/quantity/exact';
import type { Day } from '@/shared/time/day';
import { pricedOn } from '../ahead/price-in-force';
import { keepingAssumed, lotsAssumed } from '../buying/assumed';
import type { Shop } from '../shop';
import { batchFor } from './batch';
import { type MixDocument, mixDocument } from './mix-document';
import { mixSheet } from './mix-sheet';

/** One mix that somebody asks about: a recipe by its id, the finished volume in mL, and the ground for it in m², if any. */
export type MixAsked = { recipe: string; ml: Exact; area: Exact | null };

/**
 * The mix sheet of a finished volume, taken as it is: no loss, no fills.
 *
 * Refuses   'not-found' without such a recipe; 'faults' for a volume of nothing
 */
export function mixAnswerOf(shop: Shop, { recipe: id, ml, area }: MixAsked, today: Day): Outcome<MixDocument> {
  const recipe = shop.recipes.find((one) => one.id === id);
  if (!recipe) return refuse({ code: 'not-found', what: 'recipe', id });
  const batch = batchFor({ kind: 'volume', ml, area }, null);
  if (!batch.ok) return refuse({ code: 'faults', faults: [{ path: 'volume', message: batch.message }] });
  const mixed = new Set(recipe.ingredients.map(({ product }) => product));
  const sheet = mixSheet(pricedOn(shop, today), recipe, batch.value, today);
  const assumed = [...keepingAssumed(shop, mixed), ...lotsAssumed(shop.containers, mixed)];
  return accept(mixDocument(sheet, assumed));
}
