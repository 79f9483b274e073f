import 'server-only';
import type { Day } from '@/shared/time/day';
import { byOwner } from '../data/by-owner';
import { chainOf } from '../data/chain-kept';
import { checkRecordsOf, damageIn } from '../data/check-records';
import { keptWith } from '../data/kept';
import { type Draw, drawsForRecords } from '../data/record-draws';
import type { RecordVersion } from '../data/record-versions';
import { type Snapshot, snapshotOf } from '../data/snapshot';
import { type Missing, missingFields } from '../engine/record/required';
import { recordMayGoOn } from '../engine/record/retention';
import { type Seal, sealedName, sealText } from '../engine/record/seal-text';
import type { Application, Product, Shop } from '../engine/shop';

/** Whether a record counts: as it stands, as it stands until an amendment is confirmed, or no longer. */
export type Counting = 'counts' | 'unconfirmed' | 'withdrawn';

/** One record with everything that the books tell of it. */
export type BookRecord = {
  id: string;
  /** What counts of it, as the calculations take it. */
  application: Application;
  /** The first version first. */
  versions: RecordVersion[];
  newest: RecordVersion;
  counting: Counting;
  missing: Missing[];
  /** The first day on which it need no longer be kept. */
  keptUntil: Day;
};

/** Every record of a shop, the last one sprayed first, and the chain over them. */
export type RecordBook = {
  shopId: string;
  shop: Shop;
  records: BookRecord[];
  sealOf: (version: Pick<RecordVersion, 'application' | 'number'>, kind?: Seal['kind']) => Seal | null;
  newestSeal: Seal | null;
  /** What is wrong with the records, naming the first bad one; null when each is as it was sealed. */
  damage: string | null;
};

const books = keptWith<Shop, Promise<RecordBook>>('record books');

/** The book of a shop, checked against its chain as it is read: once for each of its states. */
export async function recordBook(shopId: string): Promise<RecordBook> {
  const snapshot = await snapshotOf(shopId);
  const { shop } = snapshot;
  const book = books.get(shop) ?? readBook(shopId, snapshot);
  books.set(shop, book);
  book.catch(() => books.delete(shop));
  return book;
}

async function readBook(shopId: string, { shop, versions: all }: Snapshot): Promise<RecordBook> {
  const versions = byOwner(all, ({ application }) => application);
  const { seals, faults } = await chainOf(shopId);
  const products = new Map(shop.products.map((product) => [product.id, product]));
  const records = shop.applications.map((application) =>
    bookRecord(shop, application, products, versions(application.id)),
  );
  const lines = new Map(seals.map((seal) => [sealedName(seal), seal]));
  return {
    ...{ shopId, shop, newestSeal: seals.at(-1) ?? null, damage: damageIn(faults) },
    records: records.sort((a, b) => b.newest.startedAt - a.newest.startedAt),
    sealOf: ({ application, number }, kind = 'version') =>
      lines.get(sealedName({ kind, application, version: `${number}` })) ?? null,
  };
}

/** What is read of records only where each is told whole: what was drawn for them, and the texts that are sealed. */
export type RecordsWhole = { drawn: (application: string) => Draw[]; sealed: (seal: Seal) => string | null };

/** What was drawn for some records, by record. */
export async function drawsByRecord(shopId: string, records: readonly BookRecord[]): Promise<RecordsWhole['drawn']> {
  return byOwner(
    await drawsForRecords(
      shopId,
      records.map(({ id }) => id),
    ),
    ({ application }) => application,
  );
}

/** The text whose hash a line of the chain holds, for every line. */
export async function sealedTexts(shopId: string): Promise<RecordsWhole['sealed']> {
  const { things } = await checkRecordsOf(shopId);
  const sealed = new Map(things.map((thing) => [sealedName(thing), thing]));
  return (seal) => {
    const thing = sealed.get(sealedName(seal));
    return thing ? sealText(seal, thing) : null;
  };
}

function bookRecord(
  shop: Shop,
  application: Application,
  products: ReadonlyMap<string, Product>,
  versions: RecordVersion[],
): BookRecord {
  const newest = versions.at(-1);
  if (!newest) throw new RangeError('record book: a record without a version');
  return {
    ...{ id: application.id, application, versions, newest },
    counting: countingOf(newest),
    missing: missingFields(keptOf(newest, products)),
    keptUntil: recordMayGoOn(versions, shop),
  };
}

function countingOf(newest: RecordVersion): Counting {
  if (newest.isPending) return 'unconfirmed';
  return newest.details.withdrawn ? 'withdrawn' : 'counts';
}

const keptOf = ({ startedAt, endedAt, details, products }: RecordVersion, known: ReadonlyMap<string, Product>) => ({
  ...{ startedAt, endedAt, crop: details.crop, location: details.location },
  products: products.map(({ product, name, ...line }) => {
    const today = known.get(product);
    return { ...line, name: name ?? today?.name ?? null, kind: today?.kind ?? ('other' as const) };
  }),
});
