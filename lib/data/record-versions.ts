import 'server-only';
import { z } from 'zod';
import type { Instant } from '@/shared/time/instant';
import { byOwner, keyOf } from './by-owner';
import { database, type Rows } from './database';
import type { ApplicationRecord, RecordDetails, SprayedProduct } from './save-records';
import { toInstant, toMicros, toStock } from './whole';

/** Who said that an amendment is right, when and why. */
export type Confirmed = { actor: string; recordedAt: Instant; reason: string };

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

/** The same out of rows. */
export async function versionsIn(rows: Rows, shopId: string, application?: string): Promise<RecordVersion[]> {
  const where = { shopId, ...(application !== undefined && { applicationId: application }) };
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
      startedAt: toInstant(version.startedAt),
      endedAt: maybe(version.endedAt, toInstant),
      recordedAt: toInstant(version.recordedAt),
      isPending: version.closedUntil !== null && confirmation === undefined,
      confirmed: confirmation ? confirmedOf(confirmation) : null,
    };
  });
}

type Row<T extends (...from: never[]) => Promise<unknown[]>> = Awaited<ReturnType<T>>[number];
type VersionRow = Row<Rows['applicationVersion']['findMany']>;

const sprayedOf = (row: Row<Rows['applicationProduct']['findMany']>): SprayedProduct => ({
  ...{ product: row.productId, dose: row.dose, amount: maybe(row.amount, toStock), reiMinutes: row.reiMinutes },
  ...{ name: row.name, registration: row.registration, actives: row.actives },
});

const confirmedOf = (row: Row<Rows['amendmentConfirmation']['findMany']>): Confirmed => ({
  ...{ actor: row.actor, reason: row.reason, recordedAt: toInstant(row.recordedAt) },
});

const Passed = z.array(z.object({ rule: z.string(), reason: z.string() })).nullable();

function detailsOf(row: VersionRow): RecordDetails {
  const { acidProductId, acidAmount } = row;
  return {
    ...{ by: row.sprayedBy, leftoverWent: row.leftoverWent, conditions: row.conditions, plants: row.plants },
    ...{ pH: row.measuredPh, passed: Passed.parse(row.passed) ?? [], withdrawn: row.withdrawn === true },
    extra: row.extra === true,
    ...{ temperatureC: row.temperatureC, crop: row.crop, location: row.location },
    sprayed: maybe(row.sprayed, toStock),
    leftover: maybe(row.leftover, toStock),
    acid:
      acidProductId === null || acidAmount === null ? null : { product: acidProductId, amount: toStock(acidAmount) },
    plannedCost: maybe(row.plannedCost, toMicros),
    cost: maybe(row.cost, toMicros),
    mixedAt: maybe(row.mixedAt, toInstant),
    closedUntil: maybe(row.closedUntil, toInstant),
  };
}

const maybe = <T>(stored: bigint | null, read: (stored: bigint) => T): T | null =>
  stored === null ? null : read(stored);
