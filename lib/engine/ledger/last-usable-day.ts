import { addDays, type Day, dayNumber } from '@/shared/time/day';
import type { Container } from '../shop';

/** What of a container decides how long it may be used. */
export type Keeping = Pick<Container, 'receivedOn' | 'openedOn' | 'expiresOn'> & {
  product: Pick<Container['product'], 'shelfLife'>;
};

/**
 * The last day, inclusive, on which what a container holds may still be used: the earlier of its printed expiry and the
 * day its opened life ends.
 *
 * Takes    the container, and the day it would be opened when it is not open yet (left out: it stays shut)
 * Gives    null when neither an expiry nor a life is known
 */
export function lastUsableDay(container: Keeping, openedOn: Day | null = container.openedOn): Day | null {
  const { unopenedDays, openedDays } = container.product.shelfLife;
  const shut = container.expiresOn ?? (unopenedDays === null ? null : addDays(container.receivedOn, unopenedDays));
  const opened = openedOn === null || openedDays === null ? null : addDays(openedOn, openedDays);
  if (shut === null || opened === null) return shut ?? opened;
  return dayNumber(shut) < dayNumber(opened) ? shut : opened;
}

/** The same as a day number (days since 1970-01-01), for long walks; +∞ when nothing ends the container's life. */
export function lastUsableDayNumber(container: Keeping, openedOn: Day | null = container.openedOn): number {
  const last = lastUsableDay(container, openedOn);
  return last === null ? Number.POSITIVE_INFINITY : dayNumber(last);
}
