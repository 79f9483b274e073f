import type { Micros, Stock } from '@/shared/quantity/amounts';
import { compare, divide, type Exact, exact } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import type { Offer } from '../shop';

/**
 * Of the offers of one product that can be bought, the one that is cheapest per unit when one pack is bought, without
 * freight. Between equals, the one with the shorter lead time; then the first by id.
 *
 * Gives   null when nobody offers the product any more
 */
export function cheapestOffer(offers: Offer[]): Offer | null {
  const [first = null, ...rest] = offers.filter(({ archived }) => !archived);
  return rest.reduce((best, offer) => (best && isCheaper(offer, best) ? offer : best), first);
}

/** Whether one offer comes before another: cheaper per unit of one pack, then sooner there, then first by id. */
export function isCheaper(a: Offer, b: Offer): boolean {
  const order = compare(unitPrice(a), unitPrice(b));
  if (order !== 0) return order < 0;
  const [leadA, leadB] = [a.leadDays ?? Number.POSITIVE_INFINITY, b.leadDays ?? Number.POSITIVE_INFINITY];
  return leadA === leadB ? a.id < b.id : leadA < leadB;
}

/** What a µL or a mg costs at an offer, in micros, exact. */
export const unitPrice = (offer: Offer): Exact => divide(exact(offer.price), offer.pack);

/** What an amount costs at a price per unit, as if a pack could be divided. Rounds to the nearest micro. */
export const costAt = ({ over, under }: Exact, amount: Stock): Micros =>
  // The fraction need not be in lowest terms to be rounded, and there may be one for every batch of the year.
  wholeNearest<Micros>({ over: BigInt(amount) * over, under });
