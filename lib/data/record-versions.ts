import 'server-only';
import type { Instant } from '@/shared/time/instant';
import { byOwner, keyOf, MOST_NAMED } from './by-owner';
import { database, type Rows } from './database';
import type { ApplicationRecord, RecordDetails, SprayedProduct } from './save-records';
import { asInstant, asMicros, asStock } from './whole';

/** Who said that an amendment is right, when and why. */
type Confirmed = { actor: string; recordedAt: Instant; reason: string };

/** One version of a record as it was written: number 1 is the record, a higher one an amendment. */
export type RecordVersion = Omit<ApplicationRecord, 'id' | 'position' | 'startedAt' | 'endedAt'> & {
  application: string;
  startedAt: Instant;
  endedAt: Instant | null;
  recipeName: string;
  actor: string;
  recordedAt: Instant;
  /** Whether it would open a bench earlier, or withdraws the record, and nobody has confirmed that. */
  isPending: boolean;
  confirmed: Confirmed | null;
};

/** Every version of every record of a shop, or of one of them; the first version of each first. */
export async function recordVersions(shopId: string, application?: string): Promise<RecordVersion[]> {
  const { reader } = await database();
  return reader.$transaction((rows) => versionsIn(rows, shopId, application), { maxWait: 10_000, timeout: 30_000 });
}

/** The same out of rows: of all records, of one, or of some. Where too many are named, the others come with them. */
export async function versionsIn(
  rows: Rows,
  shopId: string,
  only?: string | readonly string[],
): Promise<RecordVersion[]> {
  const isNamed = only !== undefined && (typeof only === 'string' || only.length <= MOST_NAMED);
  const which = typeof only === 'string' ? only : { in: [...(only ?? [])] };
  const where = { shopId, ...(isNamed && { applicationId: which }) };
  const versions = await rows.applicationVersion.findMany({
    where,
    orderBy: [{ application: { position: 'asc' } }, { number: 'asc' }],
  });
  const byPosition = { where, orderBy: { position: 'asc' } } as const;
  const owner = ({ applicationId, number }: { applicationId: string; number: number }) => keyOf(applicationId, number);
  const benches = byOwner(await rows.applicationBench.findMany(byPosition), owner);
  const products = byOwner(await rows.applicationProduct.findMany(byPosition), owner);
  const confirmations = byOwner(await rows.amendmentConfirmation.findMany({ where }), owner);
  const recipes = await rows.recipeVersion.findMany({
    where: { shopId },
    select: { recipeId: true, number: true, name: true },
  });
  const named = new Map(recipes.map(({ recipeId, number, name }) => [keyOf(recipeId, number), name]));
  return versions.map((version) => {
    const [confirmation] = confirmations(owner(version));
    return {
      ...{ application: version.applicationId, number: version.number, reason: version.reason },
      ...{ recipe: version.recipeId, recipeNumber: version.recipeNumber, actor: version.actor },
      recipeName: named.get(keyOf(version.recipeId, version.recipeNumber)) ?? version.recipeId,
      benches: benches(owner(version)).map(({ benchId }) => benchId),
      products: products(owner(version)).map(sprayedOf),
      details: detailsOf(version),
      startedAt: asInstant(version.startedAt),
      endedAt: maybe(version.endedAt, asInstant),
      recordedAt: asInstant(version.recordedAt),
      isPending: version.closedUntil !== null && confirmation === undefined,
      confirmed: confirmation ? confirmedOf(confirmation) : null,
    };
  });
}

type Row<T extends (...from: never[]) => Promise<unknown[]>> = Awaited<ReturnType<T>>[number];
type VersionRow = Row<Rows['applicationVersion']['findMany']>;

const sprayedOf = (row: Row<Rows['applicationProduct']['findMany']>): SprayedProduct => ({
  ...{ product: row.productId, dose: row.dose, amount: maybe(row.amount, asStock), reiMinutes: row.reiMinutes },
  ...{ name: row.name, registration: row.registration, actives: row.actives },
});

const confirmedOf = (row: Row<Rows['amendmentConfirmation']['findMany']>): Confirmed => ({
  ...{ actor: row.actor, reason: row.reason, recordedAt: asInstant(row.recordedAt) },
});

/** What cannot be is refused by the contract, for this record alone. */
function detailsOf(row: VersionRow): RecordDetails {
  const { acidProductId, acidAmount } = row;
  return {
    ...{ by: row.sprayedBy, leftoverWent: row.leftoverWent, conditions: row.conditions, plants: row.plants },
    ...{ pH: row.measuredPh, passed: (row.passed ?? []) as RecordDetails['passed'], withdrawn: row.withdrawn === true },
    extra: row.extra === true,
    ...{ temperatureC: row.temperatureC, crop: row.crop, location: row.location },
    sprayed: maybe(row.sprayed, asStock),
    leftover: maybe(row.leftover, asStock),
    acid:
      acidProductId === null || acidAmount === null ? null : { product: acidProductId, amount: asStock(acidAmount) },
    plannedCost: maybe(row.plannedCost, asMicros),
    cost: maybe(row.cost, asMicros),
    mixedAt: maybe(row.mixedAt, asInstant),
    closedUntil: maybe(row.closedUntil, asInstant),
  };
}

const maybe = <T>(stored: bigint | null, read: (stored: bigint) => T): T | null =>
  stored === null ? null : read(stored);
