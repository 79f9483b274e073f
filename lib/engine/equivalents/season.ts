import { type Micros, type Stock, sum } from '@/shared/quantity/amounts';
import { add, type Exact, exact, multiply, ZERO } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { type Day, dayNumber, WEEKDAYS } from '@/shared/time/day';
import type { Spraying } from '../ahead/plan';
import { amountOf, horizonEnd, sprayingsBetween } from '../ahead/sprayings';
import { groundOf } from '../bench/ground';
import { type Horizon, horizonOf } from '../buying/horizon';
import { type Asked, needOf, toBuy } from '../buying/need';
import { type Order, ordersOf, planCostOf } from '../buying/orders';
import { marketFor } from '../buying/pack';
import { plannedParts } from '../buying/planned-parts';
import type { Solver } from '../buying/solver';
import { grouped } from '../grouped';
import type { Ingredient, Offer, Product, Recipe, Shop } from '../shop';

/** Every spraying of a recipe in the weeks ahead, with what it sprays in all, mL; null when that of any is unknown. */
export type Season = { shop: Shop; horizon: Horizon; sprayings: Spraying[]; sprayMl: Exact | null };

/**
 * What one product costs over a season: whole packs, their opened life, freight. Micros.
 *
 *   total = goods + freight + capital − left; what dies of the packs is inside the goods
 */
export type SeasonCost = {
  total: number;
  goods: Micros;
  freight: Micros;
  /** Suppliers whose freight was never entered: it counts nothing. */
  noFreight: string[];
  capital: Micros;
  left: Micros;
  wasteCost: Micros;
  /** How much of the product the season takes, µL or mg. */
  needed: Stock;
  packs: { offer: Offer; count: number; cost: Micros }[];
  /** Whether the search came to its end. Where its time was over, what somebody would buy by habit may stand here. */
  inTime: boolean;
};

/**
 * What a recipe sprays in the weeks ahead. A season is bought for from an empty shelf, without waiting and without
 * safety days, so that candidates are compared and not shelves.
 */
export function seasonOf(shop: Shop, recipe: Recipe, today: Day, weeks: number): Season {
  const all = sprayingsBetween(shop, today, horizonEnd(today, weeks));
  const sprayings = all.filter((spraying) => spraying.recipe === recipe);
  const volumes = sprayings.map(({ spray }) => spray?.total ?? null);
  const sprayMl = volumes.reduce((sum, one) => sum && one && add(sum, one), ZERO as Exact | null);
  return { shop, horizon: horizonOf({ ...shop, safetyDays: 0 }, today, weeks), sprayings, sprayMl };
}

/**
 * What it costs to have an ingredient for a whole season.
 *
 *   the total of the purchase plan for this product alone: packs + freight + capital − what is left and will be used
 *
 * Takes    the season, the ingredient, a solver, and how many times the season's use (1 as it is planned)
 * Gives    null when nobody offers the product, or an amount is not known
 */
export function seasonCost(
  season: Season,
  ingredient: Ingredient,
  solver: Solver,
  times: Exact = ONE,
): SeasonCost | null {
  const { shop, horizon } = season;
  const asked = askedIn(season, ingredient, times);
  if (!asked) return null;
  const offers = offersOf(shop, ingredient.product);
  const need = needOf(ingredient.product, asked, horizon);
  const market = marketFor(need, offers.map(withoutWaiting), horizon);
  if (toBuy(need) > 0 && market.packs.length === 0) return null;
  const { purchases } = toBuy(need) === 0 ? { purchases: [] } : plannedParts([{ need, ...market }], horizon, solver);
  const orders = ordersOf(purchases);
  const { packs: goods, freight, capital, left, total, ofWhichWaste: wasteCost } = planCostOf(purchases, orders);
  return {
    ...{ total, goods, freight, capital, left, wasteCost },
    noFreight: [...new Set(orders.flatMap(({ freight, supplier }) => (freight === null ? supplier.name : [])))],
    needed: need.whole,
    packs: packsIn(orders, offers),
    inTime: solver.secondsLeft() > 0,
  };
}

const ONE = exact(1n);

function askedIn({ sprayings }: Season, ingredient: Ingredient, times: Exact): Asked[] | null {
  const asked: Asked[] = [];
  for (const { date, spray, program } of sprayings) {
    const amount = amountOf(ingredient, spray?.total ?? null, groundOf(program.benches));
    if (amount === null) return null;
    const taken: Stock = wholeNearest(multiply(exact(BigInt(amount)), times));
    asked.push({ day: dayNumber(date), amount: taken, short: taken });
  }
  return asked;
}

const offersByProduct = new WeakMap<readonly Offer[], ReadonlyMap<Product, Offer[]>>();

/** The offers of one product, in the order of the shop. They are sorted once for all candidates. */
function offersOf({ offers }: Shop, product: Product): readonly Offer[] {
  const known = offersByProduct.get(offers) ?? grouped(offers, (offer) => offer.product);
  offersByProduct.set(offers, known);
  return known.get(product) ?? [];
}

const EVERY_DAY = { weekdays: new Set(WEEKDAYS), closed: new Set<Day>() };

const withoutWaiting = (offer: Offer): Offer => ({
  ...offer,
  leadDays: 0,
  supplier: supplierWithoutWaiting(offer),
});

const suppliers = new WeakMap<Offer['supplier'], Offer['supplier']>();

/** One for each supplier, so that what two of its offers are bought for is still one order. */
function supplierWithoutWaiting({ supplier }: Offer): Offer['supplier'] {
  const known = suppliers.get(supplier) ?? { ...supplier, workingDays: EVERY_DAY };
  suppliers.set(supplier, known);
  return known;
}

function packsIn(orders: readonly Order[], offers: readonly Offer[]): SeasonCost['packs'] {
  return offers.flatMap((offer) => {
    const lines = orders.flatMap((order) => order.lines.filter((line) => line.offer.id === offer.id));
    const count = lines.reduce((total, line) => total + line.count, 0);
    return count > 0 ? [{ offer, count, cost: sum(lines.map(({ cost }) => cost)) }] : [];
  });
}
