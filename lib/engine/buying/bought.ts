import { priceOfOne } from '@/shared/measure/price-break';
import { type Micros, micros, sum } from '@/shared/quantity/amounts';
import { ofEach } from '@/shared/quantity/rounding';
import type { Horizon } from './horizon';
import { type Need, placeAfter, toBuy } from './need';
import type { Pack } from './pack';
import { capitalOf, creditOf, creditUnopened, openPack, type PackUse, stillUsed } from './pack-use';
import type { Bought } from './shortest-path';

/** One pack of a purchase, and what becomes of it. */
export type UsedPack = Bought & {
  /** What one pack costs when so many are in the order. */
  price: Micros;
  arrivesOn: number;
  /** Null when it is never opened within the horizon. */
  openedOn: number | null;
  /** What is covered before it, and after it. */
  from: number;
  use: PackUse;
  capital: Micros;
  /** What is left in it and will still be used, in money. */
  credit: Micros;
  /** What dies in it within the horizon, in money. */
  waste: Micros;
};

/** What the packs of one product come to. `covers` says whether they meet all of its need, each in time. */
export type Purchase = {
  packs: UsedPack[];
  goods: Micros;
  capital: Micros;
  left: Micros;
  waste: Micros;
  covers: boolean;
};

/** Goods and capital, less what is left: what the packs cost without the freight of their orders. May be negative. */
export const costOfPurchase = ({ goods, capital, left }: Purchase): number => goods + capital - left;

/**
 * What becomes of packs that are used one after another, and what they cost.
 *
 * Takes    the packs in the order they are used; how many of an offer are in one order decides their price
 * Units    micros; µL or mg
 */
export function purchaseOf(need: Need, horizon: Horizon, bought: readonly Bought[]): Purchase {
  const prices = pricesOf(bought);
  const [opened, rest]: [UsedPack[], UsedPack[]] = [[], []];
  let [covered, place, inTime] = [0, 0, true];
  for (const [index, one] of bought.entries()) {
    const price = prices[index] ?? micros(0);
    if (covered >= toBuy(need)) {
      rest.push(keepShut(need, horizon, { ...one, price }, covered));
      continue;
    }
    place = placeAfter(need, covered, place);
    const coming = comingFor(need, horizon, one, place);
    if (coming === 'too late') inTime = false;
    if (typeof coming === 'string') opened.push(keepShut(need, horizon, { ...one, price }, covered));
    else opened.push(openNow(need, horizon, { ...one, price, ...coming }, covered, place));
    covered = opened.at(-1)?.use.to ?? covered;
  }
  settleRest(need, horizon, opened, rest);
  const packs = [...opened, ...rest];
  const total = (of: (pack: UsedPack) => Micros) => sum(packs.map(of));
  return {
    packs,
    goods: total(({ price }) => price),
    capital: total(({ capital }) => capital),
    left: total(({ credit }) => credit),
    waste: total(({ waste }) => waste),
    covers: inTime && covered >= toBuy(need),
  };
}

/** The price of each pack, by how many packs of its offer the same order holds. */
function pricesOf(bought: readonly Bought[]): Micros[] {
  const counts = new Map<Pack, Map<number, number>>();
  for (const { pack, orderOn } of bought) {
    const byDay = counts.get(pack) ?? new Map<number, number>();
    counts.set(pack, byDay.set(orderOn, (byDay.get(orderOn) ?? 0) + 1));
  }
  return bought.map(({ pack, orderOn }) => priceOfOne(pack.offer, counts.get(pack)?.get(orderOn) ?? 1));
}

type Priced = Bought & { price: Micros };

function openNow(need: Need, horizon: Horizon, one: Priced & Coming, covered: number, place: number): UsedPack {
  const { pack, orderOn, price, arrivesOn, before } = one;
  const use = openPack(need, horizon, pack, { covered, place, arrivesOn, before });
  const capital = capitalOf(need, horizon, pack.size, { ...use, price, orderOn, from: covered, place });
  const isLast = use.to >= toBuy(need);
  const credit = isLast ? creditOf(need, horizon, { price, size: pack.size }, use) : micros(0);
  const dies = use.left > 0 && use.lastDay < horizon.end;
  const waste = dies ? micros(price - ofEach<number, number>(price, pack.size - use.left, pack.size)) : micros(0);
  const openedOn = need.days[place] ?? null;
  return { pack, orderOn, price, arrivesOn, openedOn, from: covered, use, capital, credit, waste };
}

function keepShut(need: Need, horizon: Horizon, one: Priced, covered: number): UsedPack {
  const { pack, orderOn, price } = one;
  const arrivesOn = arrivalOn(pack, horizon, orderOn);
  const use = { to: covered, lastDay: arrivesOn + pack.unopenedDays, left: pack.size };
  const place = need.days.length;
  const capital = capitalOf(need, horizon, pack.size, { ...use, price, orderOn, from: covered, place });
  const waste = use.lastDay < horizon.end ? price : micros(0);
  return { ...one, arrivesOn, openedOn: null, from: covered, use, capital, credit: micros(0), waste };
}

/** What is left in the last opened pack is used first; then those that were never opened, one after another. */
function settleRest(need: Need, horizon: Horizon, opened: UsedPack[], rest: UsedPack[]): void {
  const last = opened.at(-1);
  const before = last ? stillUsed(need, horizon, last.use) : 0;
  const shut = rest.map(({ price, pack, use }) => ({ price, size: pack.size, lastDay: use.lastDay }));
  for (const [index, credit] of creditUnopened(need, horizon, shut, before).entries()) {
    const one = rest[index];
    if (one) one.credit = credit;
  }
}

/** How a pack is there for a needed day: since when, and the place behind the last needed day that it may serve. */
export type Coming = { arrivesOn: number; before: number };

/**
 * Whether a pack of an order can be opened on a needed day.
 *
 * Gives    how it is there; or that it was ordered too late for that day; or that it is of no use by then: it died shut,
 *          or the day is one that other packs reach in time and this one does not
 */
export function comingFor(
  need: Need,
  horizon: Horizon,
  { pack, orderOn }: Bought,
  place: number,
): Coming | 'too late' | 'of no use' {
  const way = pack.ways[place];
  if (!way) return 'of no use';
  if (orderOn > way.orderOn) return 'too late';
  if (orderOn < pack.from) return 'of no use';
  // Ordered on the last day for this, it comes as that says: there a late day counts as if it were met.
  if (orderOn === way.orderOn) return way;
  const arrivesOn = arrivalOn(pack, horizon, orderOn);
  const keeps = arrivesOn + pack.unopenedDays >= (need.days[place] ?? 0);
  return keeps ? { arrivesOn, before: way.before } : 'of no use';
}

/** The day an order arrives that is placed on a day of the horizon. */
export const arrivalOn = ({ arrivals }: Pack, { start }: Horizon, orderOn: number): number =>
  arrivals[orderOn - start] ?? orderOn;
