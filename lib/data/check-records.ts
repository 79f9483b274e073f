import 'server-only';
import { type ChainFault, faultSentence } from '@/lib/engine/record/chain';
import { database } from './database';
import { recordsOfShop, type ShopChecked } from './records-of-file';
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
  for (const { id } of shops) faults.set(id, (await checkedNow(id)).faults);
  found.set(file, faults);
  return faults;
}

/** The same for one shop, whose records somebody is about to look at. Gives the chain, too. */
export async function checkRecordsOf(shopId: string): Promise<ShopChecked> {
  const { file } = await database();
  const checked = await checkedNow(shopId);
  found.set(file, new Map([...(found.get(file) ?? []), [shopId, checked.faults]]));
  return checked;
}

async function checkedNow(shopId: string): Promise<ShopChecked> {
  const { reader } = await database();
  // In one transaction, so that what is being written meanwhile is not taken for damage.
  return reader.$transaction((rows) => recordsOfShop(askThrough(rows), shopId), PATIENCE);
}

const PATIENCE = { maxWait: 10_000, timeout: 60_000 };

/**
 * What is known to be wrong with the records of any shop here: a sentence that names the first bad record, by shop. None
 * when every record is as it was sealed. Checks them where nobody has yet.
 */
export async function damagedRecords(): Promise<ReadonlyMap<string, string>> {
  const { file } = await database();
  const known = found.get(file) ?? (await checkRecords());
  const said = [...known].flatMap(([shopId, faults]): [string, string][] => {
    const sentence = damageIn(faults);
    return sentence === null ? [] : [[shopId, sentence]];
  });
  return new Map(said);
}

/** What is known to be wrong with the records of one shop, in words; null when every one is as it was sealed. */
export async function damageOfShop(shopId: string): Promise<string | null> {
  const { file } = await database();
  return damageIn(found.get(file)?.get(shopId) ?? (await checkRecordsOf(shopId)).faults);
}

/** What is wrong with the records of one shop, in words. */
export const damageIn = ([first, ...more]: readonly ChainFault[]): string | null =>
  first ? sentenceOf(first, more.length) : null;

const sentenceOf = (first: ChainFault, more: number): string =>
  `${faultSentence(first)}${more > 0 ? ` ${more} more ${more === 1 ? 'fault was' : 'faults were'} found.` : ''}`;

/** Kept where the pages find what the start of this process has found. */
const found = foundIn(globalThis);

function foundIn(house: { recordFaults?: Found } & typeof globalThis): Found {
  house.recordFaults ??= new Map();
  return house.recordFaults;
}
