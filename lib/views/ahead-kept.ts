import 'server-only';
import type { Clock } from '../clock';
import { planKept } from '../data/plan-kept';
import { shopHere } from '../data/shops';
import { shopOf } from '../data/snapshot';
import type { Plan } from '../engine/ahead/plan';

/** The weeks ahead of a shop as it stands: a slider asks for the same ones dozens of times. Null when there is no such shop. */
export async function aheadKept(shopId: string, clock: Clock): Promise<Plan | null> {
  if (!(await shopHere(shopId))) return null;
  const shop = await shopOf(shopId);
  return planKept(shop, clock.today(shop.zone));
}
