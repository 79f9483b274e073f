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
  const confirmed = new Set((await rows.amendmentConfirmation.findMany({ where })).map((line) => owner(line)));
  const isConfirmed = (applicationId: string, number: number) => confirmed.has(keyOf(applicationId, number));
  const isPowder = new Set(ofShop.flatMap(({ id, form }) => (form === 'powder' ? [id] : [])));
  const amountText = (productId: string, amount: bigint) =>
    plainStock(toStock(amount), isPowder.has(productId) ? 'powder' : 'liquid');
  return applications.flatMap(({ id }) => {
    const today = versions(id);
    if (!today) return [];
    const key = keyOf(id, today.number);
    return [
      {
        ...{ id, recipe: today.recipeId, benches: benches(key).map(({ benchId }) => benchId) },
        products: products(key).map(({ productId, dose, amount, reiMinutes, name, registration, actives }) => ({
          ...{ product: productId, dose, reiMinutes, name, registration, actives },
          amount: amount === null ? null : amountText(productId, amount),
        })),
        acid: acidOf(today, amountText),
        ...detailsOf(today),
        closedUntil: isConfirmed(id, today.number) ? null : momentOrNull(today.closedUntil),
      },
    ];
  });
}

type Version = NonNullable<Awaited<ReturnType<Rows['applicationVersion']['findFirst']>>>;

const detailsOf = (version: Version) => ({
  startedAt: moment(version.startedAt),
  endedAt: momentOrNull(version.endedAt),
  mixedAt: momentOrNull(version.mixedAt),
  ...{ by: version.sprayedBy, leftoverWent: version.leftoverWent, conditions: version.conditions },
  ...{ plants: version.plants, crop: version.crop, location: version.location, temperatureC: version.temperatureC },
  sprayed: sprayOrNull(version.sprayed),
  leftover: sprayOrNull(version.leftover),
  ...{ pH: version.measuredPh, passed: version.passed, withdrawn: version.withdrawn === true },
  plannedCost: moneyOrNull(version.plannedCost),
  cost: moneyOrNull(version.cost),
});

const sprayOrNull = (stored: bigint | null) => (stored === null ? null : plainStock(toStock(stored), 'liquid'));
const moneyOrNull = (stored: bigint | null) => (stored === null ? null : plainMoney(toMicros(stored)));

type Poured = { acidProductId: string | null; acidAmount: bigint | null };

const acidOf = ({ acidProductId, acidAmount }: Poured, amountText: (product: string, amount: bigint) => string) =>
  acidProductId === null || acidAmount === null
    ? null
    : { product: acidProductId, amount: amountText(acidProductId, acidAmount) };

const moment = (stored: bigint): string => plainInstant(Instant.parse(toWhole(stored)));
const momentOrNull = (stored: bigint | null): string | null => (stored === null ? null : moment(stored));
