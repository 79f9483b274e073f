import { add, divide, type Exact, exact, multiply, ZERO } from '@/shared/quantity/exact';
import { cheapestOffer, unitPrice } from '../ahead/cheapest-offer';
import type { Offer, Product } from '../shop';
import { sourcesOf } from '../strength/sources';

/** What a stock solution is made from and where that would be bought: µL or mg of it in each mL of the solution. */
export type Bought = { source: Product; share: Exact; offer: Offer };

/** What a stock solution costs; or what to enter before that is known. */
export type SolutionPrice = { unit: Exact; from: Bought[]; missing: null } | { unit: null; from: []; missing: string };

/**
 * What a stock solution costs, which nobody sells, when what is in it is bought at its cheapest offers. Water costs
 * nothing.
 *
 *   price of a µL = Σ share of each source ÷ 1000 × its price per unit
 *
 * Gives    null when a source is not offered, or nobody can say how much of it there is
 * Units    micros for each µL, exact
 */
export function solutionPrice(offers: readonly Offer[], solution: Product): SolutionPrice {
  const from: Bought[] = [];
  let unit = ZERO;
  for (const [source, share] of sourcesOf(solution)) {
    // What is made in the shop itself is in what it is made from.
    if (source.madeFrom.length > 0) continue;
    const offer = cheapestOffer(offers.filter(({ product }) => product === source));
    if (!offer) return missing(`Enter an offer for ${source.name}, with its price.`);
    if (!share) return missing(`Enter how much ${source.name} is in ${solution.name}, as an amount in each litre.`);
    from.push({ source, share, offer });
    unit = add(unit, multiply(divide(share, THOUSAND), unitPrice(offer)));
  }
  return from.length > 0
    ? { unit, from, missing: null }
    : missing(`Enter an offer for ${solution.name}, with its price.`);
}

const THOUSAND = exact(1000n);

const missing = (says: string): SolutionPrice => ({ unit: null, from: [], missing: says });
