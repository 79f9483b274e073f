import 'server-only';
import { type ChainFault, faultSentence } from '@/lib/engine/record/chain';
import { database } from './database';
import { checkWhole, damageFound, findingsOf, noteRecordFaults } from './found-damage';
import { keptWith } from './kept';
import { recordsOfShop, type ShopChecked } from './records-of-file';
import { askThrough } from './seal-records';
import type { WholeCheck } from './whole-check';

/** Check everything of every shop anew. What is found stays known until it is looked at again. */
export async function checkRecords(): Promise<void> {
  await checkWhole(await database());
}

/** Check the records of one shop, which somebody is about to look at. Gives the chain, too. */
export async function checkRecordsOf(shopId: string): Promise<ShopChecked> {
  const { file, reader } = await database();
  // In one transaction, so that what is being written meanwhile is not taken for damage.
  const checked = await reader.$transaction((rows) => recordsOfShop(askThrough(rows), shopId), PATIENCE);
  noteRecordFaults(file, shopId, checked.faults);
  return checked;
}

const PATIENCE = { maxWait: 10_000, timeout: 60_000 };

/**
 * What is known to be wrong with each shop here: a sentence that names the first bad record or row, by shop. None when
 * everything is as this program wrote it. Checks it where nobody has yet, and anew when something else changed the file.
 */
export async function damagedRecords(): Promise<ReadonlyMap<string, string>> {
  const { reader } = await database();
  const said = new Map<string, string>();
  for (const { id } of await reader.shop.findMany({ select: { id: true } })) {
    const sentence = await damageOfShop(id);
    if (sentence !== null) said.set(id, sentence);
  }
  return said;
}

const BEING_CHECKED =
  'Something other than this program has changed the database, or it was never checked yet. It is being checked now.';

/** The same for one shop: the sentence, or null when everything is as this program wrote it. */
export async function damageOfShop(shopId: string): Promise<string | null> {
  const found = await damageFound();
  return found ? damageOf(found, shopId) : BEING_CHECKED;
}

/** A file can have as many faults as it has rows, and every board asks: each sentence is made once for each check. */
const sentences = keptWith<WholeCheck, Map<string, string | null>>('sentences of damage');

function damageOf(found: WholeCheck, shop: string): string | null {
  const known = sentences.get(found) ?? new Map<string, string | null>();
  sentences.set(found, known);
  const sentence = known.get(shop);
  if (sentence !== undefined) return sentence;
  const made = sentenceOf(found, shop);
  known.set(shop, made);
  return made;
}

function sentenceOf(found: WholeCheck, shop: string): string | null {
  const faults = found.records.find(([id]) => id === shop)?.[1] ?? [];
  const rows = findingsOf(found).filter((finding) => finding.shop === null || finding.shop === shop);
  return counted([...new Set([...faults.map(faultSentence), ...rows.map(({ message }) => message)])]);
}

/** Whether the stored marks of the clock are not as this program wrote them. Whoever confirms the clock makes them anew. */
export async function marksAreDamaged(): Promise<boolean> {
  const found = await damageFound();
  return found?.rows.some(({ table }) => table === 'ClockMark') ?? false;
}

/** What is wrong with the records of one shop, in words. */
export const damageIn = (faults: readonly ChainFault[]): string | null => counted(faults.map(faultSentence));

const counted = ([first, ...more]: readonly string[]): string | null =>
  first === undefined ? null : `${first}${more.length > 0 ? ` ${andMore(more.length)}` : ''}`;

const andMore = (more: number): string => `${more} more ${more === 1 ? 'fault was' : 'faults were'} found.`;
