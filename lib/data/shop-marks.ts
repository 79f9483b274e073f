import 'server-only';
import { type Instant, instantOf } from '@/shared/time/instant';
import { database } from './database';
import { toWhole } from './whole';

/** How many commands a shop has had, and when the last of them was recorded. */
export type ShopMarks = { revision: number; changedAt: Instant };

/**
 * The marks of a shop. Read before the shop itself, they may be older than what is then read, and never newer.
 *
 * Throws   when there is no such shop
 */
export async function shopMarks(shopId: string): Promise<ShopMarks> {
  const { reader } = await database();
  const { revision } = await reader.shop.findUniqueOrThrow({ where: { id: shopId }, select: { revision: true } });
  const last = await reader.command.aggregate({ where: { shopId }, _max: { recordedAt: true } });
  return { revision: toWhole(revision), changedAt: instantOf(Number(last._max.recordedAt)) };
}
