import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import { database } from './database';
import { shopFromRows } from './shop-rows';
import { tellUnread } from './tell-unread';

/**
 * A whole shop as it stands at one moment, as the shop file that the export writes and the engine reads.
 *
 * Throws   RangeError when there is no such shop; look it up in the list of shops first
 */
export async function shopFileOf(shopId: string): Promise<ShopFile> {
  const { reader } = await database();
  const file = await reader.$transaction((rows) => shopFromRows(rows, shopId), { maxWait: 10_000, timeout: 30_000 });
  if (!file) throw new RangeError(`there is no shop ${shopId}`);
  tellUnread(shopId, file);
  return file;
}
