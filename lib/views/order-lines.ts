import type { Day } from '@/shared/time/day';
import type { ProductAhead } from '../engine/ahead/plan';
import { type ToEnter, toEnterForProduct } from '../engine/rules/to-enter';
import type { Fig } from './figures';
import type { House } from './house';
import { type OnOrderSeen, onOrderSeen } from './on-order';

/** A product that runs out within the weeks ahead, or of which nobody knows whether it does, and when to order it. */
export type OrderLine = {
  product: { id: string; name: string };
  runsOutOn: Fig;
  runsOut: boolean;
  /** What to enter before it is known how much of it is needed; empty when it is known. */
  toEnter: ToEnter[];
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
    .filter(({ runsOutOn, unknownSince }) => runsOutOn !== null || unknownSince !== null)
    .sort((a, b) => pressing(a).localeCompare(pressing(b)))
    .map((ahead) => ({ ahead, product: ahead.product, reorder: ahead.reorder }))
    .map(({ ahead, product, reorder }) => ({
      product: { id: product.id, name: product.name },
      runsOutOn: figure('product', product.id, 'runsOutOn'),
      runsOut: ahead.runsOutOn !== null,
      toEnter: toEnterForProduct(plan, ahead),
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

const pressing = ({ reorder, runsOutOn, unknownSince }: ProductAhead): string =>
  reorder?.by ?? runsOutOn ?? unknownSince ?? '';
