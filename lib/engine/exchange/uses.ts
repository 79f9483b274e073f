import type { ShopFile } from '@/shared/shop-file/contract';
import { nameIn } from '../name-in';

/** What can be removed from a shop again, as long as nothing uses it. */
export type Removable = 'product' | 'supplier' | 'offer';

/**
 * Where something of a shop is used, in words, place by place; empty when nothing uses it.
 *
 *   product    recipes, lots, offers, application records, stock solutions, and the must-not-mix of other products
 *   supplier   offers, orders
 *   offer      orders; its prices are history all the same, which the books know
 *
 * Takes    the shop as its file, and the id
 */
export function usesOf(file: ShopFile, what: Removable, id: string): string[] {
  const orders = (isIts: (order: ShopFile['orders'][number]) => boolean) =>
    several(
      'order of',
      file.orders.filter(isIts).map(({ placedOn }) => placedOn),
    );
  if (what === 'supplier') {
    return [...offersIn(file, (offer) => offer.supplier === id), ...orders((order) => order.supplier === id)];
  }
  if (what === 'offer') return orders(({ lines }) => lines.some(({ offer }) => offer === id));
  const product = file.products.find((one) => one.id === id);
  const recipes = file.recipes.filter(({ ingredients }) => ingredients.some((one) => one.product === id));
  const records = file.applications.filter((application) => names(application, id));
  return [
    ...several(
      'recipe',
      recipes.map(({ name }) => name),
    ),
    ...several(
      'lot',
      file.lots.filter((lot) => lot.product === id).map(({ id, pack }) => `${id} (${pack})`),
    ),
    ...offersIn(file, (offer) => offer.product === id),
    ...several(
      'record of spraying on',
      records.map(({ startedAt }) => startedAt.slice(0, 10)),
    ),
    ...several(
      'stock solution',
      file.products.filter(({ madeFrom }) => madeFrom.some((one) => one.product === id)).map(({ name }) => name),
    ),
    ...several('must-not-mix of', otherLabels(file, product?.name ?? id, id)),
  ];
}

function offersIn(file: ShopFile, isIts: (offer: ShopFile['offers'][number]) => boolean): string[] {
  const offers = file.offers.filter(isIts);
  return several(
    'offer',
    offers.map(({ pack, product, supplier }) => {
      return `${pack} of ${nameIn(file.products, product)} from ${nameIn(file.suppliers, supplier)}`;
    }),
  );
}

const otherLabels = ({ products }: ShopFile, name: string, id: string): string[] =>
  products
    .filter((other) => other.id !== id && other.label.doNotMixWith.some((word) => isSame(word, name) || word === id))
    .map((other) => other.name);

const isSame = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase();

const MOST_NAMED = 5;

/** "recipe Ferns", "recipes Ferns, Citrus and 4 more": a long list says how much longer it is. */
function several(what: string, names: string[]): string[] {
  if (names.length === 0) return [];
  const shown = names.slice(0, MOST_NAMED);
  const more = names.length - shown.length;
  const [noun, ...rest] = what.split(' ');
  const many = names.length === 1 || noun === 'must-not-mix' ? noun : `${noun}s`;
  return [`${[many, ...rest].join(' ')} ${shown.join(', ')}${more > 0 ? ` and ${more} more` : ''}`];
}

/** Whether anything within a record names a product, in whichever field: sprayed, drawn, or poured as an acid. */
function names(value: unknown, id: string): boolean {
  if (Array.isArray(value)) return value.some((one) => names(one, id));
  if (typeof value !== 'object' || value === null) return false;
  return Object.entries(value).some(([field, held]) => (field === 'product' && held === id) || names(held, id));
}
