import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import { byOwner, inParts, keyOf, newestByOwner } from './by-owner';
import type { Rows } from './database';
import { insertMany, updateMany } from './insert-many';
import { minutesUp, newRows, type Saving, storedMoney } from './saving';
import { real, realOrNull, small, smallOrNull, toStored } from './whole';
import type { Stamp } from './writer';

type FileSupplier = ShopFile['suppliers'][number];
type FileProduct = ShopFile['products'][number];
type FileOffer = ShopFile['offers'][number];

/** Save suppliers. */
export async function saveSuppliers(rows: Rows, stamp: Stamp, suppliers: Saving<FileSupplier>[]): Promise<void> {
  const { shopId } = stamp;
  await rows.supplier.createMany({ data: newRows(shopId, suppliers, (item) => supplierRow(item, stamp)) });
  for (const { item, isNew } of suppliers) {
    if (isNew) continue;
    await rows.supplier.update({ where: { shopId_id: { shopId, id: item.id } }, data: supplierRow(item, stamp) });
  }
}

const supplierRow = (supplier: FileSupplier, stamp: Stamp) => ({
  name: supplier.name,
  freightPerOrder: storedMoney(supplier.freightPerOrder),
  freeFreightOver: storedMoney(supplier.freeFreightOver),
  minimumOrder: storedMoney(supplier.minimumOrder),
  workingDays: supplier.workingDays,
  closedOn: supplier.closedOn,
  archivedAt: archivedAt(supplier, stamp),
});

/** When something was put away: as far as anybody knows, when that was last saved. */
const archivedAt = ({ archived }: { archived: boolean }, { recordedAt }: Stamp): bigint | null =>
  archived ? toStored(recordedAt) : null;

/** Save products with what is in them and what their labels say. */
export async function saveProducts(rows: Rows, stamp: Stamp, products: Saving<FileProduct>[]): Promise<void> {
  const { shopId } = stamp;
  await insertMany(
    rows,
    'Product',
    newRows(shopId, products, (item) => productRow(item, stamp)),
  );
  const changed = products.filter(({ isNew }) => !isNew);
  for (const some of inParts(changed)) {
    const where = { shopId, productId: { in: some.map(({ item }) => item.id) } };
    await rows.content.deleteMany({ where });
    await rows.rate.deleteMany({ where });
  }
  await updateMany(
    rows,
    'Product',
    ['shopId', 'id'],
    changed.map(({ item }) => ({ shopId, id: item.id, ...productRow(item, stamp) })),
  );
  const items = products.map(({ item }) => item);
  await insertMany(
    rows,
    'Content',
    items.flatMap(({ id: productId, contents }) =>
      contents.map(({ substance, amount, basis }, position) => {
        return { shopId, productId, position, substance, amount: real(amount), basis };
      }),
    ),
  );
  await insertMany(
    rows,
    'Rate',
    items.flatMap(({ id: productId, label }) =>
      label.rates.map(({ use, min, max }, position) => ({ shopId, productId, position, use, min, max })),
    ),
  );
}

const productRow = (product: FileProduct, stamp: Stamp) => ({
  name: product.name,
  kind: product.kind,
  form: product.form,
  formulation: product.formulation,
  densityGPerMl: realOrNull(product.densityGPerMl),
  gramsPerTeaspoon: realOrNull(product.gramsPerTeaspoon),
  unopenedDays: smallOrNull(product.shelfLife.unopenedDays),
  openedDays: smallOrNull(product.shelfLife.openedDays),
  mixOrder: smallOrNull(product.mixOrder),
  alkaliSilicate: product.alkaliSilicate,
  gtins: product.gtins,
  madeFrom: product.madeFrom,
  archivedAt: archivedAt(product, stamp),
  ...labelColumns(product.label),
});

const labelColumns = (label: FileProduct['label']) => ({
  reiHours: realOrNull(label.reiHours),
  reiMinutes: minutesUp(label.reiHours),
  phiDays: smallOrNull(label.phiDays),
  maxApplicationsPerYear: smallOrNull(label.maxApplicationsPerYear),
  minDaysBetween: smallOrNull(label.minDaysBetween),
  modes: label.modes,
  signalWord: label.signalWord,
  protectiveEquipment: label.protectiveEquipment,
  sprayPhMin: realOrNull(label.sprayPh?.min ?? null),
  sprayPhMax: realOrNull(label.sprayPh?.max ?? null),
  doNotMixWith: label.doNotMixWith,
  registration: label.registration,
  hotAboveC: realOrNull(label.hotAboveC),
  firstAid: label.firstAid,
  storage: label.storage,
});

/** Save offers. A price that differs from today's is a new line in the offer's price history. */
export async function saveOffers(rows: Rows, stamp: Stamp, offers: Saving<FileOffer>[]): Promise<void> {
  const { shopId } = stamp;
  await insertMany(
    rows,
    'Offer',
    newRows(shopId, offers, (item) => offerRow(item, stamp)),
  );
  const firsts = offers
    .filter(({ isNew }) => isNew)
    .flatMap(({ item }) => [...item.earlier, item].map((of, place) => ({ item, of, number: place + 1 })));
  await savePrices(rows, stamp, firsts);
  const changed = offers.filter(({ isNew }) => !isNew);
  const todayOf = await pricesToday(rows, shopId, changed);
  await updateMany(
    rows,
    'Offer',
    ['shopId', 'id'],
    changed.map(({ item }) => ({ shopId, id: item.id, ...offerRow(item, stamp) })),
  );
  const anew: PriceLine[] = [];
  for (const { item } of changed) {
    const today = todayOf(item.id);
    if (!today || !isSamePrice(today, item)) anew.push({ item, of: item, number: (today?.number ?? 0) + 1 });
  }
  await savePrices(rows, stamp, anew);
}

/** Today's price of each of these offers, read at once: a list of thousands would otherwise ask thousands of times. */
async function pricesToday(rows: Rows, shopId: string, offers: Saving<FileOffer>[]) {
  const prices: (StoredPrice & { offerId: string; number: number })[] = [];
  for (const some of inParts(offers)) {
    const where = { shopId, offerId: { in: some.map(({ item }) => item.id) } };
    const breaks = byOwner(
      await rows.priceBreak.findMany({ where, orderBy: { position: 'asc' } }),
      ({ offerId, number }) => keyOf(offerId, number),
    );
    const found = await rows.price.findMany({ where, orderBy: { number: 'asc' } });
    prices.push(...found.map((price) => ({ ...price, breaks: breaks(keyOf(price.offerId, price.number)) })));
  }
  return newestByOwner(prices, ({ offerId }) => offerId);
}

const offerRow = (offer: FileOffer, stamp: Stamp) => ({
  supplierId: offer.supplier,
  productId: offer.product,
  packText: offer.pack,
  leadDays: smallOrNull(offer.leadDays),
  archivedAt: archivedAt(offer, stamp),
});

type StoredPrice = { price: bigint; sinceOn: string | null; breaks: { atLeast: number; price: bigint }[] };

const isSamePrice = (today: StoredPrice, { since, price, breaks }: FileOffer): boolean =>
  today.sinceOn === since &&
  today.price === storedMoney(price) &&
  today.breaks.length === breaks.length &&
  today.breaks.every(({ atLeast, price }, place) => {
    const other = breaks[place];
    return other !== undefined && atLeast === other.atLeast && price === storedMoney(other.price);
  });

/** A price of an offer: today's, or one that it had before. */
type PriceLine = { item: FileOffer; of: Pick<FileOffer, 'since' | 'price' | 'breaks'>; number: number };

async function savePrices(rows: Rows, stamp: Stamp, prices: PriceLine[]): Promise<void> {
  const { shopId, commandId, actor } = stamp;
  const recordedAt = toStored(stamp.recordedAt);
  await insertMany(
    rows,
    'Price',
    prices.map(({ item, of, number }) => {
      const price = { price: storedMoney(of.price), sinceOn: of.since };
      return { shopId, offerId: item.id, number, ...price, commandId, actor, recordedAt };
    }),
  );
  await insertMany(
    rows,
    'PriceBreak',
    prices.flatMap(({ item, of, number }) =>
      of.breaks.map(({ atLeast, price }, position) => {
        return { shopId, offerId: item.id, number, position, atLeast: small(atLeast), price: storedMoney(price) };
      }),
    ),
  );
}
