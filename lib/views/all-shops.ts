import 'server-only';
import { showMoney } from '@/shared/measure/show';
import { isTooMuchAhead } from '@/shared/shop-file/limits';
import { showClock } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { planKept } from '../data/plan-kept';
import type { ShopListed } from '../data/shops';
import { shopOf } from '../data/snapshot';
import type { Plan } from '../engine/ahead/plan';
import { stillToSpray } from '../engine/ahead/turns-on-record';
import type { Shop } from '../engine/shop';
import { benchStates, certaintyNow } from './bench-states';

/** One shop in one line: who may stand where, what is to do today, what to order, what the weeks ahead cost. */
export type ShopAtAGlance = ShopListed & {
  /** The time there. Null when the shop cannot be read: then nothing of it is known but that people keep out. */
  clock: string | null;
  keepOut: { benches: number; out: number; unknown: number } | null;
  /** Null when its programs are too many to look ahead. */
  ahead: { sprayToday: number; orderNow: number; runOut: number; cost: string; unknownCosts: number } | null;
};

/** Some shops at a glance, in their order. */
export async function allShops(shops: readonly ShopListed[], clock: Clock): Promise<ShopAtAGlance[]> {
  return Promise.all(shops.map((listed) => atAGlance(listed, clock)));
}

async function atAGlance(listed: ShopListed, clock: Clock): Promise<ShopAtAGlance> {
  try {
    const shop = await shopOf(listed.id);
    const now = clock.now();
    const benches = benchStates(shop, now, await certaintyNow(clock, listed.id));
    const keepOut = {
      benches: benches.length,
      out: benches.filter(({ state }) => state !== 'open').length,
      unknown: benches.filter(({ state }) => state === 'unknown').length,
    };
    return { ...listed, clock: showClock(now, shop.zone), keepOut, ahead: await aheadOf(shop, clock) };
  } catch (error) {
    console.error(`Shop ${listed.id} cannot be read:`, error);
    return { ...listed, clock: null, keepOut: null, ahead: null };
  }
}

async function aheadOf(shop: Shop, clock: Clock): Promise<ShopAtAGlance['ahead']> {
  const today = clock.today(shop.zone);
  const plan = await planOrNone(shop, today);
  if (plan === null) return null;
  return {
    sprayToday: stillToSpray(plan, today).filter(({ date }) => date === today).length,
    orderNow: plan.products.filter(({ reorder }) => reorder !== null && reorder.weeks <= 0).length,
    runOut: plan.products.filter(({ runsOutOn }) => runsOutOn !== null).length,
    cost: showMoney(plan.totals.materialCost, shop.currency),
    unknownCosts: plan.totals.unknownCosts,
  };
}

async function planOrNone(shop: Shop, today: ReturnType<Clock['today']>): Promise<Plan | null> {
  try {
    return await planKept(shop, today);
  } catch (error) {
    if (!isTooMuchAhead(error)) throw error;
    return null;
  }
}
