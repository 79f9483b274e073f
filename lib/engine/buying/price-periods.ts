import { dayFromNumber } from '@/shared/time/day';
import { offerOn, priceChangesIn } from '../ahead/price-in-force';
import type { Offer } from '../shop';
import type { Horizon } from './horizon';

/** An offer at one of its prices, and the days on which an order is placed at it, as day numbers; the last not included. */
export type PricePeriod = { offer: Offer; from: number; until: number };

/**
 * An offer by the prices that it has within a horizon, one after the other. An order costs what is in force on its day.
 *
 * Gives    the offer itself for the whole horizon where its price stays; no period in which it cannot be bought
 */
export function pricePeriods(offer: Offer, { start, end }: Pick<Horizon, 'start' | 'end'>): PricePeriod[] {
  const starts = [start, ...priceChangesIn(offer, start, end)];
  return starts.flatMap((from, place) => {
    const priced = offerOn(offer, dayFromNumber(from));
    return priced.archived ? [] : [{ offer: priced, from, until: starts[place + 1] ?? Number.POSITIVE_INFINITY }];
  });
}

/** Whether an order on a day is placed at the price of a period. */
export const isAtPriceOn = ({ from, until }: Pick<PricePeriod, 'from' | 'until'>, day: number): boolean =>
  day >= from && day < until;
