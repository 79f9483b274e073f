import 'server-only';
import type { Clock } from '@/lib/clock';
import { fingerprint } from '@/lib/data/fingerprint';
import { createShop, saveShop } from '@/lib/data/save-shop';
import { shopFromRows } from '@/lib/data/shop-rows';
import { write } from '@/lib/data/writer';
import { canonical } from '@/lib/engine/exchange/canonical';
import { compare, tally } from '@/lib/engine/exchange/compare';
import { withKnownHistory } from '@/lib/engine/exchange/known-history';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { unreadRefusal } from '@/shared/shop-file/unread';
import { Zone } from '@/shared/time/zone';

/** A shop file that passed parsing, and where it goes. */
export type ImportShopFile = {
  commandId: string;
  file: ShopFile;
  /** Into a new shop; or into one that is there, which must still stand as the preview showed it. */
  into: { isDemo: boolean } | { shopId: string; fingerprint: string };
};

/** What an import did: how many things it added and changed. */
export type Imported = { shopId: string; added: number; changed: number };

/**
 * Bring a shop file in, all of it or nothing.
 *
 * Refuses  'shop-changed-since-preview' when the shop is no longer the one that was compared; 'faults' when the file
 *          would rewrite what the books hold; 'not-found'
 */
export async function importShopFile(input: ImportShopFile, clock: Clock): Promise<Outcome<Imported>> {
  const { file, into, commandId } = input;
  const shopId = 'shopId' in into ? into.shopId : null;
  const today = clock.today(Zone.parse(file.shop.timeZone));
  const command = { id: commandId, name: 'importShopFile', shopId, body: { file, into } };

  return write(command, clock.now(), async (rows, stamp) => {
    const current = await shopFromRows(rows, stamp.shopId);
    if ('shopId' in into) {
      if (!current) return refuse({ code: 'not-found', what: 'shop', id: into.shopId });
      const unread = unreadRefusal(current);
      if (unread) return refuse(unread);
      if (fingerprint(current) !== into.fingerprint) return refuse({ code: 'shop-changed-since-preview' });
    } else {
      await createShop(rows, stamp, { isDemo: into.isDemo, createdOn: today }, canonical(file).shop);
    }
    const comparison = compare(current, file);
    if (comparison.faults.length > 0) return refuse({ code: 'faults', faults: comparison.faults });
    await saveShop(rows, stamp, withKnownHistory(current, file), comparison);
    return accept({ shopId: stamp.shopId, ...tally(comparison) });
  });
}
