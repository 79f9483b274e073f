import Database from 'better-sqlite3';
import { restoreAdvice } from '@/lib/data/backup-files.js';
import { markFile, numberOfFile, readMark } from '@/lib/data/shop-mark.js';

/**
 * Hold a database against the mark beside it, before anything is written to it.
 *
 * Throws   Error with a sentence when commands are missing that were acknowledged. A file with another number was put
 *          there since, which is a restore: what it holds is what counts
 */
export function refuseForgotten(file: string): void {
  const mark = readMark(file);
  if (!mark?.database || mark.database !== numberOfFile(file)) return;
  const held = commandsIn(file);
  if (held >= mark.commands) return;
  const missing = mark.commands - held;
  throw new Error(
    `${missing} ${missing === 1 ? 'change is' : 'changes are'} missing from ${file} that this program had confirmed; ` +
      `perhaps ${file}-wal was taken away after the program was ended by force. Put that file back, or go back to a backup. ${restoreAdvice(file, process.env)} ` +
      `To go on without what is missing, delete ${markFile(file)} and start again.`,
  );
}

function commandsIn(file: string): number {
  const database = new Database(file, { readonly: true, fileMustExist: true, timeout: 1_000 });
  try {
    return Number(database.prepare('SELECT count(*) FROM "Command"').pluck().get());
  } finally {
    database.close();
  }
}
