import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import { readInstant } from '@/shared/time/instant';
import type { Rows } from './database';
import { minutesDown, minutesUp, parsed, type Saving } from './saving';
import { realOrNull, small, smallOrNull, toStored } from './whole';
import type { Stamp } from './writer';

type FileRecipe = ShopFile['recipes'][number];
type FileApplication = ShopFile['applications'][number];

/** Save recipes. One that changes gets a further version; what was sprayed by the old one keeps it. */
export async function saveRecipes(rows: Rows, stamp: Stamp, recipes: Saving<FileRecipe>[]): Promise<void> {
  const { shopId, commandId, actor } = stamp;
  const fresh = recipes.filter(({ isNew }) => isNew);
  await rows.recipe.createMany({
    data: fresh.map(({ item, position }) => ({ shopId, id: item.id, position: small(position) })),
  });
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

/** Save applications that a file brings. Changed ones never come here: a record is amended, not edited. */
export async function saveApplications(
  rows: Rows,
  stamp: Stamp,
  file: ShopFile,
  applications: Saving<FileApplication>[],
): Promise<void> {
  const recipes = new Map(file.recipes.map((recipe) => [recipe.id, recipe]));
  const products = new Map(file.products.map((product) => [product.id, product]));
  const newest = await newestVersions(rows, stamp.shopId);
  await saveRecords(
    rows,
    stamp,
    applications.map(({ item, position }) => ({
      ...{ id: item.id, position, number: 1, reason: null, recipe: item.recipe, benches: item.benches },
      recipeNumber: newest.get(item.recipe) ?? 0,
      startedAt: parsed(readInstant(item.startedAt)),
      endedAt: item.endedAt === null ? null : parsed(readInstant(item.endedAt)),
      products: (recipes.get(item.recipe)?.ingredients ?? []).map(({ product, dose }) => {
        return { product, dose, reiMinutes: minutesUp(products.get(product)?.label.reiHours ?? null) };
      }),
    })),
  );
}

/** What was sprayed, as it is recorded: number 1 is the record, a higher one an amendment. */
export type ApplicationRecord = {
  id: string;
  position: number;
  number: number;
  reason: string | null;
  recipe: string;
  recipeNumber: number;
  benches: string[];
  startedAt: number;
  endedAt: number | null;
  products: { product: string; dose: string; reiMinutes: number | null }[];
};

/** Write application records and amendments, which only grow. */
export async function saveRecords(rows: Rows, stamp: Stamp, records: ApplicationRecord[]): Promise<void> {
  const { shopId, commandId, actor } = stamp;
  const recordedAt = toStored(stamp.recordedAt);
  const first = records.filter(({ number }) => number === 1);
  await rows.application.createMany({ data: first.map(({ id, position }) => ({ shopId, id, position })) });
  await rows.applicationVersion.createMany({
    data: records.map(({ id, number, recipe, recipeNumber, startedAt, endedAt, reason }) => ({
      ...{ shopId, applicationId: id, number, recipeId: recipe, recipeNumber, reason, actor, commandId, recordedAt },
      startedAt: toStored(startedAt),
      endedAt: endedAt === null ? null : toStored(endedAt),
    })),
  });
  await rows.applicationBench.createMany({
    data: records.flatMap(({ id: applicationId, number, benches }) =>
      benches.map((benchId, position) => ({ shopId, applicationId, number, position, benchId })),
    ),
  });
  await rows.applicationProduct.createMany({
    data: records.flatMap(({ id: applicationId, number, products }) =>
      products.map(({ product, dose, reiMinutes }, position) => {
        return { shopId, applicationId, number, position, productId: product, dose, reiMinutes };
      }),
    ),
  });
}
