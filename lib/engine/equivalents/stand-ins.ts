import { type Micros, micros, type Stock, stock } from '@/shared/quantity/amounts';
import { add, divide, type Exact, exact, multiply, smaller, subtract } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { cheapestOffer, costAt, unitPrice } from '../ahead/cheapest-offer';
import type { Projection, Waste } from '../ahead/plan';
import { amountOf } from '../ahead/sprayings';
import { groundOf } from '../bench/ground';
import type { Product, Recipe, Shop } from '../shop';
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
  /** What of it could be used there before it dies, µL or mg, and on how many sprayings. */
  amount: Stock;
  sprayings: number;
  /** What of the other product need not be bought then, at its cheapest offer; null when nobody offers it. */
  saves: Micros | null;
};

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
  const price = priceOf(shop, wanted.ingredient.product);
  let [left, saved, count]: [Exact, Exact, number] = [exact(BigInt(amount)), exact(0n), 0];
  for (const { spray, program } of before) {
    const ground = groundOf(program.benches);
    const takes = candidate.ingredient && amountOf(candidate.ingredient, spray?.total ?? null, ground);
    const instead = amountOf(wanted.ingredient, spray?.total ?? null, ground);
    if (!takes || instead === null || left.over === 0n) continue;
    const used = smaller(left, exact(BigInt(takes)));
    count += 1;
    left = subtract(left, used);
    saved = add(saved, multiply(exact(BigInt(instead)), divide(used, exact(BigInt(takes)))));
  }
  const used = stock(amount - wholeNearest<Stock>(left));
  return { amount: used, sprayings: count, saves: price && micros(costAt(price, wholeNearest<Stock>(saved))) };
}

function priceOf({ offers }: Shop, product: Product): Exact | null {
  const offer = cheapestOffer(offers.filter((one) => one.product === product));
  return offer && unitPrice(offer);
}
