import { type Micros, micros, plus } from '@/shared/quantity/amounts';
import type { Exact } from '@/shared/quantity/exact';
import { atOnce, eachInSteps, type Steps } from '@/shared/steps';
import { type Day, dayNumber } from '@/shared/time/day';
import { grouped } from '../grouped';
import type { Product, Shop } from '../shop';
import { cheapestOffer, costAt, unitPrice } from './cheapest-offer';
import { sumKnown, sumOrUnknown } from './cost-sums';
import type { IngredientLine, ProductAhead, Projection, Spraying, Totals } from './plan';
import { pricedOn } from './price-in-force';
import { reorderFor } from './reorder';
import { horizonEnd, sprayingsInSteps } from './sprayings';
import { type Demand, walkStock } from './stock-walk';

/**
 * What the shop will spray in the weeks ahead, what that draws from which container and costs, when each product runs
 * out and must be ordered, and what dies unused. No rule has looked at it yet.
 *
 * Takes   the shop as it stands, the first day, and how many weeks (today … today + 7 × weeks − 1)
 * Gives   the projection; nothing is bought in it
 * Units   µL, mg and micros; unknown amounts and costs are null, never zero
 */
export const projectionOf = (shop: Shop, today: Day, weeks: number): Projection =>
  atOnce(projectionInSteps(shop, today, weeks));

/** The same with pauses. */
export function* projectionInSteps(shop: Shop, today: Day, weeks: number): Steps<Projection> {
  const sprayings = yield* sprayingsInSteps(shop, today, horizonEnd(today, weeks));
  yield;
  return yield* projected(shop, sprayings, today, weeks, NOT_YET);
}

/** So many products are followed between two pauses. */
const FEW_PRODUCTS = 20;

const NOT_YET: ReadonlyMap<Product, ProductAhead> = new Map();

/**
 * The same with sprayings that somebody names instead of those of the programs, in the order they happen. Of products that
 * are known already, their lines have their draws and costs, and nothing is worked out again.
 */
export const projectionWith = (
  shop: Shop,
  sprayings: Spraying[],
  today: Day,
  weeks: number,
  known = NOT_YET,
): Projection => atOnce(projected(shop, sprayings, today, weeks, known));

function* projected(
  given: Shop,
  sprayings: Spraying[],
  today: Day,
  weeks: number,
  known: typeof NOT_YET,
): Steps<Projection> {
  const shop = pricedOn(given, today);
  const demands = demandsOf(sprayings, known);
  const containers = byProduct(shop.containers);
  const offers = byProduct(shop.offers);
  const products = yield* eachInSteps(shop.products, FEW_PRODUCTS, (product): ProductAhead => {
    const before = known.get(product);
    if (before) return before;
    const asked = demands.get(product) ?? [];
    const walk = walkStock(containers.get(product) ?? [], asked, today, weeks);
    const offer = cheapestOffer(offers.get(product) ?? []);
    const price = offer && unitPrice(offer);
    for (const { line } of asked) priceLine(line, price);
    const wasteCost = sumOrUnknown(walk.wastes, costOf);
    return { product, ...walk, wasteCost, reorder: reorderFor(walk.runsOutOn, offer, shop.safetyDays, today) };
  });
  yield;
  for (const spraying of sprayings) spraying.materialCost = materialCostOf(spraying);
  return { shop, today, weeks, sprayings, products, totals: totalsOf(sprayings, products) };
}

const byProduct = <T extends { product: Product }>(list: T[]): Map<Product, T[]> =>
  grouped(list, ({ product }) => product);

/** The dated demand of each product that is not known yet, in the order of the sprayings. */
function demandsOf(sprayings: Spraying[], known: ReadonlyMap<Product, unknown>): Map<Product, Demand[]> {
  const demands = new Map<Product, Demand[]>();
  // Thousands of lines are worked out anew while somebody moves a slider, so that nothing is made here but the demands.
  for (const { date, lines } of sprayings) {
    const day = dayNumber(date);
    for (const line of lines) {
      const { product } = line.ingredient;
      if (known.has(product)) continue;
      const its = demands.get(product);
      if (its) its.push({ day, line });
      else demands.set(product, [{ day, line }]);
    }
  }
  return demands;
}

const costOf = ({ cost }: { cost: Micros | null }): Micros | null => cost;

/** Unknown without a spray volume even when the recipe is empty: nobody can say what it takes. */
const materialCostOf = ({ spray, lines }: Spraying): Micros | null => spray && sumOrUnknown(lines, costOf);

/** What a line costs: its draws, and what is short at the cheapest offer. Null when any part of that is unknown. */
function priceLine(line: IngredientLine, price: Exact | null): void {
  if (line.amount === null) return;
  if (line.short > 0) line.shortCost = price && costAt(price, line.short);
  else line.shortCost = micros(0);
  const drawn = sumOrUnknown(line.draws, costOf);
  line.cost = drawn === null || line.shortCost === null ? null : plus(drawn, line.shortCost);
}

function totalsOf(sprayings: Spraying[], products: ProductAhead[]): Totals {
  const wastes = products.flatMap((ahead) => ahead.wastes);
  return {
    materialCost: sumKnown(sprayings, ({ materialCost }) => materialCost),
    labourCost: sumKnown(sprayings, ({ labourCost }) => labourCost),
    wasteCost: sumKnown(wastes, costOf),
    unknownCosts: sprayings.filter(({ materialCost }) => materialCost === null).length,
    unknownLabour: sprayings.filter(({ labourCost }) => labourCost === null).length,
    unknownWaste: wastes.filter(({ cost }) => cost === null).length,
  };
}
