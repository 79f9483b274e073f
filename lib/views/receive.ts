import 'server-only';
import { z } from 'zod';
import type { Micros } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import { shopOf } from '../data/snapshot';
import { restOf } from '../engine/orders/on-order';
import type { Offer, Order, Supplier } from '../engine/shop';
import { placesOf } from './bottle';
import { type HereNow, shopNow } from './house';

/** What the place for receiving may be asked to begin with. Anything else in the address is left out of account. */
const ReceiveQuery = z.object({
  product: z.string().max(64).catch(''),
  supplier: z.string().max(64).catch(''),
  order: z.string().max(64).catch(''),
  lots: z.string().max(10_000).catch(''),
});

/** An offer in the list of what a delivery may have brought. */
export type OfferIn = {
  id: string;
  product: string;
  pack: string;
  price: Micros;
  breaks: { atLeast: number; price: Micros }[];
  /** How many packs of it an order still expects, and what one was to cost; null without an order. */
  expected: { packs: number; price: Micros | null } | null;
};

export type ReceiveScreen = Pick<HereNow, 'today' | 'ways'> & {
  shopId: string;
  /** The id of the first command of a form, for a browser that runs no scripts. */
  formId: string;
  products: { id: string; name: string; packs: string[] }[];
  suppliers: { id: string; name: string }[];
  places: string[];
  /** The product that is received, when one was asked for. */
  product: { id: string; name: string } | null;
  /** The supplier whose delivery it is, with what it offers. */
  delivery: { id: string; name: string; offers: OfferIn[]; order: { id: string; placedOn: Day } | null } | null;
  /** The lots that have just come in, each with the addresses of its bottles. */
  received: { id: string; product: string; pack: string; bottles: string[] }[];
};

/** What is needed to put on the shelf what came in. Null when there is no shop. */
export async function receiveScreen(clock: Clock, asked: unknown): Promise<ReceiveScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { shop, today, ways } = here;
  const query = ReceiveQuery.parse(asked);
  const offers = shop.offers.filter(({ archived, product }) => !archived && !product.archived);
  const supplier = shop.suppliers.find(({ id, archived }) => id === query.supplier && !archived);
  const order = shop.orders.find(({ id }) => id === query.order);
  const product = shop.products.find(({ id, archived }) => id === query.product && !archived);
  return {
    ...{ today, ways, shopId: here.id, formId: newCommandId(), places: placesOf(shop.containers) },
    products: shop.products
      .filter(({ archived }) => !archived)
      .map(({ id, name }) => ({ id, name, packs: packsOf(shop, id) }))
      .sort(byName),
    suppliers: shop.suppliers.filter(({ archived }) => !archived).map(({ id, name }) => ({ id, name })),
    product: product ? { id: product.id, name: product.name } : null,
    delivery: order ? ofOrder(order) : supplier ? deliveryOf(supplier, offers) : null,
    received: query.lots === '' ? [] : query.lots.split(',').flatMap((id) => lotIn(shop, id)),
  };
}

function deliveryOf(supplier: Supplier, offers: Offer[]): ReceiveScreen['delivery'] {
  const its = offers.filter((offer) => offer.supplier === supplier);
  return { id: supplier.id, name: supplier.name, order: null, offers: its.map((offer) => offerIn(offer, null)) };
}

/** What an order brings: its lines, with the packs that are still expected. */
function ofOrder(order: Order): ReceiveScreen['delivery'] {
  const { id, supplier, placedOn, lines } = order;
  const offers = lines.map((line) => offerIn(line.offer, { packs: restOf(order, line), price: line.price }));
  return { id: supplier.id, name: supplier.name, order: { id, placedOn }, offers };
}

const offerIn = ({ id, product, packText: pack, price, breaks }: Offer, expected: OfferIn['expected']): OfferIn => ({
  ...{ id, product: product.name, pack, price, breaks, expected },
});

/** A lot that came in, with the addresses of the bottles that still stand together under its name. */
function lotIn({ containers }: HereNow['shop'], id: string): ReceiveScreen['received'] {
  const own = containers.filter(({ lot }) => lot === id);
  const [first] = own;
  if (!first) return [];
  const addresses = own.map(({ place }) => `/shelf/bottle/${encodeURIComponent(id)}/${place}`);
  return [{ id, product: first.product.name, pack: first.packText, bottles: addresses }];
}

const byName = (a: { name: string }, b: { name: string }): number => a.name.localeCompare(b.name);

/** In which packs a product is sold or was received, each once. */
const packsOf = ({ offers, containers }: HereNow['shop'], id: string): string[] => [
  ...new Set([...offers, ...containers].filter(({ product }) => product.id === id).map(({ packText }) => packText)),
];

/** The offers of a shop by their ids, for whoever writes down what a delivery brought. */
export async function offersOf(shopId: string): Promise<Map<string, { product: string; pack: string }>> {
  const { offers } = await shopOf(shopId);
  return new Map(offers.map(({ id, product, packText }) => [id, { product: product.id, pack: packText }]));
}
