import { readDose } from '@/shared/measure/dose';
import { readMoney } from '@/shared/measure/money';
import { exactStockOf, readSize } from '@/shared/measure/size';
import type { Stock } from '@/shared/quantity/amounts';
import type { Exact } from '@/shared/quantity/exact';
import { shareOut, wholeNearest } from '@/shared/quantity/rounding';
import type { ShopFile } from '@/shared/shop-file/contract';
import { cameByLine } from '@/shared/shop-file/packs-came';
import { type Day, readDay } from '@/shared/time/day';
import { minutesUp } from '@/shared/time/hours';
import { type Find, finder, known, maybe, money } from './known';
import type { Container, Offer, Order, Product, Supplier } from './shop';

/*
 * What a shop buys and keeps, out of its file: suppliers, products, offers, the containers on the shelf, and orders.
 */

type FileProduct = ShopFile['products'][number];
type FileLot = ShopFile['lots'][number];

/**
 * Takes    the days on which the shop itself is closed: nothing is ordered or received then
 */
export const supplierOf = (supplier: ShopFile['suppliers'][number], closed: readonly Day[]): Supplier => ({
  id: supplier.id,
  name: supplier.name,
  freightPerOrder: money(supplier.freightPerOrder),
  freeFreightOver: money(supplier.freeFreightOver),
  minimumOrder: money(supplier.minimumOrder),
  workingDays: {
    weekdays: new Set(supplier.workingDays),
    closed: new Set([...closed, ...supplier.closedOn.map((day) => known(readDay(day)))]),
  },
  closedOn: supplier.closedOn.map((day) => known(readDay(day))),
  archived: supplier.archived,
});

/** The products; a stock solution holds those that it is made from. */
export function productsOf({ products }: ShopFile, drop: Exact): Product[] {
  const made = products.map((each) => productOf(each, drop));
  const product = finder('product', made);
  for (const [place, { madeFrom }] of products.entries()) {
    made[place]?.madeFrom.push(
      ...madeFrom.map((line) => {
        const source = product(line.product);
        return { product: source, dose: known(readDose(line.dose, source.form, drop)) };
      }),
    );
  }
  return made;
}

function productOf(product: FileProduct, drop: Exact): Product {
  const { rates, reiHours, ...label } = product.label;
  const dose = (text: string) => readDose(text, product.form, drop);
  return {
    ...product,
    madeFrom: [],
    label: {
      ...label,
      rates: rates.map(({ use, min, max }) => ({ use, min: maybe(min, dose), max: maybe(max, dose) })),
      rei: reiHours === null ? null : minutesUp(reiHours),
    },
  };
}

export const sizeOf = (text: string, product: Product): Stock => wholeNearest<Stock>(exactSizeOf(text, product));

function exactSizeOf(text: string, product: Product): Exact {
  const size = exactStockOf(known(readSize(text, product.form)), product);
  if (size === null) throw new RangeError(`shop file: nobody knows how much ${text} of ${product.id} is`);
  return size;
}

type FileOffer = ShopFile['offers'][number];

export function offerOf(offer: FileOffer, findSupplier: Find<Supplier>, find: Find<Product>): Offer {
  const product = find(offer.product);
  const supplier = findSupplier(offer.supplier);
  return {
    id: offer.id,
    supplier,
    product,
    packText: offer.pack,
    pack: exactSizeOf(offer.pack, product),
    ...priceOf(offer),
    leadDays: offer.leadDays,
    earlier: offer.earlier.map(priceOf),
    later: [],
    notYet: false,
    putAway: offer.archived || supplier.archived,
    archived: offer.archived || supplier.archived,
  };
}

const priceOf = ({ since, price, breaks }: Pick<FileOffer, 'since' | 'price' | 'breaks'>) => ({
  since: maybe(since, readDay),
  price: known(readMoney(price)),
  breaks: breaks.map(({ atLeast, price }) => ({ atLeast, price: known(readMoney(price)) })),
});

/** A lot of several is that many full containers, each with its share of what the lot cost. */
export function containersOf(lot: FileLot, product: Product): Container[] {
  const size = sizeOf(lot.pack, product);
  const remaining = lot.remaining === null || lot.count > 1 ? size : sizeOf(lot.remaining, product);
  const paid = money(lot.paid);
  const shares = paid === null ? null : shareOut(paid, lot.count);
  const days = {
    receivedOn: known(readDay(lot.receivedOn)),
    openedOn: maybe(lot.openedOn, readDay),
    expiresOn: maybe(lot.expiresOn, readDay),
  };
  return Array.from({ length: lot.count }, (_, place) => ({
    lot: lot.id,
    place,
    product,
    packText: lot.pack,
    size,
    remaining,
    paid: shares?.[place] ?? null,
    ...{ keptIn: lot.keptIn, order: lot.order, offer: lot.offer },
    ...days,
  }));
}

/** What was ordered. What of it has come are the lots that name it. */
export function ordersOf(file: ShopFile, supplier: Find<Supplier>, offer: Find<Offer>): Order[] {
  return file.orders.map((order) => {
    const came = cameByLine(file.lots, order);
    return {
      id: order.id,
      supplier: supplier(order.supplier),
      placedOn: known(readDay(order.placedOn)),
      expectedOn: maybe(order.expectedOn, readDay),
      lines: order.lines.map(({ offer: id, count, price }, place) => {
        return { offer: offer(id), count, price: money(price), received: came[place] ?? 0 };
      }),
      freight: money(order.freight),
      note: order.note,
      closedOn: maybe(order.closedOn, readDay),
    };
  });
}
