import type { Stock } from '@/shared/quantity/amounts';
import { plus, stock } from '@/shared/quantity/amounts';
import { dayNumber } from '@/shared/time/day';
import type { Spraying } from '../ahead/plan';
import type { Product } from '../shop';
import type { Horizon } from './horizon';

/**
 * What a product is needed for and the shelf does not give: the amounts that have to be bought, day by day. Amounts are
 * also kept added up, because a purchase covers them in their order: the first so many µL, then the next.
 */
export type Need = {
  product: Product;
  /** All that is needed in the horizon, whether the shelf gives it or not. */
  whole: Stock;
  /** The days on which something has to be bought for, as day numbers in order. */
  days: number[];
  /** What has to be bought before the first, the second … day, and last of all in the whole horizon. */
  upTo: number[];
  /** The same, each µL times the days from the start of the horizon to its use. */
  weightUpTo: number[];
  /** For each day of the horizon, what has to be bought for it and all days before it. */
  throughDay: number[];
};

/** One product's need in all, and what of it the shelf does not give. */
export type Asked = { day: number; amount: Stock; short: Stock };

/** What every product is needed for, by product, in the order of the sprayings. Amounts that are unknown are left out. */
export function askedOf(sprayings: readonly Spraying[]): Map<Product, Asked[]> {
  const byProduct = new Map<Product, Asked[]>();
  for (const { date, lines } of sprayings) {
    const day = dayNumber(date);
    for (const { ingredient, amount, short } of lines) {
      if (amount === null || amount === 0) continue;
      const list = byProduct.get(ingredient.product) ?? [];
      if (list.length === 0) byProduct.set(ingredient.product, list);
      list.push({ day, amount, short });
    }
  }
  return byProduct;
}

/**
 * What has to be bought of a product, added up by day.
 *
 * Takes    what is asked of it, in the order of the days, all within the horizon
 */
export function needOf(product: Product, asked: readonly Asked[], { start, days: length }: Horizon): Need {
  const byDay = new Map<number, number>();
  let whole = stock(0);
  for (const { day, amount, short } of asked) {
    whole = plus(whole, amount);
    if (short > 0) byDay.set(day, (byDay.get(day) ?? 0) + short);
  }
  const days = [...byDay.keys()].sort((a, b) => a - b);
  const [upTo, weightUpTo] = [[0], [0]];
  for (const [index, day] of days.entries()) {
    const amount = byDay.get(day) ?? 0;
    upTo.push(stock((upTo[index] ?? 0) + amount));
    weightUpTo.push((weightUpTo[index] ?? 0) + amount * (day - start));
  }
  const throughDay: number[] = [];
  for (let offset = 0, index = 0; offset < length; offset++) {
    if (days[index] === start + offset) index++;
    throughDay.push(upTo[index] ?? 0);
  }
  return { product, whole, days, upTo, weightUpTo, throughDay };
}

/** All that has to be bought of a product. */
export const toBuy = ({ upTo, days }: Need): number => upTo[days.length] ?? 0;

/** Which of the needed days the next µL after so many is for: its place in `days`. Looks on from a place at or before it. */
export function placeAfter({ upTo, days }: Need, covered: number, from: number): number {
  let place = from;
  while (place < days.length && (upTo[place + 1] ?? 0) <= covered) place++;
  return place;
}

/** What has to be bought up to and including a day number; all of it when the day lies behind the horizon. */
export function neededThrough(need: Need, { start, end }: Horizon, day: number): number {
  return day >= end ? toBuy(need) : (need.throughDay[day - start] ?? 0);
}

/** The first so many µL, each times the days from the start of the horizon to its use. */
export const weightOf = (
  { upTo, weightUpTo, days }: Need,
  { start }: Horizon,
  covered: number,
  place: number,
): number => (weightUpTo[place] ?? 0) + (covered - (upTo[place] ?? 0)) * ((days[place] ?? start) - start);
