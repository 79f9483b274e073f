import type { Micros, Stock } from '@/shared/quantity/amounts';
import { wholeNearest } from '@/shared/quantity/rounding';
import { dayFromNumber, dayNumber } from '@/shared/time/day';
import { arrivalOf, latestOrderDay } from '@/shared/time/working-days';
import type { Offer } from '../shop';
import type { Horizon } from './horizon';
import { type Need, toBuy } from './need';
import { type PricePeriod, pricePeriods } from './price-periods';

/** One offer at one price as a way to meet one need: what a pack holds, what it costs, and when it can be there. */
export type Pack = PricePeriod & {
  /** What one pack holds once it stands on the shelf, whole µL or mg. */
  size: Stock;
  /** The prices of one pack, by how many are bought in one order; the first is for one. */
  levels: { atLeast: number; price: Micros }[];
  unopenedDays: number;
  openedDays: number;
  /** For each needed day, by its place: how a pack that is opened then would come. Null when it would come too late. */
  ways: (Way | null)[];
  /** The day an order arrives, by the day it is placed on, counted from the first day of the horizon. */
  arrivals: number[];
};

/** How a pack comes that is opened on a needed day. */
type Way = {
  /** The last day on which it can be ordered for that. */
  orderOn: number;
  /** The day it is there; for a need that no order can meet in time, as if it came in time. */
  arrivesOn: number;
  /** How many needed days it may serve, counted as the place behind the last of them. */
  before: number;
};

/** The packs that a need can be met with, and which of the needed days no order placed today can meet in time. */
export type Market = { packs: Pack[]; isLate: boolean[] };

/**
 * Every pack that can be bought for a need.
 *
 * An order arrives its lead time in working days after it was placed, and at least the safety days before a pack of it
 * is opened, fresh enough to be used. A day that no order placed today can reach like that is late: for it everything
 * is ordered today and counts as if it were there, but such a pack serves only late days and those that it does reach.
 *
 * Takes    the need, and the offers of its product; those put away are left out, and those far too small for the need
 * Gives    the packs in the order of the offers, one for each price that an offer has within the horizon. A lead time that is unknown counts as none, and must be said beside it.
 */
export function marketFor(need: Need, offers: readonly Offer[], horizon: Horizon): Market {
  const open = offers.flatMap((offer) => pricePeriods(offer, horizon)).filter(({ offer }) => isEnough(offer, need));
  const plans = open.map((period) => need.days.map((day) => orderFor(period, day, horizon)));
  const isLate = need.days.map((_, place) => !plans.some((plan) => plan[place]?.inTime));
  const packs = open.map((period, index): Pack => {
    const { offer } = period;
    const { unopenedDays, openedDays } = offer.product.shelfLife;
    return {
      ...period,
      size: sizeOf(offer),
      levels: levelsOf(offer),
      unopenedDays: unopenedDays ?? Number.POSITIVE_INFINITY,
      openedDays: openedDays ?? Number.POSITIVE_INFINITY,
      ways: waysOf(need, plans[index] ?? [], isLate),
      arrivals: arrivalsOf(offer, horizon),
    };
  });
  return { packs, isLate };
}

/** Packs of which a need would take more than this are no way to meet it: somebody slipped in a size or in a count. */
const MOST_PACKS = 20_000;

const isEnough = (offer: Offer, need: Need): boolean => sizeOf(offer) > 0 && sizeOf(offer) * MOST_PACKS >= toBuy(need);

const sizeOf = ({ pack }: Offer): Stock => wholeNearest<Stock>(pack);

type Order = { orderOn: number; arrivesOn: number; inTime: boolean; reaches: boolean; isPlaceable: boolean };

/**
 * The last order at a price that is there the safety days before a day, and whether it can still be placed and keeps
 * until then. Where nothing can be there in time any more, what is ordered on the first day counts as if it were.
 */
function orderFor({ offer, from, until }: PricePeriod, day: number, { start, safetyDays }: Horizon): Order {
  const { leadDays, supplier, product } = offer;
  const lead = leadDays ?? 0;
  const asLate = latestOrderDay(dayFromNumber(day - safetyDays), lead, supplier.workingDays);
  const by = dayNumber(asLate) < until ? asLate : latestOrderDay(dayFromNumber(until - 1), 0, supplier.workingDays);
  const orderOn = dayNumber(by);
  const reaches = orderOn >= from;
  if (!reaches) {
    const first = dayNumber(arrivalOf(dayFromNumber(start), lead, supplier.workingDays));
    return { orderOn: start, arrivesOn: Math.min(first, day), inTime: false, reaches, isPlaceable: from === start };
  }
  const arrivesOn = dayNumber(arrivalOf(by, lead, supplier.workingDays));
  const keeps = arrivesOn + (product.shelfLife.unopenedDays ?? Number.POSITIVE_INFINITY) >= day;
  return { orderOn, arrivesOn, inTime: keeps, reaches, isPlaceable: true };
}

function waysOf({ days }: Need, orders: Order[], isLate: boolean[]): (Way | null)[] {
  // From the last day back: a pack for a late day serves on until the first day that is not late and that it misses.
  const ways: (Way | null)[] = [];
  let before = days.length;
  for (let place = days.length - 1; place >= 0; place--) {
    const { orderOn, arrivesOn, inTime, reaches, isPlaceable } = orders[place] ?? never('order');
    if (!isLate[place] && !reaches) before = place;
    ways[place] = isPlaceable && (isLate[place] || inTime) ? { orderOn, arrivesOn, before } : null;
  }
  return ways;
}

function levelsOf({ price, breaks }: Offer): Pack['levels'] {
  const rising = [...breaks].sort((a, b) => a.atLeast - b.atLeast);
  return [{ atLeast: 1, price }, ...rising];
}

const arrivalsOf = ({ leadDays, supplier }: Offer, { start, days }: Horizon): number[] =>
  Array.from({ length: days }, (_, offset) =>
    dayNumber(arrivalOf(dayFromNumber(start + offset), leadDays ?? 0, supplier.workingDays)),
  );

function never(what: string): never {
  throw new RangeError(`buying: no ${what}`);
}
