import { type Micros, type Stock, stock } from '@/shared/quantity/amounts';
import { wholeNearest } from '@/shared/quantity/rounding';
import { type Day, dayNumber } from '@/shared/time/day';
import { arrivalOf } from '@/shared/time/working-days';
import type { Container, Offer, Order, Product, Shop } from '../shop';

/** What of one line of an order is still expected. */
export type OnOrder = {
  order: Order;
  /** Which line of it, by its place. */
  line: number;
  offer: Offer;
  packs: number;
  /** All of those packs together, µL or mg. */
  amount: Stock;
  /** What one pack was to cost; null when nobody noted it. */
  price: Micros | null;
  /** Null when nobody knows: no day was noted, and no delivery time of what was ordered. */
  expectedOn: Day | null;
  /** Whether that day has passed. */
  isLate: boolean;
};

/**
 * The day an order is expected: as it was noted, or else as the delivery times of its lines have it, the longest.
 *
 * Gives    null when no day was noted and the delivery time of any line is unknown
 */
export function expectedDay({ expectedOn, placedOn, supplier, lines }: Order): Day | null {
  if (expectedOn !== null || lines.length === 0) return expectedOn;
  const leads = lines.map(({ offer }) => offer.leadDays);
  if (leads.includes(null)) return null;
  return arrivalOf(placedOn, Math.max(...leads.map((lead) => lead ?? 0)), supplier.workingDays);
}

/** Packs of a line that have not come. More may come than was ordered. */
export const missingOf = ({ count, received }: Order['lines'][number]): number =>
  received >= count ? 0 : count - received;

/** Packs of a line that are still to come, as long as its order is open. */
export const restOf = ({ closedOn }: Pick<Order, 'closedOn'>, line: Order['lines'][number]): number =>
  closedOn !== null ? 0 : missingOf(line);

/** Everything that is still expected, the soonest first; what nobody knows a day for comes last. */
export function onOrder({ orders }: Pick<Shop, 'orders'>, today: Day): OnOrder[] {
  const expected = orders.flatMap((order) => {
    const expectedOn = expectedDay(order);
    const isLate = expectedOn !== null && expectedOn < today;
    return order.lines.flatMap((line, place): OnOrder[] => {
      const packs = restOf(order, line);
      if (packs === 0) return [];
      const amount = stock(packs * sizeOf(line.offer));
      return [{ order, line: place, offer: line.offer, packs, amount, price: line.price, expectedOn, isLate }];
    });
  });
  return expected.sort((a, b) => dayOr(a.expectedOn) - dayOr(b.expectedOn));
}

/** What of one product is still expected. */
export const onOrderOf = (shop: Pick<Shop, 'orders'>, today: Day, product: Product): OnOrder[] =>
  onOrder(shop, today).filter(({ offer }) => offer.product === product);

/** What one pack holds once it stands on the shelf. */
const sizeOf = ({ pack }: Offer): Stock => wholeNearest<Stock>(pack);

const dayOr = (day: Day | null): number => (day === null ? Number.POSITIVE_INFINITY : dayNumber(day));

/**
 * The bottles that will come, as if they stood on the shelf already with the day they are expected as the day they came.
 *
 * What is late counts from the supplier's next working day on. What has no day at all is left out: nobody can plan
 * with it.
 */
export const comingContainers = (shop: Pick<Shop, 'orders'>, today: Day): Container[] =>
  onOrder(shop, today).flatMap((coming) => {
    const { order, line, offer, packs, price, expectedOn, isLate } = coming;
    if (expectedOn === null) return [];
    const receivedOn = isLate ? arrivalOf(today, 0, order.supplier.workingDays) : expectedOn;
    return Array.from({ length: packs }, (_, place): Container => {
      const size = sizeOf(offer);
      return {
        ...{ lot: `order ${order.id} ${offer.id} ${line}`, place, product: offer.product, packText: offer.packText },
        ...{ size, remaining: size, paid: price, receivedOn, openedOn: null, expiresOn: null, keptIn: null },
        ...{ order: order.id, offer: offer.id },
      };
    });
  });

/**
 * The shop with what is on order standing on its shelf from the day it is expected: for whoever plans what to buy, so
 * that nothing is bought twice. A plan of what is there, which buys nothing, takes the shop as it is.
 */
export const withOnOrder = (shop: Shop, today: Day): Shop => ({
  ...shop,
  containers: [...shop.containers, ...comingContainers(shop, today)],
});
