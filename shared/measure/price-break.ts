import type { Micros } from '../quantity/amounts';
import { micros } from '../quantity/amounts';

/** What a pack costs, and from how many packs on it costs less. */
export type Priced = { price: Micros; breaks: readonly { atLeast: number; price: Micros }[] };

/** What one pack costs when so many are bought: the price of the highest break that they reach. */
export function priceOfOne({ price, breaks }: Priced, packs: number): Micros {
  const reached = breaks.filter(({ atLeast }) => atLeast <= packs);
  return reached.reduce((best, one) => (one.atLeast > best.atLeast ? one : best), { atLeast: 0, price }).price;
}

/**
 * What so many packs cost at an offer, each at the price of the highest break that they reach. Freight is not in it.
 *
 * Takes    a whole number of packs
 * Throws   RangeError past the largest exact whole number
 */
export const priceOfPacks = (priced: Priced, packs: number): Micros => micros(priceOfOne(priced, packs) * packs);
