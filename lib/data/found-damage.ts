import 'server-only';
import type { ChainFault } from '@/lib/engine/record/chain';
import { checkHere } from './check-here';
import { checkInChild } from './check-in-child';
import { type Database, database } from './database';
import { FileTrouble } from './file-trouble';
import { sha256 } from './sha256';
import type { Finding, WholeCheck } from './whole-check';

/** What is known of a database: what the last check of it found, and the check that is under way. */
type Known = {
  found: WholeCheck | null;
  running: Promise<WholeCheck> | null;
};

/** Kept where the pages find what the start of this process has found. */
const house: { foundDamage?: Map<string, Known> } & typeof globalThis = globalThis;
house.foundDamage ??= new Map();
const all = house.foundDamage;

function knownOf(file: string): Known {
  const known = all.get(file) ?? { found: null, running: null };
  all.set(file, known);
  return known;
}

/** A larger file is checked in a process of its own: a check of this size takes a twentieth of a second. */
const MOST_BYTES_HERE = 8 * 2 ** 20;

/** Whoever looks waits so long for a check that is under way, here or in a process of its own, and keeps out meanwhile. */
const [PATIENCE_MS, SHORT_PATIENCE_MS] = [400, 50];

const isSmall = (watch: Database['watch']): boolean =>
  Number(watch.signs().main.size) + watch.logSize <= MOST_BYTES_HERE;

/**
 * Check the whole database, and remember what was found. One check is under way at a time.
 *
 * When something else than this program has changed the file, it counts as known from then on, as it stood before the check.
 */
export function checkWhole(opened: Database): Promise<WholeCheck> {
  const known = knownOf(opened.file);
  known.running ??= check(opened, known).finally(() => {
    known.running = null;
  });
  return known.running;
}

async function check({ file, watch, keeper, marks }: Database, known: Known): Promise<WholeCheck> {
  await marks.look();
  const [isMoved, signs, commands] = [watch.look(), watch.signs(), keeper.commands];
  const found = await (isSmall(watch) ? checkHere(file) : checkInChild(file));
  const missing = commands - found.commands;
  if (found.file.length === 0 && missing > 0) found.file.push(`${missing} changes are missing that were confirmed`);
  known.found = found;
  if (isMoved && !watch.trouble) watch.accept(signs);
  await marks.tell(newsOf(found));
  return found;
}

/** What a check has found, the same for the same faults; empty for none. */
function newsOf(found: WholeCheck): string {
  const records = found.records.filter(([, faults]) => faults.length > 0);
  const faults = [...found.file, ...found.rows, ...records];
  return faults.length === 0 ? '' : sha256(JSON.stringify(faults));
}

/**
 * Make sure that the file is sound before something is written to it.
 *
 * Throws   FileTrouble when it is not
 */
export async function sureOfFile(opened: Database): Promise<void> {
  await opened.marks.look();
  const found = opened.watch.look() ? await checkWhole(opened) : knownOf(opened.file).found;
  const [first] = found?.file ?? [];
  if (first !== undefined) throw new FileTrouble('damaged', `The database ${opened.file} is damaged: ${first}.`);
}

/** What is wrong with the database: what the last check of all of it found. Null while it is being checked. */
export async function damageFound(): Promise<WholeCheck | null> {
  const opened = await database();
  const known = knownOf(opened.file);
  await opened.marks.look();
  if (known.found && !opened.watch.look()) return known.found;
  const patience = isSmall(opened.watch) ? PATIENCE_MS : SHORT_PATIENCE_MS;
  const waited = new Promise<null>((resolve) => setTimeout(resolve, patience, null).unref());
  return Promise.race([checkWhole(opened), waited]);
}

/** Note what was found in the records of one shop, where somebody has just looked at them. */
export function noteRecordFaults(file: string, shop: string, faults: ChainFault[]): void {
  const known = knownOf(file);
  if (!known.found) return;
  const others = known.found.records.filter(([id]) => id !== shop);
  known.found = { ...known.found, records: [...others, [shop, faults]] };
}

/** Every finding of a check, in the order in which it speaks against most. */
export const findingsOf = ({ file, rows }: WholeCheck): Finding[] => [
  ...file.map((message) => ({ shop: null, table: null, row: null, message: `The file is damaged: ${message}` })),
  ...rows,
];
