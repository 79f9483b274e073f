import 'server-only';
import type { Day } from '@/shared/time/day';
import { byOwner } from '../data/by-owner';
import { checkRecordsOf, damageIn } from '../data/check-records';
import { keptWith } from '../data/kept';
import { type Draw, drawsForRecords } from '../data/record-draws';
import { type RecordVersion, recordVersions } from '../data/record-versions';
import { shopOf } from '../data/snapshot';
import { type Missing, missingFields } from '../engine/record/required';
import { recordMayGoOn } from '../engine/record/retention';
import { type Seal, type Sealable, sealedName, sealText } from '../engine/record/seal-text';
import type { Product, Shop } from '../engine/shop';

/** Whether a record counts: as it stands, as it stands until an amendment is confirmed, or no longer. */
export type Counting = 'counts' | 'unconfirmed' | 'withdrawn';

/** One record with everything that the books tell of it. */
export type BookRecord = {
  id: string;
  /** The first version first. */
  versions: RecordVersion[];
  newest: RecordVersion;
  counting: Counting;
  drawn: Draw[];
  missing: Missing[];
  /** The first day on which it need no longer be kept. */
  keptUntil: Day;
};

/** A line of the chain with the text whose hash it holds. */
export type SealShown = Seal & { text: string };

/** Every record of a shop, the last one sprayed first, and the chain over them. */
export type RecordBook = {
  shopId: string;
  shop: Shop;
  records: BookRecord[];
  sealOf: (version: Pick<RecordVersion, 'application' | 'number'>, kind?: Seal['kind']) => SealShown | null;
  newestSeal: Seal | null;
  /** What is wrong with the records, naming the first bad one; null when each is as it was sealed. */
  damage: string | null;
};

const books = keptWith<Shop, Promise<RecordBook>>('record books');

/** The book of a shop, checked against its chain as it is read: once for each of its states. */
export async function recordBook(shopId: string): Promise<RecordBook> {
  const shop = await shopOf(shopId);
  const book = books.get(shop) ?? readBook(shopId, shop);
  books.set(shop, book);
  book.catch(() => books.delete(shop));
  return book;
}

async function readBook(shopId: string, shop: Shop): Promise<RecordBook> {
  const versions = byOwner(await recordVersions(shopId), ({ application }) => application);
  const draws = byOwner(await drawsForRecords(shopId), ({ application }) => application);
  const { things, seals, faults } = await checkRecordsOf(shopId);
  const products = new Map(shop.products.map((product) => [product.id, product]));
  const records = shop.applications.map(({ id }) => bookRecord(shop, products, versions(id), draws(id)));
  return {
    ...{ shopId, shop, newestSeal: seals.at(-1) ?? null, damage: damageIn(faults) },
    records: records.sort((a, b) => b.newest.startedAt - a.newest.startedAt),
    sealOf: sealFinder(things, seals),
  };
}

function bookRecord(
  shop: Shop,
  products: ReadonlyMap<string, Product>,
  versions: RecordVersion[],
  drawn: Draw[],
): BookRecord {
  const newest = versions.at(-1);
  if (!newest) throw new RangeError('record book: a record without a version');
  return {
    ...{ id: newest.application, versions, newest, drawn },
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

function sealFinder(things: readonly Sealable[], seals: readonly Seal[]): RecordBook['sealOf'] {
  const sealed = new Map(things.map((thing) => [sealedName(thing), thing]));
  const lines = new Map(seals.map((seal) => [sealedName(seal), seal]));
  return ({ application, number }, kind = 'version') => {
    const name = sealedName({ kind, application, version: `${number}` });
    const [seal, thing] = [lines.get(name), sealed.get(name)];
    return seal && thing ? { ...seal, text: sealText(seal, thing) } : null;
  };
}
