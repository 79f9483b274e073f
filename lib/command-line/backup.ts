import { resolve } from 'node:path';
import { clock } from '@/lib/clock';
import { backupFolder } from '@/lib/data/backup-files.js';
import { databaseFile } from '@/lib/data/database-file';
import { makeBackup, notMade, scheduledBackup } from '@/lib/data/make-backup';
import { contentsInWords } from './contents-in-words';

/**
 * Back up the database of the data folder, and say what is in the backup.
 *
 * Takes    the folder, from where the command was typed; without one, the shop's own, where old ones make room
 * Gives    the code to end with: 0, or 1 when nothing was made, or 2 when what was made has faults
 */
export async function backup(args: readonly string[]): Promise<number> {
  const [typed] = args.filter((word) => !word.startsWith('-'));
  const folder = typed === undefined ? undefined : resolve(process.env.INIT_CWD ?? process.cwd(), typed);
  const now = clock.now();
  try {
    const made =
      folder === undefined ? await scheduledBackup(databaseFile(), now) : await makeBackup(databaseFile(), folder, now);
    const { isSound, faults, contents } = made.manifest;
    console.log(`\n  Backed up to ${made.file}`);
    if (contents) console.log(contentsInWords(contents, now));
    if (isSound) console.log('  Checked after writing: all of it is sound.\n');
    else console.error(`  It has faults:\n${faults.map((fault) => `    ${fault}`).join('\n')}\n`);
    return isSound ? 0 : 2;
  } catch (error) {
    console.error(`\n  No backup was made. ${notMade(error, folder ?? backupFolder(databaseFile(), process.env))}\n`);
    return 1;
  }
}
