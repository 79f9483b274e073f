import 'server-only';
import type { Instant } from '@/shared/time/instant';
import { byOwner, newestByOwner } from './by-owner';
import { database } from './database';
import { toInstant } from './whole';

/** One version of a recipe: what it said, who saved it and when, and what was sprayed by it. */
export type RecipeVersion = {
  number: number;
  name: string;
  targetPh: number | null;
  useWithinHours: number | null;
  ingredients: { product: string; dose: string; use: string | null; order: number | null }[];
  actor: string;
  savedAt: Instant;
  /** Application records that used this version, the latest first. */
  applications: { id: string; startedAt: Instant }[];
};

/** Every version of a recipe, the one that counts today first. None when there is no such recipe. */
export async function recipeVersions(shopId: string, recipeId: string): Promise<RecipeVersion[]> {
  const { reader } = await database();
  const versions = await reader.recipeVersion.findMany({
    where: { shopId, recipeId },
    orderBy: { number: 'desc' },
    include: { ingredients: { orderBy: { position: 'asc' } } },
  });
  const used = byOwner(await recordsOf(shopId, recipeId), ({ recipeNumber }) => String(recipeNumber));
  return versions.map(({ number, name, targetPh, useWithinHours, ingredients, actor, recordedAt }) => ({
    ...{ number, name, targetPh, useWithinHours, actor },
    savedAt: toInstant(recordedAt),
    ingredients: ingredients.map(({ productId, dose, use, order }) => ({ product: productId, dose, use, order })),
    applications: used(String(number)).map(({ applicationId, startedAt }) => ({
      id: applicationId,
      startedAt: toInstant(startedAt),
    })),
  }));
}

/** An amended record counts as it was amended last, which may have been to another recipe. */
async function recordsOf(shopId: string, recipeId: string) {
  const { reader } = await database();
  const rows = await reader.applicationVersion.findMany({
    where: { shopId, application: { versions: { some: { recipeId } } } },
    orderBy: { number: 'asc' },
    select: { applicationId: true, recipeId: true, recipeNumber: true, startedAt: true },
  });
  const newest = newestByOwner(rows, ({ applicationId }) => applicationId);
  const ids = [...new Set(rows.map(({ applicationId }) => applicationId))];
  return ids
    .flatMap((id) => newest(id) ?? [])
    .filter((row) => row.recipeId === recipeId)
    .sort((a, b) => Number(b.startedAt - a.startedAt));
}
