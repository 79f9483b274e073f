import 'server-only';
import { cache } from 'react';
import type { ShopFile } from '@/shared/shop-file/contract';
import { isTooMuchAhead } from '@/shared/shop-file/limits';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import type { Clock } from '../clock';
import { planKept, pricedKept } from '../data/plan-kept';
import { snapshotOf } from '../data/snapshot';
import type { Plan, Spraying } from '../engine/ahead/plan';
import { stillToSpray } from '../engine/ahead/turns-on-record';
import type { Shop } from '../engine/shop';
import { benchStates, certaintyNow, type Standing } from './bench-states';
import { type FigAt, figuresOf } from './figures';
import { shopsAndShown, toSetup } from './shown-shop';

/** One shop at one moment, from one read. */
export type HereNow = {
  id: string;
  isDemo: boolean;
  /** The shop as its own file, with every size and price as it was typed. */
  file: ShopFile;
  shop: Shop;
  now: Instant;
  today: Day;
  /** How this shop wants its figures written. */
  ways: { units: Shop['units']; currency: string; zone: Shop['zone']; today: Day };
};

/** The same with what lies ahead, who may stand where, and every figure of both. */
export type House = HereNow & {
  plan: Plan;
  /** The sprayings of the plan that are not on record yet. */
  toSpray: Spraying[];
  benches: Standing[];
  figure: FigAt;
};

/**
 * The shop that is being looked at, as it stands now. Read once for a request, whoever asks. What every page stands in
 * needs no more than this, so that a shop whose plan cannot be made can still be left for another.
 *
 * Gives   null when there is no shop in this database, and when the device has to be asked which one is its own
 */
export const shopNow = cache(async (clock: Clock): Promise<HereNow | null> => {
  const { shown } = await shopsAndShown();
  if (!shown) return null;
  const { file, shop: asWritten } = await snapshotOf(shown.id);
  const today = clock.today(asWritten.zone);
  const shop = pricedKept(asWritten, today);
  const ways = { units: shop.units, currency: shop.currency, zone: shop.zone, today };
  return { id: shown.id, isDemo: shown.isDemo, file, shop, now: clock.now(), today, ways };
});

/** The shop that is being looked at, with its plan. Made once for a request. */
export const houseNow = cache(async (clock: Clock): Promise<House | null> => {
  const here = await shopNow(clock);
  if (!here) return null;
  const plan = await planOr(here, toSetup);
  const benches = benchStates(here.shop, here.now, await certaintyNow(clock, here.id));
  const toSpray = stillToSpray(plan, here.today);
  return { ...here, plan, toSpray, benches, figure: figuresOf({ plan, benches, now: here.now }) };
});

/** What is too much about the programs of a shop that was kept before there were limits; null when nothing is. */
export async function tooMuchOf(here: Pick<HereNow, 'shop' | 'today'>): Promise<string | null> {
  let said: string | null = null;
  await planOr(here, (sentence) => {
    said = sentence;
  });
  return said;
}

async function planOr<T>(
  { shop, today }: Pick<HereNow, 'shop' | 'today'>,
  otherwise: (sentence: string) => T,
): Promise<Plan | T> {
  try {
    return await planKept(shop, today);
  } catch (error) {
    if (!isTooMuchAhead(error)) throw error;
    return otherwise(error.message);
  }
}
