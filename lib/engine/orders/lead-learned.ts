import { type Day, daysBetween } from '@/shared/time/day';
import { leadTaken } from '@/shared/time/working-days';
import type { Order, Shop, Supplier } from '../shop';
import { expectedDay } from './on-order';

/** One day on which something of an order came. What came of one order on one day is one delivery. */
export type Delivery = {
  order: Order;
  cameOn: Day;
  /** From order to arrival, in the supplier's working days. */
  lead: number;
  /** Calendar days after the day it was expected; negative when it came before, null when no day was known. */
  daysLate: number | null;
};

/** What a supplier really takes from order to arrival, in its working days. */
export type LeadLearned = { deliveries: Delivery[]; median: number; worst: number };

/**
 * How long a supplier really takes, from what came of its orders.
 *
 * Of an even number of deliveries the median is the longer of the two in the middle: a promise errs on the late side.
 * What has not come yet is not in it.
 *
 * Gives    null when nothing of any order ever came
 * Units    the supplier's working days
 */
export function leadLearned(shop: Pick<Shop, 'orders' | 'containers'>, supplier: Supplier): LeadLearned | null {
  const deliveries = shop.orders.filter((order) => order.supplier === supplier).flatMap((one) => cameOf(shop, one));
  const leads = deliveries.map(({ lead }) => lead).sort((a, b) => a - b);
  const median = leads[(leads.length - (leads.length % 2)) / 2];
  const worst = leads.at(-1);
  if (median === undefined || worst === undefined) return null;
  return { deliveries: deliveries.sort((a, b) => daysBetween(a.cameOn, b.cameOn)), median, worst };
}

function cameOf({ containers }: Pick<Shop, 'containers'>, order: Order): Delivery[] {
  const days = new Set(containers.filter((one) => one.order === order.id).map(({ receivedOn }) => receivedOn));
  const expected = expectedDay(order);
  return [...days].map((cameOn) => ({
    order,
    cameOn,
    lead: leadTaken(order.placedOn, cameOn, order.supplier.workingDays),
    daysLate: expected === null ? null : daysBetween(expected, cameOn),
  }));
}
