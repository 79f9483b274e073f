import type { Day } from '@/shared/time/day';
import type { ProductAhead } from '../engine/ahead/plan';
import type { Fig } from './figures';
import type { House } from './house';
import { type OnOrderSeen, onOrderSeen } from './on-order';

/** A product that runs out within the weeks ahead, and when to order it. */
export type OrderLine = {
  product: { id: string; name: string };
  runsOutOn: Fig;
  /** What of it is on its way already; null when nothing is. */
  onOrder: OnOrderSeen | null;
  /** Null when nobody sells it, or no lead time is known: then only the day it runs out can be told. */
  order: { weeks: number; weeksUntilReorder: Fig; by: Day; orderBy: Fig; from: string; pack: string } | null;
};

/** What to order, the most pressing first: by order-by day, or by the day it runs out where nobody sells it. */
export function orderLines(house: House): OrderLine[] {
  const { plan, figure } = house;
  const onItsWay = onOrderSeen(house);
  return plan.products
    .filter(({ runsOutOn }) => runsOutOn !== null)
    .sort((a, b) => pressing(a).localeCompare(pressing(b)))
    .map(({ product, reorder }) => ({
      product: { id: product.id, name: product.name },
      runsOutOn: figure('product', product.id, 'runsOutOn'),
      onOrder: onItsWay.get(product) ?? null,
      order: reorder && {
        weeks: reorder.weeks,
        weeksUntilReorder: figure('product', product.id, 'weeksUntilReorder'),
        by: reorder.by,
        orderBy: figure('product', product.id, 'orderBy'),
        from: reorder.offer.supplier.name,
        pack: reorder.offer.packText,
      },
    }));
}

const pressing = ({ reorder, runsOutOn }: ProductAhead): string => reorder?.by ?? runsOutOn ?? '';
