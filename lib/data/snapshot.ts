import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Shop } from '../engine/shop';
import { shopInSteps, shopOfFile } from '../engine/shop-of-file';
import { atOneMoment } from './at-one-moment';
import { type Database, database, type Rows } from './database';
import { frozenInTests } from './frozen';
import { keptHere } from './kept';
import { knownBy, versionsKept } from './kept-versions';
import { AT_ONCE, type Pace } from './pace';
import type { RecordVersion } from './record-versions';
import { shopFromRows } from './shop-rows';
import { isSmall, shopSize } from './shop-size';
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

/** A shop as it is read in one of its states. */
type Read = {
  state: string;
  snapshot: Promise<Snapshot>;
  isThere: boolean;
  /** False once the shop was read in an earlier state: then little has to be read. */
  isFirst: boolean;
};

/** A shop of 200 products with 5,000 records weighs about 6,000. */
const snapshots = keptHere<Read>('snapshots', { things: 16, weight: 100_000 });

/**
 * A whole shop as it stands at one moment. It is read anew when a command has changed it since, in this process or
 * another: its state is asked of the database each time.
 *
 * Throws   RangeError when there is no such shop; look it up in the list of shops first
 */
export const snapshotOf = async (shopId: string): Promise<Snapshot> => (await readOf(shopId)).snapshot;

async function readOf(shopId: string): Promise<Read> {
  const opened = await database();
  const state = await opened.marks.stateOf(shopId);
  if (state === null) throw new RangeError(`there is no shop ${shopId}`);
  const name = `${opened.file} ${opened.inode} ${shopId}`;
  const before = snapshots.get(name);
  if (before?.state === state) return before;
  // What is read may be newer than the state that was asked for just now, and never older.
  const snapshot = readSnapshot(opened, shopId);
  const read: Read = { state, snapshot, isThere: false, isFirst: before === undefined || isFirstStill(before) };
  snapshots.set(name, read);
  const isStillKept = () => snapshots.get(name) === read;
  const keep = ({ file }: Snapshot) => {
    read.isThere = true;
    if (isStillKept()) snapshots.set(name, read, weightOf(file));
  };
  snapshot.then(keep, () => isStillKept() && snapshots.delete(name));
  return read;
}

const isFirstStill = ({ isFirst, isThere }: Read): boolean => isFirst && !isThere;

/** So long a board waits for a large shop, in milliseconds: for one that was never read, and for one that has changed. */
const [FIRST_MS, AGAIN_MS] = [50, 1_500];

/**
 * A shop for whoever must not wait long and must not be told too little: whatever was recorded while it was read is in it.
 *
 * Gives    null when reading it takes longer; it goes on being read
 * Throws   RangeError when there is no such shop
 */
export async function shopSoon(shopId: string): Promise<Shop | null> {
  let read = await readOf(shopId);
  if (read.isThere || isSmall(await shopSize(shopId))) return (await read.snapshot).shop;
  const isOver = after(read.isFirst ? FIRST_MS : AGAIN_MS);
  for (;;) {
    const snapshot = await Promise.race([read.snapshot, isOver]);
    if (snapshot === null) return null;
    const now = await readOf(shopId);
    if (now === read) return snapshot.shop;
    read = now;
  }
}

const after = (ms: number): Promise<null> => new Promise((resolve) => setTimeout(resolve, ms, null).unref());

/** The same as the shop file that the export writes. */
export const shopFileOf = async (shopId: string): Promise<ShopFile> => (await snapshotOf(shopId)).file;

/** The same as the engine takes it. */
export const shopOf = async (shopId: string): Promise<Shop> => (await snapshotOf(shopId)).shop;

async function readSnapshot(opened: Database, shopId: string): Promise<Snapshot> {
  let versions: RecordVersion[] = [];
  const { file, pace } = await atOneMoment(opened, shopId, async (rows, pace) => {
    const known = knownBy(opened);
    const records = async (rows: Rows, id: string) => {
      versions = await versionsKept(rows, id, known, pace);
      return versions;
    };
    return { file: await shopFromRows(rows, shopId, { records, pace }), pace };
  });
  if (!file) throw new RangeError(`there is no shop ${shopId}`);
  tellUnread(shopId, file);
  frozenInTests(file);
  let shop = pace === AT_ONCE ? null : await followed(file, pace);
  return {
    ...{ file, versions },
    get shop() {
      shop ??= frozenInTests(shopOfFile(file));
      return shop;
    },
  };
}

/** The shop that a file describes. Null where it cannot be followed: whoever asks for it is told why. */
async function followed(file: ShopFile, pace: Pace): Promise<Shop | null> {
  try {
    return frozenInTests(await pace.through(shopInSteps(file)));
  } catch {
    return null;
  }
}

/** How many things a shop file lists. */
function weightOf({ format: _, shop: __, ...lists }: ShopFile): number {
  return Object.values(lists).reduce((total, list) => total + list.length, 0);
}
