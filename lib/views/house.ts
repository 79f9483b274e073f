import 'server-only';
import { cache } from 'react';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import type { Clock } from '../clock';
import { shopFileOf } from '../data/snapshot';
import type { Plan } from '../engine/ahead/plan';
import { planAhead } from '../engine/ahead/plan-ahead';
import { type BenchState, keepOut } from '../engine/keepout/keep-out';
import type { Shop } from '../engine/shop';
import { shopOfFile } from '../engine/shop-of-file';
import { type FigAt, figuresOf } from './figures';
import { shopsAndShown } from './shown-shop';

/** How many weeks every page looks ahead, so that a page and `shop plan --weeks 26` say the same. */
export const WEEKS_AHEAD = 26;

/** One shop at one moment, from one read: what stands in it, what lies ahead, and every figure of both. */
export type House = {
  id: string;
  isDemo: boolean;
  /** The shop as its own file, with every size and price as it was typed. */
  file: ShopFile;
  shop: Shop;
  now: Instant;
  today: Day;
  plan: Plan;
  benches: BenchState[];
  figure: FigAt;
  /** How this shop wants its figures written. */
  ways: { units: Shop['units']; currency: string; zone: Shop['zone']; today: Day };
};

/**
 * The shop that is being looked at, as it stands now. Read once for a request, whoever asks.
 *
 * Gives   null when there is no shop in this database
 */
export const houseNow = cache(async (clock: Clock): Promise<House | null> => {
  const { shown } = await shopsAndShown();
  if (!shown) return null;
  const file = await shopFileOf(shown.id);
  const shop = shopOfFile(file);
  const now = clock.now();
  const today = clock.today(shop.zone);
  const plan = planAhead(shop, today, WEEKS_AHEAD);
  const benches = keepOut(shop, now);
  const ways = { units: shop.units, currency: shop.currency, zone: shop.zone, today };
  return {
    id: shown.id,
    isDemo: shown.isDemo,
    file,
    shop,
    now,
    today,
    plan,
    benches,
    figure: figuresOf({ plan, benches }),
    ways,
  };
});
