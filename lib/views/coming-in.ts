import type { Day } from '@/shared/time/day';
import { type OnOrder, onOrder, onOrderOf } from '../engine/orders/on-order';
import type { Order, Product } from '../engine/shop';
import type { Fig } from './figures';
import type { House } from './house';
import { orderHref } from './orders';

/** When something is expected, as seen today: its day is past, is today, is still to come, or nobody knows one. */
export type Due = 'late' | 'today' | 'ahead' | 'unknown';

/** What of one order is still to come. */
export type ComingIn = {
  order: string;
  href: string;
  /** Where what came of it is received. */
  receiveHref: string;
  supplier: string;
  packs: number;
  due: Due;
  expectedOn: Fig;
};

/** The orders of which something is late or comes today, and those of which nobody knows when; the soonest first. */
export function comingIn({ shop, today, figure }: House): ComingIn[] {
  const coming = onOrder(shop, today).filter(({ expectedOn }) => expectedOn === null || expectedOn <= today);
  return [...new Set(coming.map(({ order }) => order))].map((order) => {
    const lines = coming.filter((line) => line.order === order);
    return {
      ...{ order: order.id, supplier: order.supplier.name, ...waysTo(order) },
      packs: lines.reduce((sum, { packs }) => sum + packs, 0),
      due: dueOf(lines[0] ?? null, today),
      expectedOn: figure('order', order.id, 'expectedOn'),
    };
  });
}

/** How many orders come on a day that is still to come. */
export const laterOrders = ({ shop, today }: House): number =>
  new Set(
    onOrder(shop, today)
      .filter(({ expectedOn }) => expectedOn !== null && expectedOn > today)
      .map(({ order }) => order),
  ).size;

/** Packs of one product that one line of an order still expects. */
export type ProductComing = Omit<ComingIn, 'order'> & { key: string; pack: string; placedOn: Day };

/** What of one product is on order, line by line, the soonest first. */
export const productComing = ({ shop, today, figure }: House, product: Product): ProductComing[] =>
  onOrderOf(shop, today, product).map((one) => {
    const { order, line, offer, packs } = one;
    return {
      ...{ key: `${order.id} ${line}`, supplier: order.supplier.name, placedOn: order.placedOn, ...waysTo(order) },
      ...{ packs, pack: offer.packText, due: dueOf(one, today) },
      expectedOn: figure('order', order.id, 'expectedOn'),
    };
  });

function dueOf(one: Pick<OnOrder, 'expectedOn' | 'isLate'> | null, today: Day): Due {
  if (!one || one.expectedOn === null) return 'unknown';
  if (one.isLate) return 'late';
  return one.expectedOn === today ? 'today' : 'ahead';
}

const waysTo = ({ id }: Order) => ({
  href: orderHref(id),
  receiveHref: `/shelf/receive?order=${encodeURIComponent(id)}#delivery`,
});
