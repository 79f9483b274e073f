import 'server-only';
import { COLLECTIONS, type Collection, compare, tally, withLeft } from '@/lib/engine/exchange/compare';
import { withKnownHistory } from '@/lib/engine/exchange/known-history';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { FORMAT, type ShopFile, type WrittenShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { unreadIn, unreadRefusal } from '@/shared/shop-file/unread';
import type { Rows } from './database';
import { saveShop } from './save-shop';
import type { Stamp } from './writer';

/** Things of a shop as a shop file writes them. What has the id of something that is there takes its place. */
export type ShopPart = Partial<Pick<WrittenShopFile, Collection>> & { shop?: Partial<WrittenShopFile['shop']> };

/**
 * Save things of a shop: what is new is added, what is there is changed, all else stays.
 *
 * Takes    the shop as it stands in the rows
 * Gives    how many things were added and changed
 * Refuses  'faults', each with its path in the part, when the shop with it would not be one, or when the books say
 *          otherwise
 */
export async function savePart(
  rows: Rows,
  stamp: Stamp,
  current: ShopFile,
  part: ShopPart,
): Promise<Outcome<{ added: number; changed: number }>> {
  const unread = unreadIn(current).find(({ list, id, isLeftOut }) => isLeftOut && hasId(part, list, id));
  const refusal = unread && unreadRefusal(current);
  if (refusal) return refuse(refusal);
  const parsed = parseShopFile(JSON.stringify(withPart(current, part)));
  if (!parsed.ok) return refuse({ code: 'faults', faults: parsed.faults });
  const changed = withKnownHistory(current, parsed.file);
  const comparison = compare(current, changed);
  if (comparison.faults.length > 0) return refuse({ code: 'faults', faults: comparison.faults });
  await saveShop(rows, stamp, changed, comparison);
  const { added, changed: things } = tally(comparison);
  return accept({ added, changed: things + (comparison.settings.length > 0 ? 1 : 0) });
}

/** Whether a part says something of a thing that cannot be read, and so seems not to be there. */
const hasId = (part: ShopPart, list: Collection | 'shop', id: string): boolean =>
  list !== 'shop' && (part[list] ?? []).some((thing) => thing.id === id);

/** The shop as it would stand. What comes in stands first in each list, so that a fault has its place in the part. */
function withPart(current: ShopFile, { shop, ...lists }: ShopPart): WrittenShopFile {
  const whole: WrittenShopFile = { ...current, format: FORMAT, shop: { ...current.shop, ...shop } };
  for (const list of COLLECTIONS) {
    Object.assign(whole, { [list]: withLeft<{ id: string }>(current[list], lists[list] ?? []) });
  }
  return whole;
}
