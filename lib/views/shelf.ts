import 'server-only';
import { z } from 'zod';
import { fold } from '@/shared/text/fold';
import type { Clock } from '../clock';
import type { Flag } from '../engine/rules/flag';
import type { Product } from '../engine/shop';
import { bottleAddresses } from './bottle-addresses';
import type { Fig } from './figures';
import { gravestFirst } from './flags-by-gravity';
import { type House, houseNow } from './house';
import { onOrderSeen } from './on-order';
import { PageAsked, type PageOf, pageOf } from './pages';
import { inShelfOrder, SHELF_ORDERS } from './shelf-order';
import { type ShelfProduct, shelfProduct } from './shelf-product';

/** In the address, the bottles of which nobody noted where they stand. */
export const NO_PLACE = '?';

/** What the shelf may be asked to show. Anything else in the address is left out of account. */
const ShelfQuery = z.object({
  as: z.enum(['bottles', 'table']).catch('bottles'),
  sort: z.enum(SHELF_ORDERS).catch('name'),
  kind: z.string().catch(''),
  place: z.string().catch(''),
  find: z.string().trim().max(100).catch(''),
  away: z.enum(['', 'too']).catch(''),
  page: PageAsked,
});
export type ShelfQuery = z.output<typeof ShelfQuery>;

export type ShelfScreen = Pick<House, 'today' | 'ways'> & {
  query: ShelfQuery;
  kinds: string[];
  /** Where bottles stand; the last is null when of some nobody noted it. */
  places: (string | null)[];
  /** One page of the products that are asked for. */
  products: ShelfProduct[];
  /** Which page it is, how many products and bottles are on all of them. */
  pages: Pick<PageOf<ShelfProduct>, 'page' | 'pages' | 'isAll'>;
  found: { products: number; bottles: number };
  /** How many products the shop has, shown or not, and how many of them are put away. */
  all: number;
  putAway: number;
  sums: ShelfSums;
  flags: Flag[];
};

/** The sums of the whole shelf, whatever of it is shown. */
export type ShelfSums = {
  value: Fig;
  wasteCost: Fig;
  replaceCost: Fig;
};

/** Every bottle by product: what is left, when it dies, what it is worth, when to order more. */
export async function shelfScreen(clock: Clock, asked: unknown): Promise<ShelfScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { shop, today, ways, plan } = house;
  const query = ShelfQuery.parse(asked);
  const [addressOf, onItsWay] = [await bottleAddresses(house.id), onOrderSeen(house)];
  const products = plan.products
    .filter(({ product }) => isWanted(product, query))
    .map((ahead) => standingWhere(shelfProduct(house, ahead, addressOf, onItsWay), query))
    .filter((product) => isShown(product, query));
  const { shown, ...pages } = pageOf(inShelfOrder(products, query.sort), query.page, MOST_ON_A_PAGE, weightOf);
  const onPage = new Set(shown.map(({ id }) => id));
  return {
    today,
    ways,
    query,
    kinds: [...new Set(shop.products.map(({ kind }) => kind))].sort(),
    places: placesOf(house),
    products: shown,
    pages,
    found: { products: products.length, bottles: products.reduce((sum, { bottles }) => sum + bottles.length, 0) },
    all: shop.products.length,
    putAway: shop.products.filter(({ archived }) => archived).length,
    sums: sumsOf(house),
    flags: gravestFirst(
      plan.flags.filter(
        ({ rule, program, product }) =>
          (program === null || rule === 'unknown-need') && product !== null && onPage.has(product),
      ),
    ),
  };
}

/** A page weighs under 300 kB with so much on it; a product without bottles weighs as much as a bottle. */
const MOST_ON_A_PAGE = 60;
const weightOf = ({ bottles }: ShelfProduct): number => 1 + bottles.length;

function isWanted({ name, kind, contents }: Product, { kind: asked, find }: ShelfQuery): boolean {
  if (asked !== '' && kind !== asked) return false;
  const words = fold([name, ...contents.map(({ substance }) => substance)].join(' '));
  return fold(find)
    .split(' ')
    .every((word) => words.includes(word));
}

/** The same product with those of its bottles that stand in the place that is asked for. */
function standingWhere(product: ShelfProduct, { place }: ShelfQuery): ShelfProduct {
  if (place === '') return product;
  return { ...product, bottles: product.bottles.filter(({ keptIn }) => (keptIn ?? NO_PLACE) === place) };
}

/** A place shows what stands in it; and what was put away stays out of sight once nothing of it is left. */
const isShown = ({ archived, bottles }: ShelfProduct, { place, away }: ShelfQuery): boolean =>
  bottles.length > 0 || (place === '' && (!archived || away === 'too'));

function placesOf({ shop }: House): (string | null)[] {
  const places = new Set(shop.containers.filter(({ remaining }) => remaining > 0).map(({ keptIn }) => keptIn));
  const named = [...places].filter((place) => place !== null).sort((a, b) => a.localeCompare(b));
  return places.has(null) ? [...named, null] : named;
}

function sumsOf({ figure }: House): ShelfSums {
  return {
    value: figure('shelf', 'value'),
    wasteCost: figure('shelf', 'wasteCost'),
    replaceCost: figure('shelf', 'replaceCost'),
  };
}
