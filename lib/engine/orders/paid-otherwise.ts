import { priceOfOne } from '@/shared/measure/price-break';
import { type Micros, sum } from '@/shared/quantity/amounts';
import { fraction } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import type { Container, Offer, Order, Shop } from '../shop';

/** Packs of one line that came on one day, and what one of them cost beside what it was to cost. */
export type Came = {
  /** Which line of the order it is, by its place. */
  line: number;
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
export function cameOf(order: Order, shop: Pick<Shop, 'containers'>): Came[] {
  const came = order.lines.flatMap(({ offer, price }, line) => {
    const its = cameOfLine(order, line, shop);
    const days = [...new Set(its.map(({ receivedOn }) => receivedOn))];
    return days.map((cameOn): Came => {
      const lots = its.filter(({ receivedOn }) => receivedOn === cameOn);
      const paidEach = eachOf(lots);
      const dearerBy = paidEach === null || price === null ? null : paidEach - price;
      return { line, offer, cameOn, packs: lots.length, paidEach, quoted: price, dearerBy };
    });
  });
  return came.sort((a, b) => (a.cameOn > b.cameOn ? -1 : a.cameOn < b.cameOn ? 1 : 0));
}

/** The bottles of one line: of those of its offer, in the order they came, what lines before it left. */
function cameOfLine({ id, lines }: Order, place: number, { containers }: Pick<Shop, 'containers'>): Container[] {
  const line = lines[place];
  if (!line) return [];
  const its = containers
    .filter((one) => one.order === id && one.offer === line.offer.id)
    .sort((a, b) => (a.receivedOn < b.receivedOn ? -1 : a.receivedOn > b.receivedOn ? 1 : 0));
  const before = lines.slice(0, place).filter(({ offer }) => offer === line.offer);
  const taken = before.reduce((sum, { received }) => sum + received, 0);
  return its.slice(taken, taken + line.received);
}

/** How many packs of an offer an order asks for, on however many lines. */
export const packsOrdered = ({ lines }: Pick<Order, 'lines'>, offer: Offer): number =>
  lines.filter((line) => line.offer === offer).reduce((sum, { count }) => sum + count, 0);

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
