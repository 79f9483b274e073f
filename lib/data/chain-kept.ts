import 'server-only';
import { type ChainFault, chainFaults } from '@/lib/engine/record/chain';
import { type Seal, type Sealable, sealedName } from '@/lib/engine/record/seal-text';
import { atOneMoment } from './at-one-moment';
import { type Database, database, type Rows } from './database';
import { noteRecordFaults } from './found-damage';
import { keptHere } from './kept';
import type { Pace } from './pace';
import { recordsOfShop } from './records-of-file';
import { askThrough } from './seal-records';
import { sealableIn, sealsIn } from './sealed-rows';
import { sha256 } from './sha256';

/** The lines of the chain of a shop, and what is wrong with the records that they seal. */
export type ShopChain = { seals: readonly Seal[]; faults: readonly ChainFault[] };

type KeptChain = ShopChain & {
  /** What the file was known by: another one when something else than this program has changed it. */
  known: string;
  names: ReadonlySet<string>;
};

const kept = keptHere<KeptChain>('record chains', { things: 16, weight: 200_000 });

/**
 * The chain of a shop, with its records checked against it. What was found sound once is checked again only when something
 * else than this program has changed the file: of what this program wrote since, only the new lines are checked.
 */
export async function chainOf(shopId: string): Promise<ShopChain> {
  const opened = await database();
  // In one transaction, so that what is being written meanwhile is not taken for damage.
  const chain = await atOneMoment(opened, shopId, (rows, pace) => chainIn(rows, shopId, opened, pace));
  noteRecordFaults(opened.file, shopId, [...chain.faults]);
  return chain;
}

async function chainIn(rows: Rows, shopId: string, opened: Database, pace: Pace): Promise<ShopChain> {
  const { file, inode, marks } = opened;
  const name = `${file} ${inode} ${shopId}`;
  const known = `${marks.foreign()}`;
  const before = kept.get(name);
  const grown = before?.known === known ? await grownFrom(rows, shopId, before) : null;
  const chain = grown ?? (await wholeChain(rows, shopId, known, pace));
  if (chain.faults.length === 0) kept.set(name, chain, chain.seals.length);
  else kept.delete(name);
  return chain;
}

async function wholeChain(rows: Rows, shopId: string, known: string, pace: Pace): Promise<KeptChain> {
  const { things, seals, faults } = await recordsOfShop(askThrough(rows), shopId, pace);
  return { known, seals, faults, names: new Set(things.map(sealedName)) };
}

/** A sound chain with the lines it has grown by. Null when it is not the same chain, or does not fit what is there. */
async function grownFrom(rows: Rows, shopId: string, before: KeptChain): Promise<KeptChain | null> {
  const ask = askThrough(rows);
  const last = before.seals.at(-1);
  const [same, ...newer] = await sealsIn(ask, shopId, last?.number);
  if (!last || same?.hash !== last.hash) return null;
  const touched = [...new Set(newer.map(({ application }) => application))];
  const sealed = new Set(newer.map(sealedName));
  const isNew = (thing: Sealable) => sealed.has(sealedName(thing)) || !before.names.has(sealedName(thing));
  const things = touched.length === 0 ? [] : await sealableIn(ask, { shopId, applications: touched });
  const faults = chainFaults(newer, things.filter(isNew), sha256, last);
  const seals = [...before.seals, ...newer];
  const written = (await rows.applicationVersion.count({ where: { shopId } })) + (await confirmationsIn(rows, shopId));
  if (faults.length > 0 || written !== seals.length) return null;
  return { known: before.known, seals, faults, names: new Set([...before.names, ...sealed]) };
}

const confirmationsIn = (rows: Rows, shopId: string): Promise<number> =>
  rows.amendmentConfirmation.count({ where: { shopId } });
