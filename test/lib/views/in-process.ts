import { candidatesFor, wantedIn } from '@/lib/engine/equivalents/candidate';
import { type CurvePoint, type Equivalents, equivalentsOf, seasonCurve } from '@/lib/engine/equivalents/equivalents';
import { seasonOf } from '@/lib/engine/equivalents/season';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import type { Asked } from '@/lib/solver/asked';
import { highsSolver } from '@/lib/solver/highs';

/**
 * What a thread of its own answers about equivalents, worked out here and with all the time it takes: a busy machine then
 * changes no answer.
 */
export async function inProcess(asked: Asked): Promise<Equivalents | CurvePoint[] | null> {
  if (asked.what === 'purchase plan') throw new Error('a plan is searched for on its thread');
  const solver = await highsSolver({ secondsLeft: () => 60, told: () => {} });
  const shop = shopOfFile(asked.file);
  const recipe = shop.recipes.find(({ id }) => id === asked.recipe);
  const product = shop.products.find(({ id }) => id === asked.product);
  if (!recipe || !product) return null;
  if (asked.what === 'equivalents') return equivalentsOf(shop, { recipe, product }, asked, solver);
  const wanted = wantedIn(shop, recipe, product);
  const all = wanted ? candidatesFor(shop, wanted) : [];
  const ingredients = asked.candidates.flatMap((id) => all.find((one) => one.product.id === id)?.ingredient ?? []);
  return seasonCurve(seasonOf(shop, recipe, asked.today, asked.weeks), ingredients, solver, 6);
}
