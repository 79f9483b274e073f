import { pathText } from '@/shared/shop-file/path';
import type { Projection } from '../ahead/plan';
import { lastUsableDay } from '../ledger/last-usable-day';
import { comingContainers, expectedDay } from '../orders/on-order';
import type { EntryPlace } from '../rules/to-enter';
import type { Container, Offer, Product, Recipe, Shop, Supplier } from '../shop';

/** Something that nobody entered, and what is taken for it. */
export type Assumed = {
  /** Where it stands in the shop file, such as `offers[0].leadDays`. */
  path: string;
  taken: string;
  /** What it is about, as a person knows it. */
  of: string;
  /** Where it is entered; null where it is no field of a form. */
  at: EntryPlace | null;
};

/** What is taken for granted as every document prints it. */
export const assumedIn = (assumed: readonly Pick<Assumed, 'path' | 'taken'>[]) =>
  assumed.map(({ path, taken }) => ({ path, taken }));

/**
 * What a purchase plan takes for granted about the products that it looks at.
 *
 * Takes    the shop with what is on order among its containers, and the products that something is needed of
 * Gives    each unknown once, in the order of the shop file: suppliers, products, offers, lots, recipes, orders
 */
export function assumedOf({ shop, today, sprayings }: Projection, products: ReadonlySet<Product>): Assumed[] {
  const recipes = new Set(sprayings.map(({ recipe }) => recipe));
  return [
    ...assumedOfGoods(shop, products, 'with lead times'),
    ...lotsAssumed(ownContainers(shop, today), products),
    ...shop.recipes.flatMap((recipe, at): Assumed[] =>
      recipe.targetPh === null || !recipes.has(recipe) ? [] : [acidAssumed(recipe, at)],
    ),
    ...ordersAssumed(shop, products),
  ];
}

/** The same of the products and their offers alone, for whoever buys from an empty shelf without waiting. */
export function assumedOfGoods(
  shop: Pick<Shop, 'products' | 'offers' | 'suppliers'>,
  products: ReadonlySet<Product>,
  leads: 'with lead times' | 'without waiting',
): Assumed[] {
  const offers = shop.offers.filter(({ archived, product }) => !archived && products.has(product));
  const suppliers = new Set(offers.map(({ supplier }) => supplier));
  return [
    ...shop.suppliers.flatMap((supplier, at) => (suppliers.has(supplier) ? supplierAssumed(supplier, at) : [])),
    ...shop.products.flatMap((product, at) => (products.has(product) ? productAssumed(product, at) : [])),
    ...(leads === 'without waiting'
      ? []
      : shop.offers.flatMap((offer, at) => (offers.includes(offer) ? offerAssumed(offer, at) : []))),
  ];
}

/** What a plan or a mix takes for granted about how long what is on the shelf keeps, of all products or only of some. */
export const keepingAssumed = (
  { products, containers }: Pick<Shop, 'products' | 'containers'>,
  only: ReadonlySet<Product> = new Set(products),
): Assumed[] => {
  const standing = new Set(containers.filter(({ remaining }) => remaining > 0).map(({ product }) => product));
  return products.flatMap((product, at) =>
    standing.has(product) && only.has(product) ? openedAssumed(product, at) : [],
  );
};

const openedAssumed = ({ id, name, shelfLife }: Product, index: number): Assumed[] =>
  shelfLife.openedDays !== null
    ? []
    : [
        {
          path: pathText(['products', index, 'shelfLife', 'openedDays']),
          ...{ taken: 'opened, it keeps as long as unopened', of: name },
          at: { of: 'product', id, field: 'shelfLife.openedDays' },
        },
      ];

function supplierAssumed({ id, name, freightPerOrder, minimumOrder }: Supplier, index: number): Assumed[] {
  const about = (field: 'freightPerOrder' | 'minimumOrder', taken: string): Assumed => ({
    ...{ path: pathText(['suppliers', index, field]), taken, of: name },
    at: { of: 'supplier', id, field },
  });
  return [
    ...(freightPerOrder === null ? [about('freightPerOrder', 'orders cost no freight')] : []),
    ...(minimumOrder === null ? [about('minimumOrder', 'orders of any size are taken')] : []),
  ];
}

function productAssumed(product: Product, index: number): Assumed[] {
  const { id, name, shelfLife, madeFrom } = product;
  return [
    ...(shelfLife.unopenedDays === null
      ? [
          {
            path: pathText(['products', index, 'shelfLife', 'unopenedDays']),
            ...{ taken: 'it keeps unopened without end; what is left is worth 365 days of use', of: name },
            at: { of: 'product' as const, id, field: 'shelfLife.unopenedDays' as const },
          },
        ]
      : []),
    ...openedAssumed(product, index),
    ...(madeFrom.length > 0
      ? [{ path: pathText(['products', index, 'madeFrom']), taken: MADE_HERE, of: name, at: null }]
      : []),
  ];
}

const MADE_HERE = 'what it is made from is not planned for it';

const offerAssumed = ({ id, leadDays, product, packText, supplier }: Offer, index: number): Assumed[] =>
  leadDays !== null
    ? []
    : [
        {
          ...{ path: pathText(['offers', index, 'leadDays']), taken: 'it comes in 0 working days' },
          ...{ of: `${product.name}, ${packText}, from ${supplier.name}` },
          at: { of: 'offer', id, product: product.id },
        },
      ];

/** Which acid brings a spray to its pH is chosen when it is mixed. */
const acidAssumed = ({ name }: Recipe, index: number): Assumed => ({
  path: pathText(['recipes', index, 'targetPh']),
  ...{ taken: 'no acid is planned for it', of: name, at: null },
});

/** The containers of the file: those that are on order come after them. */
const ownContainers = (shop: Shop, today: Projection['today']): Container[] =>
  shop.containers.slice(0, shop.containers.length - comingContainers(shop, today).length);

/** Bottles with something in them whose last day nobody knows, of some products. */
export function lotsAssumed(containers: readonly Container[], products: ReadonlySet<Product>): Assumed[] {
  const lots = [...new Set(containers.map(({ lot }) => lot))];
  const endless = containers.filter(
    (one) => one.remaining > 0 && products.has(one.product) && lastUsableDay(one) === null,
  );
  return lots.flatMap((lot, index): Assumed[] => {
    const first = endless.find((one) => one.lot === lot);
    if (!first) return [];
    return [
      {
        ...{ path: pathText(['lots', index, 'expiresOn']), taken: 'it keeps without end' },
        ...{ of: `${first.product.name}, ${first.packText}` },
        at: { of: 'container', lot, place: first.place },
      },
    ];
  });
}

/** What is on order without a day cannot be planned with. */
const ordersAssumed = ({ orders }: Shop, products: ReadonlySet<Product>): Assumed[] =>
  orders.flatMap((order, index): Assumed[] => {
    const isMeant = order.closedOn === null && order.lines.some(({ offer }) => products.has(offer.product));
    if (!isMeant || expectedDay(order) !== null) return [];
    const of = `the order from ${order.supplier.name}`;
    return [
      {
        path: pathText(['orders', index, 'expectedOn']),
        taken: 'it does not come',
        of,
        at: { of: 'order', id: order.id },
      },
    ];
  });
