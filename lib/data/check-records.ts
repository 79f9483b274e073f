import 'server-only';
import { type ChainFault, faultSentence } from '@/lib/engine/record/chain';
import { database } from './database';
import { recordsOfShop } from './records-of-file';
import { askThrough } from './seal-records';

/** What was found wrong in the records of each shop, the last time they were looked at; by the database's file. */
type Found = Map<string, ReadonlyMap<string, ChainFault[]>>;

/**
 * Check the records of every shop against the chain that seals them. Whoever starts the program does, and whoever looks
 * at the log; what is found stays known until it is looked at anew.
 */
export async function checkRecords(): Promise<ReadonlyMap<string, ChainFault[]>> {
  const { file, reader } = await database();
  const shops = await reader.shop.findMany({ select: { id: true } });
  const faults = new Map<string, ChainFault[]>();
  for (const { id } of shops) faults.set(id, await faultsOf(id));
  found.set(file, faults);
  return faults;
}

/** The same for one shop, whose records somebody is about to look at. */
export async function checkRecordsOf(shopId: string): Promise<ChainFault[]> {
  const { file } = await database();
  const faults = await faultsOf(shopId);
  found.set(file, new Map([...(found.get(file) ?? []), [shopId, faults]]));
  return faults;
}

async function faultsOf(shopId: string): Promise<ChainFault[]> {
  const { reader } = await database();
  // In one transaction, so that what is being written meanwhile is not taken for damage.
  const checked = await reader.$transaction((rows) => recordsOfShop(askThrough(rows), shopId), PATIENCE);
  return checked.faults;
}

const PATIENCE = { maxWait: 10_000, timeout: 60_000 };

/**
 * What is known to be wrong with the records of any shop here: a sentence that names the first bad record, by shop. None
 * when every record is as it was sealed. Checks them where nobody has yet.
 */
export async function damagedRecords(): Promise<ReadonlyMap<string, string>> {
  const { file } = await database();
  const known = found.get(file) ?? (await checkRecords());
  const said = [...known].flatMap(([shopId, [first, ...more]]): [string, string][] =>
    first ? [[shopId, sentenceOf(first, more.length)]] : [],
  );
  return new Map(said);
}

const sentenceOf = (first: ChainFault, more: number): string =>
  `${faultSentence(first)}${more > 0 ? ` ${more} more ${more === 1 ? 'fault was' : 'faults were'} found.` : ''}`;

/** Kept where the pages find what the start of this process has found. */
const found = foundIn(globalThis);

function foundIn(house: { recordFaults?: Found } & typeof globalThis): Found {
  house.recordFaults ??= new Map();
  return house.recordFaults;
}
