import 'server-only';
import { packOf } from '@/lib/engine/exchange/pack-of';
import { readMoney } from '@/shared/measure/money';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { readInstant } from '@/shared/time/instant';
import type { Rows } from './database';
import { insertMany } from './insert-many';
import { newestVersions } from './save-recipes';
import { parsed, type Saving } from './saving';
import { sealWritten } from './seal-records';
import { realOrNull, small, smallOrNull, toStored, toStoredOrNull } from './whole';
import type { Stamp } from './writer';

type FileApplication = ShopFile['applications'][number];

/** What is on record of a spraying beside what, where and when. */
export type RecordDetails = {
  by: string | null;
  /** µL of spray. */
  sprayed: Stock | null;
  leftover: Stock | null;
  leftoverWent: string | null;
  conditions: string | null;
  pH: number | null;
  acid: { product: string; amount: Stock } | null;
  passed: { rule: string; reason: string }[];
  plannedCost: Micros | null;
  cost: Micros | null;
  plants: string | null;
  mixedAt: number | null;
  temperatureC: number | null;
  crop: string | null;
  location: string | null;
  closedUntil: number | null;
  withdrawn: boolean;
  extra: boolean;
};

export const NO_DETAILS: RecordDetails = {
  by: null,
  sprayed: null,
  leftover: null,
  leftoverWent: null,
  conditions: null,
  pH: null,
  acid: null,
  passed: [],
  plannedCost: null,
  cost: null,
  plants: null,
  mixedAt: null,
  temperatureC: null,
  crop: null,
  location: null,
  closedUntil: null,
  withdrawn: false,
  extra: false,
};

/** One product in it, and what it was called and registered as then. */
export type SprayedProduct = AsThen & {
  product: string;
  dose: string;
  amount: Stock | null;
  reiMinutes: number | null;
};
type AsThen = Record<'name' | 'registration' | 'actives', string | null>;

/** What was sprayed, as it is recorded: number 1 is the record, a higher one an amendment. */
export type ApplicationRecord = {
  id: string;
  position: number;
  number: number;
  /** Why it was amended. */
  reason: string | null;
  recipe: string;
  recipeNumber: number;
  benches: string[];
  startedAt: number;
  endedAt: number | null;
  products: SprayedProduct[];
  details: RecordDetails;
};

/** Save applications that a file in its plain form brings. Changed ones never come here: a record is amended, not edited. */
export async function saveApplications(
  rows: Rows,
  stamp: Stamp,
  file: ShopFile,
  applications: Saving<FileApplication>[],
): Promise<void> {
  const read = recordReader(file);
  const newest = await newestVersions(rows, stamp.shopId);
  await saveRecords(
    rows,
    stamp,
    applications.map(({ item, position }) => ({
      ...{ ...read(item), id: item.id, position, number: 1, reason: null },
      recipeNumber: newest.get(item.recipe) ?? 0,
    })),
  );
}

/** Reads applications of a file in its plain form as they are recorded. */
export function recordReader({ products: ofShop }: Pick<ShopFile, 'products'>) {
  const products = new Map(ofShop.map((product) => [product.id, product]));
  return (item: FileApplication) => ({
    ...{ recipe: item.recipe, benches: item.benches },
    startedAt: parsed(readInstant(item.startedAt)),
    endedAt: momentOf(item.endedAt),
    products: sprayedProducts(item.products, products),
    details: detailsOf(item, products),
  });
}

type Products = Map<string, ShopFile['products'][number]>;

const sprayedProducts = (recorded: FileApplication['products'], products: Products): SprayedProduct[] =>
  recorded.map(({ product, amount, reiMinutes, ...asThen }) => {
    return { ...asThen, product, amount: amountOf(product, amount, products), reiMinutes: smallOrNull(reiMinutes) };
  });

const detailsOf = (item: FileApplication, products: Products): RecordDetails => ({
  ...{ by: item.by, leftoverWent: item.leftoverWent, conditions: item.conditions, plants: item.plants },
  ...{ pH: item.pH, passed: item.passed },
  sprayed: sprayOf(item.sprayed),
  leftover: sprayOf(item.leftover),
  acid: acidOf(item.acid, products),
  plannedCost: item.plannedCost === null ? null : parsed(readMoney(item.plannedCost)),
  cost: item.cost === null ? null : parsed(readMoney(item.cost)),
  ...{ temperatureC: item.temperatureC, crop: item.crop, location: item.location, withdrawn: item.withdrawn },
  extra: item.extra,
  mixedAt: momentOf(item.mixedAt),
  closedUntil: momentOf(item.closedUntil),
});

const momentOf = (text: string | null): number | null => (text === null ? null : parsed(readInstant(text)));

const WATER = { form: 'liquid', densityGPerMl: null, gramsPerTeaspoon: null } as const;
const sprayOf = (text: string | null): Stock | null => (text === null ? null : packOf(text, WATER));

function acidOf(acid: FileApplication['acid'], products: Products): RecordDetails['acid'] {
  const amount = acid && amountOf(acid.product, acid.amount, products);
  return acid && amount !== null ? { product: acid.product, amount } : null;
}

function amountOf(product: string, text: string | null, products: Products): Stock | null {
  const of = products.get(product);
  return of && text !== null ? packOf(text, of) : null;
}

/** Write application records and amendments, which only grow, and seal each of them. */
export async function saveRecords(rows: Rows, stamp: Stamp, records: ApplicationRecord[]): Promise<void> {
  const { shopId } = stamp;
  stamp.touched.add(
    'applications',
    records.map(({ id }) => id),
  );
  const first = records.filter(({ number }) => number === 1);
  await insertMany(
    rows,
    'Application',
    first.map(({ id, position }) => ({ shopId, id, position: small(position) })),
  );
  await insertVersions(rows, stamp, records);
  const written = records.map(({ id, number }) => ({ kind: 'version' as const, application: id, version: number }));
  await sealWritten(rows, stamp, written);
}

/** The rows of versions with their benches and products. */
async function insertVersions(rows: Rows, stamp: Stamp, records: readonly ApplicationRecord[]): Promise<void> {
  const { shopId, commandId, actor } = stamp;
  const recordedAt = toStored(stamp.recordedAt);
  await insertMany(
    rows,
    'ApplicationVersion',
    records.map(({ id, number, recipe, recipeNumber, startedAt, endedAt, reason, details }) => ({
      ...{ shopId, applicationId: id, number, recipeId: recipe, recipeNumber, reason, actor, commandId, recordedAt },
      startedAt: toStored(startedAt),
      endedAt: toStoredOrNull(endedAt),
      ...detailColumns(details),
    })),
  );
  await insertMany(
    rows,
    'ApplicationBench',
    records.flatMap(({ id: applicationId, number, benches }) =>
      benches.map((benchId, position) => ({ shopId, applicationId, number, position, benchId })),
    ),
  );
  await insertMany(
    rows,
    'ApplicationProduct',
    records.flatMap(({ id: applicationId, number, products }) =>
      products.map(({ product, amount, ...line }, position) => {
        const keys = { shopId, applicationId, number, position };
        return { ...keys, ...line, productId: product, amount: toStoredOrNull(amount) };
      }),
    ),
  );
}

const detailColumns = (details: RecordDetails) => ({
  sprayedBy: details.by,
  sprayed: toStoredOrNull(details.sprayed),
  leftover: toStoredOrNull(details.leftover),
  leftoverWent: details.leftoverWent,
  conditions: details.conditions,
  measuredPh: realOrNull(details.pH),
  acidProductId: details.acid?.product ?? null,
  acidAmount: toStoredOrNull(details.acid?.amount ?? null),
  passed: details.passed,
  plannedCost: toStoredOrNull(details.plannedCost),
  cost: toStoredOrNull(details.cost),
  plants: details.plants,
  mixedAt: toStoredOrNull(details.mixedAt),
  temperatureC: realOrNull(details.temperatureC),
  crop: details.crop,
  location: details.location,
  closedUntil: toStoredOrNull(details.closedUntil),
  withdrawn: details.withdrawn,
  // Null in the records written before there was such a column.
  extra: details.extra || null,
});
