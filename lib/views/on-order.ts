import { onOrder } from '../engine/orders/on-order';
import { stillRunsOut } from '../engine/orders/still-runs-out';
import type { Product } from '../engine/shop';
import type { Fig } from './figures';
import type { House } from './house';
import { orderHref } from './orders';

/** What of a product is on order, and whether it will be enough. */
export type OnOrderSeen = {
  packs: number;
  onOrder: Fig;
  expectedOn: Fig;
  /** Where the order stands, when it is one. */
  href: string;
  isLate: boolean;
  /** The day the product runs out all the same, or that nobody knows it; null when it lasts through the weeks ahead. */
  stillRunsOutOn: Fig | null;
};

/**
 * What is on order, by product. The plan counts only what is on the shelf; this says beside it what is on its way, and
 * what it would be enough for if it came when it is expected.
 */
export function onOrderSeen({ plan, shop, today, figure }: House): Map<Product, OnOrderSeen> {
  const expected = onOrder(shop, today);
  const unknown = new Set(
    plan.products.filter(({ unknownSince }) => unknownSince !== null).map(({ product }) => product),
  );
  return new Map(
    [...stillRunsOut(plan)].map(([product, runsOutOn]) => {
      const its = (what: string) => figure('product', product.id, what);
      const lines = expected.filter(({ offer }) => offer.product === product);
      const orders = [...new Set(lines.map(({ order }) => order.id))];
      const [one] = orders;
      return [
        product,
        {
          packs: lines.reduce((sum, { packs }) => sum + packs, 0),
          ...{ onOrder: its('onOrder'), expectedOn: its('expectedOn') },
          href: orders.length === 1 && one !== undefined ? orderHref(one) : '/buy/orders',
          isLate: lines.some(({ isLate }) => isLate),
          stillRunsOutOn: runsOutOn === null && !unknown.has(product) ? null : its('stillRunsOutOn'),
        },
      ];
    }),
  );
}
