import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';
import { readZone } from '@/shared/time/zone';
import type { Clock } from '../clock';
import { shopHere } from '../data/shops';
import { shopFileOf } from '../data/snapshot';

/** A shop as it stands, and its day, for an action that has to look before it changes. Null when there is none. */
export async function goodsOf(clock: Clock, shopId: string): Promise<{ file: ShopFile; today: Day } | null> {
  if (!(await shopHere(shopId))) return null;
  const file = await shopFileOf(shopId);
  const zone = readZone(file.shop.timeZone);
  return zone.ok ? { file, today: clock.today(zone.value) } : null;
}
