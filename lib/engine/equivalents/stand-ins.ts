import { type Micros, micros, type Stock, stock } from '@/shared/quantity/amounts';
import { add, divide, type Exact, exact, multiply, smaller, subtract } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import { cheapestOffer, costAt, unitPrice } from '../ahead/cheapest-offer';
import type { Projection, Waste } from '../ahead/plan';
import { amountOf } from '../ahead/sprayings';
import { groundOf } from '../bench/ground';
import type { Offer, Product, Recipe, Shop } from '../shop';
import { type Candidate, candidateOf, holds, type Wanted, wantedIn } from './candidate';

/** A place in a recipe where a bottle could stand, in the place of what stands there now. */
export type StandIn = { recipe: Recipe; wanted: Wanted; candidate: Candidate };

/**
 * "I have this bottle; where can it stand in?": every recipe with a product that brings a substance which this one has
 * too, at the dose that brings as much of it, allowed or not and why.
 *
 * Takes    the product of the bottle; recipes that have it already are left out
 */
export function standInsFor(shop: Shop, product: Product): StandIn[] {
  return shop.recipes.flatMap((recipe) => {
    if (recipe.ingredients.some((one) => one.product === product)) return [];
    const places = recipe.ingredients.flatMap(({ product: now }): StandIn[] => {
      const wanted = wantedIn(shop, recipe, now);
      if (!wanted || !holds(product, wanted.substance)) return [];
      return [{ recipe, wanted, candidate: candidateOf(shop, wanted, product) }];
    });
    return places;
  });
}

/** Stock that dies unused, and a place where it could be used up before. */
export type UseUp = StandIn & {
  waste: Waste;
  /** What of it could be used there before it dies, µL or mg, spraying by spraying and in all. */
  used: UsedOn[];
  amount: Stock;
  /** What of the other product need not be sprayed then, µL or mg. */
  spared: Stock;
  /** The cheapest offer of that, and what is saved at it; null when nobody offers it. */
  offer: Offer | null;
  saves: Micros | null;
};

/** What one spraying takes of what would die, and what it need not take of the other product. Rounded one by one. */
export type UsedOn = { on: Day; used: Stock; instead: Stock };

/**
 * "Use up what is about to die": which allowed swaps use stock that would die in the weeks ahead, and what each saves of
 * the product that it stands in for, the most first.
 *
 * Takes    the weeks ahead, with what dies in them
 */
export function useUp(projection: Projection): UseUp[] {
  const wastes = projection.products.flatMap((ahead) => ahead.wastes);
  const found = wastes.flatMap((waste) =>
    standInsFor(projection.shop, waste.container.product)
      .filter(({ candidate }) => candidate.allowed)
      .map((place) => ({ ...place, waste, ...usedUp(projection, place, waste) })),
  );
  return found.filter(({ amount }) => amount > 0).sort((a, b) => (b.saves ?? 0) - (a.saves ?? 0));
}

function usedUp({ shop, sprayings }: Projection, { recipe, wanted, candidate }: StandIn, { on, amount }: Waste) {
  const before = sprayings.filter((one) => one.recipe === recipe && one.date < on);
  const used: UsedOn[] = [];
  let [left, saved]: [Exact, Exact] = [exact(BigInt(amount)), exact(0n)];
  for (const { spray, program, date } of before) {
    const ground = groundOf(program.benches);
    const takes = candidate.ingredient && amountOf(candidate.ingredient, spray?.total ?? null, ground);
    const instead = amountOf(wanted.ingredient, spray?.total ?? null, ground);
    if (!takes || instead === null || left.over === 0n) continue;
    const part = smaller(left, exact(BigInt(takes)));
    const spared = multiply(exact(BigInt(instead)), divide(part, exact(BigInt(takes))));
    used.push({ on: date, used: wholeNearest<Stock>(part), instead: wholeNearest<Stock>(spared) });
    left = subtract(left, part);
    saved = add(saved, spared);
  }
  const spared = wholeNearest<Stock>(saved);
  const offer = cheapestOffer(shop.offers.filter((one) => one.product === wanted.ingredient.product));
  return {
    ...{ used, spared, offer, amount: stock(amount - wholeNearest<Stock>(left)) },
    saves: offer && micros(costAt(unitPrice(offer), spared)),
  };
}
