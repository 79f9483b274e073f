import { stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { IngredientLine, Spraying } from '../engine/ahead/plan';
import { projectionWith } from '../engine/ahead/projection';
import { comingContainers, onOrder } from '../engine/orders/on-order';
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
  /** The day the product runs out all the same; null when it lasts through the weeks ahead. */
  stillRunsOutOn: Day | null;
};

const seen = new WeakMap<House['plan'], Map<Product, OnOrderSeen>>();

/**
 * What is on order, by product. The plan counts only what is on the shelf; this says beside it what is on its way, and
 * what it would be enough for if it came when it is expected.
 */
export function onOrderSeen(house: House): Map<Product, OnOrderSeen> {
  const known = seen.get(house.plan) ?? lookAt(house);
  seen.set(house.plan, known);
  return known;
}

function lookAt({ plan, shop, today, figure }: House): Map<Product, OnOrderSeen> {
  const expected = onOrder(shop, today);
  const products = [...new Set(expected.map(({ offer }) => offer.product))];
  if (products.length === 0) return new Map();
  const containers = [...shop.containers, ...comingContainers(shop, today)];
  const its = { ...shop, products, containers };
  const ahead = projectionWith(its, afresh(plan.sprayings, products), today, plan.weeks).products;
  return new Map(
    products.map((product) => {
      const lines = expected.filter(({ offer }) => offer.product === product);
      const orders = [...new Set(lines.map(({ order }) => order.id))];
      const [one] = orders;
      return [
        product,
        {
          packs: lines.reduce((sum, { packs }) => sum + packs, 0),
          onOrder: figure('product', product.id, 'onOrder'),
          expectedOn: figure('product', product.id, 'expectedOn'),
          href: orders.length === 1 && one !== undefined ? orderHref(one) : '/buy/orders',
          isLate: lines.some(({ isLate }) => isLate),
          stillRunsOutOn: ahead.find((each) => each.product === product)?.runsOutOn ?? null,
        },
      ];
    }),
  );
}

/** The sprayings as they were before anything was drawn for them, with the lines of some products. */
const afresh = (sprayings: readonly Spraying[], products: readonly Product[]): Spraying[] =>
  sprayings.map((spraying) => ({
    ...spraying,
    lines: spraying.lines.filter(({ ingredient }) => products.includes(ingredient.product)).map(undrawn),
  }));

const undrawn = ({ ingredient, amount }: IngredientLine): IngredientLine => ({
  ...{ ingredient, amount, draws: [], short: NONE, shortCost: null, cost: null },
});

const NONE = stock(0);
