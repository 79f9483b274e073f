import type { CellOut } from '@/shared/csv/write-rows';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Json } from '../differences';
import type { CsvList, Kind } from './column';
import { findByName } from './find-by-name';
import { cellOfItems } from './list-cell';
import { COLUMNS } from './list-columns';
import { breakText, contentText, rateText } from './product-lists';

type Product = ShopFile['products'][number];
type Offer = ShopFile['offers'][number];

/** How products and suppliers are called: by name where that leads back to them alone, otherwise by id. */
type Calls = { product: (id: string) => string; supplier: (id: string) => string };

/**
 * A list of a shop as rows of cells, the first with the names of the columns. Brought in again, it changes nothing.
 *
 * What an offer cost before, what a stock solution is made from and the order that a lot came with are not in it: a CSV
 * that does not tell them leaves them as they are.
 */
export function csvOfShop(shop: ShopFile, list: CsvList): CellOut[][] {
  const calls = callsOf(shop);
  const columns = COLUMNS[list];
  const things: readonly { [field: string]: Json }[] = shop[list];
  return [
    columns.map(({ title }) => title),
    ...things.map((thing) => columns.map(({ kind, path }) => cellOf(kind, valueAt(thing, path), calls))),
  ];
}

/**
 * What a field of a thing says, as its cell would.
 *
 * Takes    the field as differences name it, such as "label.rates"; one that has no column stays as it is
 */
export function cellOfField(
  shop: ShopFile,
  list: CsvList,
): (field: string, value: Json) => { title: string; cell: Json } {
  const calls = callsOf(shop);
  return (field, value) => {
    const column = COLUMNS[list].find(({ path }) => path.join('.') === field);
    return column ? { title: column.title, cell: cellOf(column.kind, value, calls) } : { title: field, cell: value };
  };
}

const callsOf = ({ products, suppliers }: ShopFile): Calls => ({
  product: callBy(products),
  supplier: callBy(suppliers),
});

function callBy(things: readonly { id: string; name: string }[]): (id: string) => string {
  const find = findByName('', things, '');
  const names = new Map(things.map(({ id, name }) => [id, name]));
  return (id) => {
    const name = names.get(id) ?? id;
    const found = find(name);
    return found.ok && found.value === id ? name : id;
  };
}

const valueAt = (thing: Json, path: readonly string[]): Json =>
  path.reduce<Json>(
    (at, step) => (at !== null && typeof at === 'object' && !Array.isArray(at) ? (at[step] ?? null) : null),
    thing,
  );

function cellOf(kind: Kind, value: Json, calls: Calls): CellOut {
  if (value === null) return null;
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return value;
  if (typeof value === 'string') return kind.of === 'product' || kind.of === 'supplier' ? calls[kind.of](value) : value;
  switch (kind.of) {
    case 'contents':
      return cellOfItems((value as Product['contents']).map(contentText));
    case 'rates':
      return cellOfItems((value as Product['label']['rates']).map(rateText));
    case 'breaks':
      return cellOfItems((value as Offer['breaks']).map(breakText));
    default:
      return cellOfItems(value as string[]);
  }
}
