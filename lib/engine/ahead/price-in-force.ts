import { type Day, dayNumber } from '@/shared/time/day';
import type { Offer, OfferPrice, Shop } from '../shop';

/** Every price that an offer had, has and will have, the oldest first. */
export const pricesOf = ({ earlier, since, price, breaks, later }: Offer): OfferPrice[] => [
  ...earlier,
  { since, price, breaks },
  ...later,
];

/**
 * An offer at the price in force on a day: the last one whose `since` is not after it.
 *
 * Gives    the same offer where nothing changes; one whose first price is still to come cannot be bought yet
 */
export function offerOn(offer: Offer, day: Day): Offer {
  const prices = pricesOf(offer);
  const found = prices.findLastIndex(({ since }) => since === null || since <= day);
  const place = Math.max(0, found);
  const current = prices[place];
  const notYet = found < 0;
  if (!current || (place === offer.earlier.length && notYet === offer.notYet)) return offer;
  return {
    ...offer,
    ...current,
    earlier: prices.slice(0, place),
    later: prices.slice(place + 1),
    notYet,
    archived: offer.putAway || notYet,
  };
}

/**
 * A shop with the prices in force on a day.
 *
 * Gives    the same shop where that is so already
 */
export function pricedOn(shop: Shop, day: Day): Shop {
  const offers = new Map(shop.offers.map((offer) => [offer, offerOn(offer, day)]));
  if ([...offers].every(([before, after]) => before === after)) return shop;
  const as = (offer: Offer): Offer => offers.get(offer) ?? offer;
  return {
    ...shop,
    offers: shop.offers.map(as),
    orders: shop.orders.map((order) => ({
      ...order,
      lines: order.lines.map((line) => ({ ...line, offer: as(line.offer) })),
    })),
  };
}

/** The days in a horizon from which on an offer costs something else than on its first day, as day numbers. */
export const priceChangesIn = (offer: Offer, from: number, to: number): number[] =>
  pricesOf(offer).flatMap(({ since }) => {
    const day = since === null ? null : dayNumber(since);
    return day !== null && day > from && day <= to ? [day] : [];
  });
