import 'server-only';
import { plainInstant, plainMoney, plainStock } from '@/lib/engine/exchange/plain-text';
import { Instant } from '@/shared/time/instant';
import { byOwner, keyOf, newestByOwner } from './by-owner';
import type { Rows } from './database';
import { toMicros, toStock, toWhole } from './whole';

/**
 * What was sprayed, as a shop file tells it: of each record the version that counts.
 *
 * Takes    the shop's products, whose form says what an amount is counted in
 */
export async function applicationsOf(rows: Rows, shopId: string, ofShop: readonly { id: string; form: string }[]) {
  const where = { shopId };
  const byPosition = { where, orderBy: { position: 'asc' } } as const;
  const applications = await rows.application.findMany(byPosition);
  const versions = newestByOwner(
    await rows.applicationVersion.findMany({ where, orderBy: { number: 'asc' } }),
    ({ applicationId }) => applicationId,
  );
  const owner = ({ applicationId, number }: { applicationId: string; number: number }) => keyOf(applicationId, number);
  const benches = byOwner(await rows.applicationBench.findMany(byPosition), owner);
  const products = byOwner(await rows.applicationProduct.findMany(byPosition), owner);
  const isPowder = new Set(ofShop.flatMap(({ id, form }) => (form === 'powder' ? [id] : [])));
  const amountText = (productId: string, amount: bigint) =>
    plainStock(toStock(amount), isPowder.has(productId) ? 'powder' : 'liquid');
  return applications.flatMap(({ id }) => {
    const today = versions(id);
    if (!today) return [];
    const key = keyOf(id, today.number);
    return {
      ...{ id, recipe: today.recipeId, benches: benches(key).map(({ benchId }) => benchId) },
      startedAt: moment(today.startedAt),
      endedAt: today.endedAt === null ? null : moment(today.endedAt),
      products: products(key).map(({ productId, dose, amount, reiMinutes }) => ({
        ...{ product: productId, dose },
        amount: amount === null ? null : amountText(productId, amount),
        reiMinutes,
      })),
      ...{ by: today.sprayedBy, leftoverWent: today.leftoverWent, conditions: today.conditions, plants: today.plants },
      sprayed: today.sprayed === null ? null : plainStock(toStock(today.sprayed), 'liquid'),
      leftover: today.leftover === null ? null : plainStock(toStock(today.leftover), 'liquid'),
      pH: today.measuredPh,
      acid: acidOf(today, amountText),
      passed: today.passed,
      plannedCost: today.plannedCost === null ? null : plainMoney(toMicros(today.plannedCost)),
      cost: today.cost === null ? null : plainMoney(toMicros(today.cost)),
    };
  });
}

type Poured = { acidProductId: string | null; acidAmount: bigint | null };

const acidOf = ({ acidProductId, acidAmount }: Poured, amountText: (product: string, amount: bigint) => string) =>
  acidProductId === null || acidAmount === null
    ? null
    : { product: acidProductId, amount: amountText(acidProductId, acidAmount) };

const moment = (stored: bigint): string => plainInstant(Instant.parse(toWhole(stored)));
