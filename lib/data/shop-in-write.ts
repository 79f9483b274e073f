import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Rows } from './database';
import { versionsInWrite } from './kept-versions';
import { shopFromRows } from './shop-rows';

/**
 * A whole shop as it stands in the middle of a write, with what the write has done so far. Records that are kept already
 * are not read again. Awaits nothing but the rows.
 *
 * Gives    null when there is no such shop
 */
export const shopInWrite = (rows: Rows, shopId: string): Promise<ShopFile | null> =>
  shopFromRows(rows, shopId, { records: versionsInWrite });
