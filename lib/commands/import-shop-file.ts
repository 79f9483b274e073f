import 'server-only';
import type { Clock } from '@/lib/clock';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { ownedBy } from '@/lib/data/save-people';
import { createShop, saveShop } from '@/lib/data/save-shop';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { shopFromRows } from '@/lib/data/shop-rows';
import { revisionIn, write } from '@/lib/data/writer';
import { canonical } from '@/lib/engine/exchange/canonical';
import { type Comparison, compare, tally } from '@/lib/engine/exchange/compare';
import { withKnownHistory } from '@/lib/engine/exchange/known-history';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { unreadRefusal } from '@/shared/shop-file/unread';
import { Zone } from '@/shared/time/zone';

/** A shop file that passed parsing, and where it goes. */
export type ImportShopFile = {
  commandId: string;
  file: ShopFile;
  /** Who brings it in, and owns a new shop then; null where nobody signs in. */
  ownerId?: string | null;
  actor?: string;
  /** Into a new shop; or into one that is there, which must still stand as the preview showed it. */
  into: { isDemo: boolean } | { shopId: string; fingerprint: string };
};

/** An import that was looked at before its turn: the shop as it stood, and how the file differs. */
export type Ready = { file: ShopFile; current: ShopFile | null; state: string | null; comparison: Comparison };

/** What an import did: how many things it added and changed. */
export type Imported = { shopId: string; added: number; changed: number };

/**
 * Do what an import takes before it writes: read the file, read the shop, compare the two. It takes most of the time, and
 * meanwhile others write.
 *
 * Refuses  'faults' where the file cannot be read; 'not-found'
 */
export async function prepared(into: ImportShopFile['into'], text: string): Promise<Outcome<Ready>> {
  const parsed = parseShopFile(text);
  if (!parsed.ok) return refuse({ code: 'faults', faults: parsed.faults });
  return accept(await comparedWith(into, parsed.file));
}

/** The same once more where the shop was changed since. Asked in the turn to write. */
export async function stillReady(into: ImportShopFile['into'], ready: Ready): Promise<Ready> {
  const { marks } = await database();
  const isStill = !('shopId' in into) || (await marks.stateOf(into.shopId)) === ready.state;
  return isStill ? ready : comparedWith(into, ready.file);
}

async function comparedWith(into: ImportShopFile['into'], file: ShopFile): Promise<Ready> {
  if (!('shopId' in into)) return { file, current: null, state: null, comparison: compare(null, file) };
  const { marks, reader } = await database();
  // What is read may be newer than this, and never older.
  const state = await marks.stateOf(into.shopId);
  const current = await reader.$transaction((rows) => shopFromRows(rows, into.shopId), PATIENCE);
  return { file, current, state, comparison: compare(current, file) };
}

const PATIENCE = { maxWait: 10_000, timeout: 60_000 };

/**
 * Bring a shop file in, all of it or nothing.
 *
 * Takes    the file with what it was found to change, where that was done before
 * Refuses  'shop-changed-since-preview' when the shop is no longer the one that was compared; 'faults' when the file
 *          would rewrite what the books hold; 'not-found'
 */
export async function importShopFile(
  input: ImportShopFile & { ready?: Ready },
  clock: Clock,
): Promise<Outcome<Imported>> {
  const { file, into, commandId, ready, ownerId = null, actor } = input;
  const shopId = 'shopId' in into ? into.shopId : null;
  const today = clock.today(Zone.parse(file.shop.timeZone));
  const seen = { before: ready?.current ?? undefined, atRevision: revisionIn(ready?.state) };
  const command = { id: commandId, name: 'importShopFile', shopId, body: { file, into }, actor, ...seen };

  return write(command, clock.now(), async (rows, stamp) => {
    const current = ready ? ready.current : await shopInWrite(rows, stamp.shopId);
    if ('shopId' in into) {
      if (!current) return refuse({ code: 'not-found', what: 'shop', id: into.shopId });
      const unread = unreadRefusal(current);
      if (unread) return refuse(unread);
      if (fingerprint(current) !== into.fingerprint) return refuse({ code: 'shop-changed-since-preview' });
    } else {
      await createShop(rows, stamp, { isDemo: into.isDemo, createdOn: today }, canonical(file).shop);
      await ownedBy(rows, stamp, ownerId);
    }
    const comparison = ready?.comparison ?? compare(current, file);
    if (comparison.faults.length > 0) return refuse({ code: 'faults', faults: comparison.faults });
    await saveShop(rows, stamp, withKnownHistory(current, file), comparison);
    return accept({ shopId: stamp.shopId, ...tally(comparison) });
  });
}
