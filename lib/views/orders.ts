import 'server-only';
import type { Micros } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type Day, daysBetween } from '@/shared/time/day';
import type { Clock } from '../clock';
import { fingerprint } from '../data/fingerprint';
import { newCommandId } from '../data/new-id';
import { expectedDay, missingOf, restOf } from '../engine/orders/on-order';
import { type Came, cameOf, levelReached, packsOrdered, saysNewPrice } from '../engine/orders/paid-otherwise';
import type { Offer, Order, Supplier } from '../engine/shop';
import { linePath } from '../engine/working/order-figures';
import type { Fig } from './figures';
import { type House, houseNow } from './house';
import { offerHref } from './offers-shown';

/** An order in a list of them. */
export type OrderListed = {
  id: string;
  href: string;
  supplier: string;
  placedOn: Day;
  expectedOn: Fig;
  total: Fig;
  what: string;
  state: OrderState;
};

/** Where an order stands: late by so many days, partly here, all still to come, or done with. */
export type OrderState =
  | { kind: 'late'; days: number; rest: number }
  | { kind: 'expected'; rest: number; someCame: boolean }
  | { kind: 'closed'; missing: number };

export type OrdersScreen = Pick<House, 'today' | 'ways'> & {
  shopId: string;
  open: OrderListed[];
  closed: OrderListed[];
  suppliers: { id: string; name: string }[];
};

/** What is on order, the most overdue first, and what was ordered before, the latest first. */
export async function ordersScreen(clock: Clock): Promise<OrdersScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { shop, today, ways } = house;
  const listed = shop.orders.map((order) => orderListed(house, order));
  const byDay = (a: OrderListed, b: OrderListed) => expectedText(a).localeCompare(expectedText(b));
  return {
    ...{ shopId: house.id, today, ways },
    open: listed.filter(({ state }) => state.kind !== 'closed').sort(byDay),
    closed: listed.filter(({ state }) => state.kind === 'closed').sort((a, b) => (a.placedOn < b.placedOn ? 1 : -1)),
    suppliers: shop.suppliers.filter(({ archived }) => !archived).map(({ id, name }) => ({ id, name })),
  };
}

const expectedText = ({ expectedOn: { value } }: OrderListed): string => (value.kind === 'day' ? value.day : '9999');

/** The orders from one supplier, the latest first. */
export const ordersFrom = (house: House, supplier: string): OrderListed[] =>
  house.shop.orders
    .filter((order) => order.supplier.id === supplier)
    .map((order) => orderListed(house, order))
    .sort((a, b) => (a.placedOn < b.placedOn ? 1 : -1));

export const orderHref = (id: string): string => `/buy/orders/${encodeURIComponent(id)}`;

function orderListed({ figure, today }: House, order: Order): OrderListed {
  const names = order.lines.map(({ offer, count }) => `${count} × ${offer.product.name}, ${offer.packText}`);
  return {
    ...{ id: order.id, href: orderHref(order.id), supplier: order.supplier.name, placedOn: order.placedOn },
    expectedOn: figure('order', order.id, 'expectedOn'),
    total: figure('order', order.id, 'total'),
    what: names.join('; '),
    state: stateOf(order, today),
  };
}

function stateOf(order: Order, today: Day): OrderState {
  const missing = order.lines.reduce((sum, line) => sum + missingOf(line), 0);
  if (order.closedOn !== null || missing === 0) return { kind: 'closed', missing };
  const expected = expectedDay(order);
  if (expected !== null && expected < today) {
    return { kind: 'late', days: daysBetween(expected, today), rest: missing };
  }
  return { kind: 'expected', rest: missing, someCame: order.lines.some(({ received }) => received > 0) };
}

/** One line of an order, with how much of it is here. */
type OrderLineSeen = {
  key: string;
  product: string;
  href: string;
  pack: string;
  count: number;
  price: Micros | null;
  cost: Fig;
  received: number;
  rest: number;
};

/** What came on a day, and whether its price says something new of the offer. */
export type CameSeen = Pick<Came, 'line' | 'cameOn' | 'packs' | 'paidEach' | 'quoted' | 'dearerBy'> & {
  offer: string;
  product: string;
  pack: string;
  /** The id of the command that takes its price, for a browser that runs no scripts. */
  formId: string;
  /** The number of packs from which the new price would hold (null: from the first); undefined when nothing is new. */
  newFrom: number | null | undefined;
};

export type OrderScreen = Pick<House, 'today' | 'ways'> & {
  shopId: string;
  formId: string;
  order: Order;
  file: ShopFile['orders'][number];
  standing: string;
  state: OrderState;
  goods: Fig;
  freight: Fig;
  total: Fig;
  expectedOn: Fig;
  lines: OrderLineSeen[];
  came: CameSeen[];
};

/** One order: what was ordered, what has come and what it cost beside what was quoted. Null when there is none. */
export async function orderScreen(clock: Clock, id: string): Promise<OrderScreen | null> {
  const house = await houseNow(clock);
  const order = house?.shop.orders.find((one) => one.id === id);
  const file = house?.file.orders.find((one) => one.id === id);
  if (!house || !order || !file) return null;
  const { figure, today, ways } = house;
  const its = (what: string) => figure('order', id, what);
  return {
    ...{ today, ways, shopId: house.id, formId: newCommandId(), order, file, standing: fingerprint(file) },
    state: stateOf(order, today),
    ...{ goods: its('goods'), freight: its('freight'), total: its('total'), expectedOn: its('expectedOn') },
    lines: order.lines.map((line, place) => ({
      ...{ key: `${place} ${line.offer.id}`, product: line.offer.product.name, href: offerHref(line.offer) },
      ...{ pack: line.offer.packText, count: line.count, price: line.price, received: line.received },
      cost: figure(...linePath(order, line)),
      rest: restOf(order, line),
    })),
    came: cameOf(order, house.shop).map((one) => cameSeen(order, one)),
  };
}

function cameSeen(order: Order, came: Came): CameSeen {
  const { line, offer, cameOn, packs, paidEach, quoted, dearerBy } = came;
  const ordered = packsOrdered(order, offer);
  const newFrom = saysNewPrice(came, ordered) ? levelReached(offer, ordered) : undefined;
  const named = { formId: newCommandId(), offer: offer.id, product: offer.product.name, pack: offer.packText };
  return { ...named, line, cameOn, packs, paidEach, quoted, dearerBy, newFrom };
}

/** What the form of an order needs of one supplier. */
export type OrderFormScreen = Pick<House, 'today' | 'ways'> & {
  shopId: string;
  formId: string;
  supplier: Pick<Supplier, 'id' | 'name' | 'freightPerOrder' | 'freeFreightOver' | 'minimumOrder'> & {
    workingDays: ShopFile['suppliers'][number]['workingDays'];
    /** The days on which they or the shop are closed. */
    closed: Day[];
  };
  offers: OfferToOrder[];
  /** The order that is changed; null for a new one. */
  order: { file: ShopFile['orders'][number]; standing: string } | null;
};

export type OfferToOrder = Pick<Offer, 'id' | 'price' | 'breaks' | 'leadDays'> & { product: string; pack: string };

/** What can be ordered from a supplier, for a new order or (by its id) one that is changed. Null when there is none. */
export async function orderFormScreen(
  clock: Clock,
  asked: { supplier: string } | { order: string },
): Promise<OrderFormScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { shop, file, today, ways } = house;
  const order = 'order' in asked ? file.orders.find(({ id }) => id === asked.order) : null;
  const id = 'supplier' in asked ? asked.supplier : order?.supplier;
  const supplier = shop.suppliers.find((one) => one.id === id);
  if (!supplier || order === undefined) return null;
  const ordered = new Set(order?.lines.map((line) => line.offer));
  const { name, freightPerOrder, freeFreightOver, minimumOrder, workingDays } = supplier;
  return {
    ...{ today, ways, shopId: house.id, formId: newCommandId() },
    supplier: {
      id: supplier.id,
      name,
      freightPerOrder,
      freeFreightOver,
      minimumOrder,
      workingDays: [...workingDays.weekdays],
      closed: [...workingDays.closed],
    },
    offers: shop.offers
      .filter((offer) => offer.supplier === supplier && (ordered.has(offer.id) || isSold(offer)))
      .map(({ id, price, breaks, leadDays, product, packText }) => {
        return { id, price, breaks, leadDays, product: product.name, pack: packText };
      }),
    order: order ? { file: order, standing: fingerprint(order) } : null,
  };
}

const isSold = ({ archived, product }: Offer): boolean => !archived && !product.archived;
