import type { Micros } from '@/shared/quantity/amounts';
import { micros } from '@/shared/quantity/amounts';
import { divide, exact, fraction, multiply } from '@/shared/quantity/exact';
import { nearestBy, ofEach } from '@/shared/quantity/rounding';
import type { Horizon } from './horizon';
import { type Need, neededThrough, weightOf } from './need';
import type { Pack } from './pack';

/** What becomes of one pack that is opened once so much has been covered. */
export type PackUse = {
  /** What is covered once it is used up, or dead. */
  to: number;
  /** The last day on which it can be used; +∞ when nothing is known to end its life. */
  lastDay: number;
  /** What is in it when it is put aside. */
  left: number;
};

/**
 * How far a pack reaches that is opened after so much has been covered.
 *
 *   reaches = the smaller of: covered + size; what is needed through its last usable day
 *
 * Takes    what is covered, the place of the needed day it is opened on, the day it arrived, and the place behind the
 *          last needed day it may serve
 */
export function openPack(
  need: Need,
  horizon: Horizon,
  pack: Pick<Pack, 'size' | 'unopenedDays' | 'openedDays'>,
  opened: { covered: number; place: number; arrivesOn: number; before: number },
): PackUse {
  const day = need.days[opened.place] ?? 0;
  // For a need that nothing reaches fresh enough it counts as usable on that day, as it counts as there.
  const lastDay = Math.max(day, Math.min(opened.arrivesOn + pack.unopenedDays, day + pack.openedDays));
  const full = opened.covered + pack.size;
  const most = Math.min(neededThrough(need, horizon, lastDay), need.upTo[opened.before] ?? 0);
  const to = Math.min(full, most);
  return { to, lastDay, left: full - to };
}

/**
 * What the money tied up in a pack costs: each part of its price from the day of its order to the day that part is used,
 * or dies, or to the end of the horizon.
 *
 *   price × rate ÷ 365 × Σ (part ÷ size × days)
 *
 * Takes    the pack's price, the day it was ordered on, and what is covered before and after it
 * Rounds   to the nearest micro, a half up
 */
export function capitalOf(
  need: Need,
  horizon: Horizon,
  size: number,
  use: PackUse & { price: number; orderOn: number; from: number; place: number },
): Micros {
  const { over, under } = horizon.capitalPerYear;
  if (over === 0n) return micros(0);
  const weight = tiedUp(need, horizon, size, use);
  const estimate = (((use.price * weight) / size) * (Number(over) / Number(under))) / DAYS_PER_YEAR;
  return nearestBy<Micros>(estimate, () =>
    multiply(
      fraction(BigInt(use.price) * BigInt(weight), BigInt(size) * BigInt(DAYS_PER_YEAR)),
      horizon.capitalPerYear,
    ),
  );
}

const DAYS_PER_YEAR = 365;

/** Every µL of a pack times the days from its order until it is used, dies, or the horizon ends. */
export function tiedUp(
  need: Need,
  horizon: Horizon,
  size: number,
  { to, lastDay, left, orderOn, from, place }: PackUse & { orderOn: number; from: number; place: number },
): number {
  const used = weightOf(need, horizon, to, placeOf(need, to, place)) - weightOf(need, horizon, from, place);
  const kept = left * (Math.min(lastDay, horizon.end) - horizon.start);
  return used + kept - size * (orderOn - horizon.start);
}

/** The place of the day that the last of what is covered is for. */
function placeOf({ upTo, days }: Need, covered: number, from: number): number {
  let place = from;
  while (place < days.length - 1 && (upTo[place + 1] ?? 0) < covered) place++;
  return place;
}

/** How long a life that nobody knows counts on behind the horizon, when what is left is credited. */
const UNKNOWN_LIFE = 365;

/** The days on which what is left at the end of the horizon can still be used. */
export const daysBehind = ({ end }: Horizon, lastDay: number): number =>
  lastDay === Number.POSITIVE_INFINITY ? UNKNOWN_LIFE : Math.max(0, lastDay - end);

/**
 * What a pack that is left over at the end of the horizon is still worth: its price for as much as will be used of it,
 * at the pace of this horizon, before it dies.
 *
 *   price × min(left, whole need ÷ days of the horizon × days that it still keeps) ÷ size
 *
 * Rounds   to the nearest micro, a half up
 */
export function creditOf(need: Need, horizon: Horizon, { price, size }: { price: number; size: number }, use: PackUse) {
  const keeps = daysBehind(horizon, use.lastDay);
  if (keeps === 0 || use.left === 0) return micros(0);
  if (use.left * horizon.days <= need.whole * keeps) return micros(ofEach(price, use.left, size));
  return micros(ofEach(price, need.whole * keeps, size * horizon.days));
}

/**
 * The same for packs that are not opened by the end of the horizon. They are used one after another once those before
 * them are used up, so what those take of the days is not counted twice.
 *
 * Takes    how much of what stands before them will still be used
 * Gives    each one's credit, in order
 */
export function creditUnopened(
  need: Need,
  horizon: Horizon,
  packs: readonly { price: number; size: number; lastDay: number }[],
  usedBefore: number,
): Micros[] {
  let used = usedBefore;
  return packs.map(({ price, size, lastDay }) => {
    const part = Math.max(0, Math.min(size, usableBehind(need, horizon, lastDay) - used));
    used += part;
    return nearestBy<Micros>((price * part) / size, () => exactShare(price, part, size));
  });
}

const exactShare = (price: number, part: number, size: number) =>
  divide(multiply(exact(BigInt(price)), exact(part)), exact(BigInt(size)));

/** What of a pack that is left over will still be used, µL or mg. */
export const stillUsed = (need: Need, horizon: Horizon, { left, lastDay }: PackUse): number =>
  Math.min(left, usableBehind(need, horizon, lastDay));

/** What the need takes behind the horizon until a day, at the pace of the horizon, µL or mg. */
export const usableBehind = (need: Need, horizon: Horizon, lastDay: number): number =>
  (need.whole * daysBehind(horizon, lastDay)) / horizon.days;

/** How a pack's price turns into the cost of a day, for estimates. */
export const ratePerDay = ({ capitalPerYear: { over, under } }: Horizon): number =>
  Number(over) / Number(under) / DAYS_PER_YEAR;
