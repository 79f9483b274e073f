import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Shop } from '../engine/shop';
import { shopOfFile } from '../engine/shop-of-file';
import { type Database, database } from './database';
import { frozenInTests } from './frozen';
import { keptHere } from './kept';
import { knownBy, versionsKept } from './kept-versions';
import type { RecordVersion } from './record-versions';
import { shopFromRows } from './shop-rows';
import { tellUnread } from './tell-unread';

/**
 * A whole shop after so many commands. Everybody who asks shares it, so nobody may change it.
 *
 * `shop` is made of the file when it is first asked for.
 */
export type Snapshot = {
  file: ShopFile;
  readonly shop: Shop;
  /** Every version of every record, of each the first one first. */
  versions: readonly RecordVersion[];
};

/** A shop of 200 products with 5,000 records weighs about 6,000. */
const snapshots = keptHere<{ state: string; snapshot: Promise<Snapshot> }>('snapshots', {
  things: 16,
  weight: 100_000,
});

/**
 * A whole shop as it stands at one moment. It is read anew when a command has changed it since, in this process or
 * another: its state is asked of the database each time.
 *
 * Throws   RangeError when there is no such shop; look it up in the list of shops first
 */
export async function snapshotOf(shopId: string): Promise<Snapshot> {
  const opened = await database();
  const state = await opened.marks.stateOf(shopId);
  if (state === null) throw new RangeError(`there is no shop ${shopId}`);
  const name = `${opened.file} ${opened.inode} ${shopId}`;
  const kept = snapshots.get(name);
  if (kept?.state === state) return kept.snapshot;
  // What is read may be newer than the state that was asked for just now, and never older.
  const snapshot = readSnapshot(opened, shopId);
  snapshots.set(name, { state, snapshot });
  const isStillKept = () => snapshots.get(name)?.snapshot === snapshot;
  snapshot.then(
    ({ file }) => isStillKept() && snapshots.set(name, { state, snapshot }, weightOf(file)),
    () => isStillKept() && snapshots.delete(name),
  );
  return snapshot;
}

/** The same as the shop file that the export writes. */
export const shopFileOf = async (shopId: string): Promise<ShopFile> => (await snapshotOf(shopId)).file;

/** The same as the engine takes it. */
export const shopOf = async (shopId: string): Promise<Shop> => (await snapshotOf(shopId)).shop;

async function readSnapshot(opened: Database, shopId: string): Promise<Snapshot> {
  let versions: RecordVersion[] = [];
  const file = await opened.reader.$transaction((rows) => {
    const known = knownBy(opened);
    return shopFromRows(rows, shopId, async (rows, id) => {
      versions = await versionsKept(rows, id, known);
      return versions;
    });
  }, PATIENCE);
  if (!file) throw new RangeError(`there is no shop ${shopId}`);
  tellUnread(shopId, file);
  frozenInTests(file);
  let shop: Shop | null = null;
  return {
    ...{ file, versions },
    get shop() {
      shop ??= frozenInTests(shopOfFile(file));
      return shop;
    },
  };
}

const PATIENCE = { maxWait: 10_000, timeout: 30_000 };

/** How many things a shop file lists. */
function weightOf({ format: _, shop: __, ...lists }: ShopFile): number {
  return Object.values(lists).reduce((total, list) => total + list.length, 0);
}
