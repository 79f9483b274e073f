import 'server-only';
import type { Clock } from '../clock';
import { shopRevision } from '../data/shop-marks';
import { shopFileOf } from '../data/snapshot';
import type { Plan } from '../engine/ahead/plan';
import { planAhead } from '../engine/ahead/plan-ahead';
import { WEEKS_AHEAD } from '../engine/ahead/weeks-ahead';
import { shopOfFile } from '../engine/shop-of-file';

/** The weeks ahead of a shop as it stood after so many commands. */
type Kept = { revision: number; plan: Promise<Plan> };

const kept = new Map<string, Kept>();

/** So many shops are kept ready; the one that was asked for first makes room. */
const MOST_SHOPS = 4;

/**
 * The weeks ahead of a shop as it stands, kept ready: a slider asks for the same ones dozens of times, and reading a shop
 * takes longer than everything that is then worked out. Whoever asks while they are being made waits for those.
 *
 * Gives    null when there is no such shop
 */
export async function aheadKept(shopId: string, clock: Clock): Promise<Plan | null> {
  // Read before the shop itself, the revision may be older than what is then read, and never newer.
  const revision = await shopRevision(shopId);
  if (revision === null) return null;
  const known = kept.get(shopId);
  if (known?.revision === revision) {
    const plan = await known.plan;
    if (plan.today === clock.today(plan.shop.zone)) return plan;
  }
  const plan = aheadNow(shopId, clock);
  kept.delete(shopId);
  kept.set(shopId, { revision, plan });
  for (const old of [...kept.keys()].slice(0, -MOST_SHOPS)) kept.delete(old);
  plan.catch(() => kept.delete(shopId));
  return plan;
}

async function aheadNow(shopId: string, clock: Clock): Promise<Plan> {
  const shop = shopOfFile(await shopFileOf(shopId));
  return planAhead(shop, clock.today(shop.zone), WEEKS_AHEAD);
}
