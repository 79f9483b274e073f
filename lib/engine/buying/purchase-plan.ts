import { type Stock, stock } from '@/shared/quantity/amounts';
import { type Day, dayFromNumber } from '@/shared/time/day';
import type { Projection } from '../ahead/plan';
import { projectionOf } from '../ahead/projection';
import { withOnOrder } from '../orders/on-order';
import { eachOnce, type ToEnter, toEnterForProduct } from '../rules/to-enter';
import type { Offer, Product, Shop } from '../shop';
import { type Assumed, assumedOf } from './assumed';
import { type BaselinePolicy, cheapestPerMl, followPolicy, type Part, smallestPack } from './baseline-policy';
import { type Purchase, purchaseOf } from './bought';
import { type Horizon, horizonOf } from './horizon';
import { askedOf, needOf, toBuy } from './need';
import { type Order, ordersOf, type PlanCost, planCostOf, totalOf } from './orders';
import { marketFor } from './pack';
import { plannedParts } from './planned-parts';
import type { Solver } from './solver';

/** What to buy, when and from whom, so that every spraying of the horizon can be mixed, and what that costs. */
export type PurchasePlan = {
  shop: Shop;
  today: Day;
  weeks: number;
  horizon: Horizon;
  orders: Order[];
  /** What no order that is placed today can be there for in time. It is ordered today where somebody offers it. */
  late: { product: Product; on: Day; amount: Stock }[];
  cost: PlanCost;
  /** What always buying one kind of pack would cost in all. Micros. */
  habits: { smallestPack: number; cheapestPerMl: number };
  /** What no plan can be below, micros. */
  bound: number;
  /** Whether no plan can be cheaper. */
  proven: boolean;
  /** How far this may be from the best, as a part of its total. */
  gap: number;
  /** Each product that has to be bought, with its packs one after another. */
  parts: { part: Part; purchase: Purchase }[];
  unknowns: Unknown[];
  /** The products of which nobody knows how much is needed. Of them only what is known is planned, and nothing is proven. */
  unknown: Product[];
  /** What to enter before that is known, in the order of those products. */
  toEnter: ToEnter[];
  /** What nobody entered and the plan takes for granted. */
  assumed: Assumed[];
};

/** What somebody would have to enter before the plan can count it. */
type Unknown =
  | { what: 'amount'; product: Product }
  | { what: 'offer'; product: Product }
  | { what: 'lead time'; offer: Offer }
  | { what: 'freight'; order: Order };

/**
 * The purchase plan of a shop: for each product the packs and order days that meet every need of the horizon at the
 * least cost in all.
 *
 *   total = packs + freight + capital tied up − what is left and will still be used
 *
 * What is on the shelf, or was ordered and is still to come, is used first. A product whose orders cost nothing by themselves and whose
 * packs have one price is solved exactly, by itself; the others together by the solver, which also proves how far from
 * the best the answer can be. It is never dearer than either habit.
 *
 * Takes    the shop, the first day, the weeks, and a solver
 * Units    micros; µL or mg; days as numbers
 */
export function purchasePlanOf(shop: Shop, today: Day, weeks: number, solver: Solver): PurchasePlan {
  return purchasePlanFor(projectionOf(withOnOrder(shop, today), today, weeks), solver);
}

/** The same for a projection that is there already, with what is on order in it. */
function purchasePlanFor(projection: Projection, solver: Solver): PurchasePlan {
  const { shop, today, weeks } = projection;
  const horizon = horizonOf(shop, today, weeks);
  const { parts, unknowns } = partsOf(projection, horizon);
  const aheadUnknown = projection.products.filter(({ unknownSince }) => unknownSince !== null);
  const unknown = aheadUnknown.map(({ product }) => product);
  const offered = parts.filter(({ packs }) => packs.length > 0);
  const { purchases, bound, isCertain } = plannedParts(offered, horizon, solver);
  const orders = ordersOf(purchases);
  const cost = planCostOf(purchases, orders);
  const gap = cost.total - bound;
  return {
    ...{ shop, today, weeks, horizon, orders, cost, bound },
    late: parts.flatMap(latenessOf),
    habits: { smallestPack: costOfHabit(smallestPack), cheapestPerMl: costOfHabit(cheapestPerMl) },
    proven: unknown.length === 0 && isCertain && gap <= AS_GOOD_AS_NOTHING * (1 + offered.length),
    gap: cost.total > 0 ? Math.max(0, gap) / cost.total : 0,
    parts: offered.flatMap((part, index) => (purchases[index] ? [{ part, purchase: purchases[index] }] : [])),
    unknowns: [...unknowns, ...unknownFreight(orders)],
    unknown,
    toEnter: eachOnce(aheadUnknown.flatMap((ahead) => toEnterForProduct(projection, ahead))),
    assumed: assumedOf(projection, new Set([...askedOf(projection.sprayings).keys(), ...unknown])),
  };

  function costOfHabit(habit: BaselinePolicy): number {
    const bought = followPolicy(offered, habit, horizon);
    const each = offered.map(({ need }, index) => purchaseOf(need, horizon, bought[index] ?? []));
    return totalOf(each, ordersOf(each));
  }
}

/** The estimates of a search lie within this of whole micros. */
const AS_GOOD_AS_NOTHING = 1_000;

/** What has to be bought of each product and what it can be met with, in the shop's order. */
function partsOf({ shop, sprayings }: Projection, horizon: Horizon): { parts: Part[]; unknowns: Unknown[] } {
  const asked = askedOf(sprayings);
  const unknown = new Set(
    sprayings.flatMap(({ lines }) =>
      lines.flatMap(({ amount, ingredient }) => (amount === null ? ingredient.product : [])),
    ),
  );
  const parts = shop.products.flatMap((product): Part[] => {
    const need = needOf(product, asked.get(product) ?? [], horizon);
    const offers = shop.offers.filter((offer) => offer.product === product);
    return toBuy(need) === 0 ? [] : [{ need, ...marketFor(need, offers, horizon) }];
  });
  return {
    parts,
    unknowns: [...[...unknown].map((product): Unknown => ({ what: 'amount', product })), ...gapsIn(parts)],
  };
}

const gapsIn = (parts: readonly Part[]): Unknown[] =>
  parts.flatMap(({ need: { product }, packs }): Unknown[] => {
    if (packs.length === 0) return [{ what: 'offer', product }];
    const offers = packs.filter(({ offer }, at) => packs.findIndex((one) => one.offer.id === offer.id) === at);
    return offers.flatMap(({ offer }) => (offer.leadDays === null ? { what: 'lead time', offer } : []));
  });

const unknownFreight = (orders: readonly Order[]): Unknown[] =>
  orders.flatMap((order): Unknown[] => (order.freight === null ? [{ what: 'freight', order }] : []));

function latenessOf({ need, isLate }: Part): PurchasePlan['late'] {
  return need.days.flatMap((day, place) => {
    const amount = stock((need.upTo[place + 1] ?? 0) - (need.upTo[place] ?? 0));
    return isLate[place] ? [{ product: need.product, on: dayFromNumber(day), amount }] : [];
  });
}
