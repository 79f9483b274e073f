import { priceOfOne } from '@/shared/measure/price-break';
import { type Micros, sum } from '@/shared/quantity/amounts';
import { fraction } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import type { Container, Offer, Order, Shop } from '../shop';

/** Packs of one line that came on one day, and what one of them cost beside what it was to cost. */
export type Came = {
  offer: Offer;
  cameOn: Day;
  packs: number;
  /** What one pack cost, to the nearest micro; null when what was paid for any of them was not entered. */
  paidEach: Micros | null;
  quoted: Micros | null;
  /** How much dearer one pack was than on the order; negative when cheaper, null when either is not known. */
  dearerBy: number | null;
};

/** What came of an order, by line and day, the latest day first. */
export function cameOf(order: Order, { containers }: Pick<Shop, 'containers'>): Came[] {
  const came = order.lines.flatMap(({ offer, price }) => {
    const its = containers.filter((one) => one.order === order.id && one.offer === offer.id);
    const days = [...new Set(its.map(({ receivedOn }) => receivedOn))];
    return days.map((cameOn): Came => {
      const lots = its.filter(({ receivedOn }) => receivedOn === cameOn);
      const paidEach = eachOf(lots);
      const dearerBy = paidEach === null || price === null ? null : paidEach - price;
      return { offer, cameOn, packs: lots.length, paidEach, quoted: price, dearerBy };
    });
  });
  return came.sort((a, b) => (a.cameOn > b.cameOn ? -1 : a.cameOn < b.cameOn ? 1 : 0));
}

function eachOf(lots: readonly Container[]): Micros | null {
  const paid = lots.flatMap((one) => (one.paid === null ? [] : [one.paid]));
  if (paid.length < lots.length || paid.length === 0) return null;
  return wholeNearest<Micros>(fraction(BigInt(sum(paid)), BigInt(paid.length)));
}

/**
 * Which price of an offer a purchase of so many packs speaks of: the quantity break that it reached, or the price of one
 * pack (null).
 */
export function levelReached({ breaks }: Pick<Offer, 'breaks'>, packs: number): number | null {
  const reached = breaks.filter(({ atLeast }) => atLeast <= packs).map(({ atLeast }) => atLeast);
  return reached.length === 0 ? null : Math.max(...reached);
}

/**
 * Whether what was paid says something new of the offer: it differs from the price that holds now for so many packs, and
 * nobody noted a newer price since.
 */
export function saysNewPrice({ offer, paidEach, cameOn }: Came, ordered: number): boolean {
  if (paidEach === null || (offer.since !== null && offer.since > cameOn)) return false;
  return priceOfOne(offer, ordered) !== paidEach;
}
