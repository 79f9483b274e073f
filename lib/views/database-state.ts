import 'server-only';
import { restoreAdvice } from '../data/backup-files.js';
import { databaseName } from '../data/database-address';
import { databaseFile } from '../data/database-file';
import { fileTrouble } from '../data/file-trouble';
import { damageFound, findingsOf } from '../data/found-damage';
import { faultSentence } from '../engine/record/chain';

/** What is known of the database: where it is kept, and what was found wrong with it, at most a page of it. */
export type DatabaseState = {
  file: string;
  state: 'sound' | 'being checked' | 'damaged';
  found: string[];
  more: number;
  /** How to go back to the newest sound backup, by its name. */
  restore: string;
  /** Whether the marks of the clock are damaged, which whoever confirms it makes anew. */
  isOfClock: boolean;
};

const MOST_SHOWN = 12;

/** What the last check of the whole database found. It answers as well when the database cannot be read. */
export async function databaseState(): Promise<DatabaseState> {
  const file = databaseName();
  const restore = restoreAdvice(databaseFile(), process.env);
  try {
    const found = await damageFound();
    if (!found) return { file, state: 'being checked', found: [], more: 0, restore, isOfClock: false };
    const records = found.records.flatMap(([, faults]) => faults.map(faultSentence));
    const all = [...new Set([...findingsOf(found).map(({ message }) => message), ...records])];
    const shown = all.slice(0, MOST_SHOWN);
    const state = all.length > 0 ? 'damaged' : 'sound';
    const isOfClock = found.rows.some(({ table }) => table === 'ClockMark');
    return { file, state, found: shown, more: all.length - shown.length, restore, isOfClock };
  } catch (error) {
    const message = fileTrouble(error)?.message ?? 'The database cannot be read. The reason is in the log.';
    return { file, state: 'damaged', found: [message], more: 0, restore, isOfClock: false };
  }
}
