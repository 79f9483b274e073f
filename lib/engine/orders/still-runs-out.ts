import { stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import type { IngredientLine, Plan, Spraying } from '../ahead/plan';
import { projectionWith } from '../ahead/projection';
import type { Product } from '../shop';
import { comingContainers, onOrder } from './on-order';

const found = new WeakMap<Plan, Map<Product, Day | null>>();

/**
 * When each product of which something is on order runs out all the same: the plan's sprayings, with what is on order
 * standing on the shelf from the day it is expected. What nobody knows a day for counts as not coming.
 *
 * Gives    null for a product that lasts through the weeks ahead; nothing for one that is not on order
 */
export function stillRunsOut(plan: Plan): Map<Product, Day | null> {
  const known = found.get(plan) ?? lookAt(plan);
  found.set(plan, known);
  return known;
}

function lookAt({ shop, today, weeks, sprayings }: Plan): Map<Product, Day | null> {
  const products = [...new Set(onOrder(shop, today).map(({ offer }) => offer.product))];
  if (products.length === 0) return new Map();
  const containers = [...shop.containers, ...comingContainers(shop, today)];
  const its = { ...shop, products, containers };
  const ahead = projectionWith(its, afresh(sprayings, products), today, weeks).products;
  return new Map(ahead.map(({ product, runsOutOn }) => [product, runsOutOn]));
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
