import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Rows } from './database';
import { minutesDown, newRows, type Saving } from './saving';
import { realOrNull, smallOrNull, toStored } from './whole';
import type { Stamp } from './writer';

type FileRecipe = ShopFile['recipes'][number];

/** Save recipes. One that changes gets a further version; what was sprayed by the old one keeps it. */
export async function saveRecipes(rows: Rows, stamp: Stamp, recipes: Saving<FileRecipe>[]): Promise<void> {
  const { shopId, commandId, actor } = stamp;
  await rows.recipe.createMany({ data: newRows(shopId, recipes, () => ({})) });
  const newest = await newestVersions(rows, shopId);
  const versions = recipes.map(({ item }) => ({ item, number: (newest.get(item.id) ?? 0) + 1 }));
  await rows.recipeVersion.createMany({
    data: versions.map(({ item: { id, name, targetPh, useWithinHours }, number }) => ({
      ...{ shopId, recipeId: id, number, name, commandId, actor, recordedAt: toStored(stamp.recordedAt) },
      targetPh: realOrNull(targetPh),
      useWithinHours: realOrNull(useWithinHours),
      useWithinMinutes: minutesDown(useWithinHours),
    })),
  });
  await rows.ingredient.createMany({
    data: versions.flatMap(({ item, number }) =>
      item.ingredients.map(({ product, dose, use, order }, position) => {
        const line = { productId: product, dose, use, order: smallOrNull(order) };
        return { shopId, recipeId: item.id, number, position, ...line };
      }),
    ),
  });
}

/** The number of each recipe's newest version. */
export async function newestVersions(rows: Rows, shopId: string): Promise<Map<string, number>> {
  const versions = await rows.recipeVersion.groupBy({ by: ['recipeId'], where: { shopId }, _max: { number: true } });
  return new Map(versions.map(({ recipeId, _max }) => [recipeId, _max.number ?? 0]));
}
