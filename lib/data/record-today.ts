import 'server-only';
import { z } from 'zod';
import type { Rows } from './database';
import type { ApplicationRecord } from './save-records';
import { toMicros, toStock, toWhole } from './whole';

const Passed = z.array(z.object({ rule: z.string(), reason: z.string() })).nullable();

/** A record as its newest version has it, for whoever amends it. Null when there is none. */
export async function recordToday(
  rows: Rows,
  shopId: string,
  applicationId: string,
): Promise<Pick<ApplicationRecord, 'number' | 'recipe' | 'recipeNumber' | 'products' | 'details'> | null> {
  const version = await rows.applicationVersion.findFirst({
    where: { shopId, applicationId },
    orderBy: { number: 'desc' },
    include: { products: { orderBy: { position: 'asc' } } },
  });
  if (!version) return null;
  const { acidProductId, acidAmount } = version;
  return {
    ...{ number: version.number, recipe: version.recipeId, recipeNumber: version.recipeNumber },
    products: version.products.map(({ productId, dose, amount, reiMinutes, name, registration, actives }) => {
      const asThen = { reiMinutes, name, registration, actives };
      return { product: productId, dose, amount: amount === null ? null : toStock(amount), ...asThen };
    }),
    details: {
      ...{ by: version.sprayedBy, leftoverWent: version.leftoverWent, conditions: version.conditions },
      ...{ pH: version.measuredPh, plants: version.plants, passed: Passed.parse(version.passed) ?? [] },
      sprayed: version.sprayed === null ? null : toStock(version.sprayed),
      leftover: version.leftover === null ? null : toStock(version.leftover),
      acid:
        acidProductId === null || acidAmount === null ? null : { product: acidProductId, amount: toStock(acidAmount) },
      plannedCost: version.plannedCost === null ? null : toMicros(version.plannedCost),
      cost: version.cost === null ? null : toMicros(version.cost),
      ...{ temperatureC: version.temperatureC, crop: version.crop, location: version.location },
      mixedAt: version.mixedAt === null ? null : toWhole(version.mixedAt),
      // An amendment says anew what it keeps closed, and whether it withdraws the record.
      ...{ closedUntil: null, withdrawn: false },
    },
  };
}
