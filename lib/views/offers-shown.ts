import type { Micros } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import { cheapestOffer } from '../engine/ahead/cheapest-offer';
import { pricesOf } from '../engine/ahead/price-in-force';
import type { Offer } from '../engine/shop';
import { pricedBy } from '../engine/working/offer-figures';
import type { Fig } from './figures';
import type { House } from './house';

/** A price of an offer, past or present, and since when it held; null when nobody noted the day. */
export type PriceThen = Pick<Offer, 'since' | 'price' | 'breaks'>;

/** An offer as tables show it. */
export type OfferShown = {
  offer: Offer;
  /** Under which address it is changed. */
  href: string;
  unitPrice: Fig;
  /** A litre, gallon, kilogram or pound. */
  unit: string;
  /** Whether it is the cheapest per unit of all that can be bought of its product, and there are others. */
  isCheapest: boolean;
  /** Every price it had, has and will have, the oldest first. */
  prices: PriceThen[];
  /** What it cost before, and until when; null when it always cost the same, as far as anybody noted. */
  before: { price: Micros; until: Day | null } | null;
};

/** Offers with what they cost by the unit, and what they cost before; those that were put away come last. */
export function offersShown(house: House, offers: Offer[]): OfferShown[] {
  const shown = offers.map((offer) => offerShown(house, offer));
  return [...shown.filter(({ offer }) => !offer.putAway), ...shown.filter(({ offer }) => offer.putAway)];
}

export function offerShown({ shop, figure }: House, offer: Offer): OfferShown {
  const buyable = shop.offers.filter(({ product, archived }) => product === offer.product && !archived);
  const last = offer.earlier.at(-1);
  return {
    offer,
    href: offerHref(offer),
    unitPrice: figure('offer', offer.id, 'unitPrice'),
    unit: pricedBy(offer.product, shop.units).name,
    isCheapest: buyable.length > 1 && cheapestOffer(buyable) === offer,
    prices: pricesOf(offer),
    before: last ? { price: last.price, until: offer.since } : null,
  };
}

export const offerHref = ({ id, product }: Pick<Offer, 'id' | 'product'>): string =>
  `/shelf/${encodeURIComponent(product.id)}/offer/${encodeURIComponent(id)}`;
