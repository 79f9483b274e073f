import type { ShopFile } from '@/shared/shop-file/contract';
import { dayAfter, latestOrder, weekdayOf } from './calendar';
import { type Fraction, fraction, isEqual, isLess, over } from './fraction';
import { sizeOf } from './measures';
import { micros } from './shelf';
import { found, type Product } from './sprayings';

/* What a product costs to buy, and when it must be ordered. */

type Offer = ShopFile['offers'][number];

export type Cheapest = { offer: Offer; perUnit: Fraction };

/** The price in force on a day: the last one whose `since` is not after it; null when none is. */
function priceOn(offer: Offer, day: string): string | null {
  const prices = [...offer.earlier, { since: offer.since, price: offer.price }];
  return prices.findLast(({ since }) => since === null || since <= day)?.price ?? null;
}

/** The offer that is cheapest per unit for one pack on a day; of equal ones the one that comes sooner. */
export function cheapestOffer(file: ShopFile, product: Product, day: string): Cheapest | null {
  let best: Cheapest | null = null;
  for (const offer of file.offers) {
    const price = priceOn(offer, day);
    const isAway = offer.archived || found(file.suppliers, offer.supplier).archived;
    if (offer.product !== product.id || price === null || isAway) continue;
    const perUnit = over(fraction(micros(price)), sizeOf(offer.pack, product));
    const sooner =
      best !== null && isEqual(perUnit, best.perUnit) && (offer.leadDays ?? 999) < (best.offer.leadDays ?? 999);
    if (best === null || isLess(perUnit, best.perUnit) || sooner) best = { offer, perUnit };
  }
  return best;
}

/** The last day to order so that it comes the shop's safety days before a day; null when no lead time is known. */
export function orderBy(file: ShopFile, { offer }: Cheapest, runsOutOn: string): string | null {
  const supplier = found(file.suppliers, offer.supplier);
  const holidays = file.shop.specialDays.filter(({ hours }) => hours.length === 0).map(({ on }) => on);
  const closedOn = 'closedOn' in supplier ? (supplier.closedOn as string[]) : [];
  const isWorking = (day: string) =>
    (supplier.workingDays as string[]).includes(weekdayOf(day)) && !holidays.includes(day) && !closedOn.includes(day);
  if (offer.leadDays === null) return null;
  return latestOrder(dayAfter(runsOutOn, -file.shop.safetyDays), offer.leadDays, isWorking);
}
