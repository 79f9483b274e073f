import 'server-only';
import { z } from 'zod';
import type { Clock } from '../clock';
import type { Flag } from '../engine/rules/flag';
import type { Product } from '../engine/shop';
import { gravestFirst } from './flags-by-gravity';
import { type House, houseNow } from './house';
import type { ShelfBottle } from './shelf-bottles';
import { type ShelfProduct, shelfProduct } from './shelf-product';

/** What the shelf may be asked to show. Anything else in the address is left out of account. */
const ShelfQuery = z.object({
  as: z.enum(['bottles', 'table']).catch('bottles'),
  sort: z.enum(['name', 'dies']).catch('name'),
  kind: z.string().catch(''),
  find: z.string().trim().max(100).catch(''),
});
export type ShelfQuery = z.output<typeof ShelfQuery>;

export type ShelfScreen = Pick<House, 'today' | 'ways'> & {
  query: ShelfQuery;
  kinds: string[];
  products: ShelfProduct[];
  /** How many products the shop has, shown or not. */
  all: number;
  flags: Flag[];
};

/** Every bottle by product: what is left, when it dies, what it is worth, when to order more. */
export async function shelfScreen(clock: Clock, asked: unknown): Promise<ShelfScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { shop, today, ways, plan } = house;
  const query = ShelfQuery.parse(asked);
  const wanted = plan.products.filter(({ product }) => isWanted(product, query));
  const products = wanted.map((ahead) => shelfProduct(house, ahead)).sort(orderOf(query.sort));
  const shown = new Set(products.map(({ id }) => id));
  return {
    today,
    ways,
    query,
    kinds: [...new Set(shop.products.map(({ kind }) => kind))].sort(),
    products,
    all: shop.products.length,
    flags: gravestFirst(
      plan.flags.filter(({ program, product }) => program === null && product !== null && shown.has(product)),
    ),
  };
}

function isWanted({ name, kind, contents }: Product, { kind: asked, find }: ShelfQuery): boolean {
  if (asked !== '' && kind !== asked) return false;
  const words = [name, ...contents.map(({ substance }) => substance)].join(' ').toLowerCase();
  return words.includes(find.toLowerCase());
}

function orderOf(sort: ShelfQuery['sort']): (a: ShelfProduct, b: ShelfProduct) => number {
  const byName = (a: ShelfProduct, b: ShelfProduct) => a.name.localeCompare(b.name);
  if (sort === 'name') return byName;
  return (a, b) => firstDeath(a.bottles).localeCompare(firstDeath(b.bottles)) || byName(a, b);
}

/** The first day on which one of these bottles dies; those that never do come last. */
const firstDeath = (bottles: ShelfBottle[]): string => bottles[0]?.lastDay ?? '9999-12-31';
