import { add, divide, type Exact, exact, multiply, ZERO } from '@/shared/quantity/exact';
import { cheapestOffer, unitPrice } from '../ahead/cheapest-offer';
import type { Offer, Product } from '../shop';
import { sourcesOf } from '../strength/sources';

/** What a stock solution is made from and where that would be bought: µL or mg of it in each mL of the solution. */
export type Bought = { source: Product; share: Exact; offer: Offer };

/** What a stock solution costs; or what to enter before that is known. */
type SolutionPrice = { unit: Exact; from: Bought[]; missing: null } | { unit: null; from: []; missing: string };

/** What a µL or mg of a product costs today, and at which offer, or by which sources; or what to enter first. */
export type PriceToday = { unit: Exact | null; offer: Offer | null; from: Bought[]; missing: string | null };

/**
 * What a product costs today: at its own cheapest offer per unit, or a stock solution, which nobody sells, by what it is
 * made from.
 *
 * Gives    null as for `solutionPrice`
 * Units    micros for each µL or mg, exact
 */
export function priceToday(offers: readonly Offer[], product: Product): PriceToday {
  const offer = cheapestOffer(offers.filter((one) => one.product === product));
  if (offer) return { unit: unitPrice(offer), offer, from: [], missing: null };
  return { offer, ...solutionPrice(offers, product) };
}

/**
 * What a stock solution costs, which nobody sells, when what is in it is bought at its cheapest offers. Water costs
 * nothing.
 *
 *   price of a µL = Σ share of each source ÷ 1000 × its price per unit
 *
 * Gives    null when a source is not offered, or nobody can say how much of it there is
 * Units    micros for each µL, exact
 */
function solutionPrice(offers: readonly Offer[], solution: Product): SolutionPrice {
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
