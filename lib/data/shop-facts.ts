import 'server-only';
import { asItIs } from '@/lib/engine/mix/sprayed-product';
import { treatedPlace, treatedPlants } from '@/lib/engine/record/treated';
import type { Rows } from './database';

/** What turns a size into stock of a product, and how many lots the shop has had. Null when there is no such product. */
export async function productMeasures(rows: Rows, shopId: string, id: string) {
  const product = await rows.product.findUnique({ where: { shopId_id: { shopId, id } } });
  if (!product) return null;
  const form: 'liquid' | 'powder' = product.form === 'powder' ? 'powder' : 'liquid';
  const { densityGPerMl, gramsPerTeaspoon } = product;
  return { form, densityGPerMl, gramsPerTeaspoon, lots: await rows.lot.count({ where: { shopId } }) };
}

/** A recipe in its newest version, with what goes into it and the intervals of its labels. Null when there is none. */
export async function recipeToday(rows: Rows, shopId: string, recipeId: string) {
  const version = await rows.recipeVersion.findFirst({
    where: { shopId, recipeId },
    orderBy: { number: 'desc' },
    include: {
      ingredients: {
        orderBy: { position: 'asc' },
        include: { product: { include: { contents: { orderBy: { position: 'asc' } } } } },
      },
    },
  });
  if (!version) return null;
  return {
    number: version.number,
    products: version.ingredients.map(({ productId, dose, product }) => {
      const { name, registration, contents, reiMinutes } = product;
      const asThen = asItIs({ name, label: { registration }, contents });
      return { product: productId, dose, amount: null, reiMinutes, ...asThen };
    }),
  };
}

/** The first of some benches that the shop does not have; null when it has them all. */
export async function missingBench(rows: Rows, shopId: string, benches: readonly string[]): Promise<string | null> {
  const there = await rows.bench.findMany({ where: { shopId, id: { in: [...benches] } }, select: { id: true } });
  const ids = new Set(there.map(({ id }) => id));
  return benches.find((id) => !ids.has(id)) ?? null;
}

/** How many application records a shop has. */
export const applicationCount = (rows: Rows, shopId: string): Promise<number> =>
  rows.application.count({ where: { shopId } });

/** Which product a lot is of, by where the lot stands in the books. Null when there is no such lot. */
export async function productOfLot(rows: Rows, shopId: string, id: string): Promise<string | null> {
  const lot = await rows.lot.findUnique({ where: { shopId_id: { shopId, id } }, select: { productId: true } });
  return lot?.productId ?? null;
}

/** The plants on some benches, and where those are, as a record keeps them. */
export async function treatedOn(rows: Rows, shopId: string, ids: readonly string[]) {
  const benches = await rows.bench.findMany({
    where: { shopId, id: { in: [...ids] } },
    orderBy: { position: 'asc' },
    include: { plants: { orderBy: { position: 'asc' } } },
  });
  const { address } = await rows.shop.findUniqueOrThrow({ where: { id: shopId }, select: { address: true } });
  return { crop: treatedPlants(benches, null), location: treatedPlace(benches, address) };
}
