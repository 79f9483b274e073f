import { existsSync, realpathSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { clock } from '@/lib/clock';
import { knownBackups, whenMade } from '@/lib/data/backup-files.js';
import { bringBack, type Candidate, candidate } from '@/lib/data/restore-backup';
import { migrationsIn } from '@/prisma/migration-folders.js';
import { contentsInWords, daysInWords, momentInWords } from './contents-in-words';

/**
 * Put a backup in the place of the database of a data folder that no server uses. What it holds is shown first, and
 * nothing is done until somebody says yes.
 *
 * Gives    the code to end with: 0, or 1 when nothing was restored
 */
export async function restore(args: readonly string[], folder: string): Promise<number> {
  const [typed] = args.filter((word) => !word.startsWith('-'));
  const database = join(folder, 'shop.db');
  if (typed === undefined) return listKnown(database);
  const file = resolve(process.env.INIT_CWD ?? process.cwd(), typed);
  const refused = refusedPath(file, database);
  if (refused) return say(refused);
  const from = await candidate(file);
  console.log(`\n  ${file}\n  ${ageOf(from)}`);
  if (from.contents === null) return say(`${from.faults.join(' ')} Choose another backup.`);
  console.log(contentsInWords(from.contents, clock.now()));
  if (isNewer(from)) return say('It was made by a newer version of this program. Update the program first.');
  if (!(await isWanted(from, database, args.includes('--yes')))) return say('Nothing was changed.');
  const aside = await bringBack(from, database, clock.now());
  console.log(`\n  Restored into ${folder}.`);
  if (aside) console.log(`  What was there before is kept in ${aside}`);
  console.log(AFTERWARDS);
  return 0;
}

const AFTERWARDS = `  Now run npm start. Every bench reads KEEP OUT until somebody has entered what was sprayed after the
  backup and confirmed it (Setup, Clock).\n`;

function say(sentence: string): number {
  console.error(`\n  ${sentence}\n`);
  return 1;
}

function listKnown(database: string): number {
  const known = knownBackups(database, process.env);
  if (known.length === 0) return say('Name the backup: npm run restore -- FILE. None is known in the data folder.');
  const lines = known.map((one) => `    ${whenMade(one)}${one.isSound === false ? ', with faults' : ''}  ${one.file}`);
  return say(`Name the backup: npm run restore -- "FILE". These are known, the newest first:\n${lines.join('\n')}`);
}

function refusedPath(file: string, database: string): string | null {
  if (!existsSync(file)) return `There is no file ${file}.`;
  const isItself = existsSync(database) && realpathSync(file) === realpathSync(database);
  return isItself ? `${file} is the database itself, and no backup of it.` : null;
}

function ageOf({ madeAt }: Candidate): string {
  if (madeAt === null) return 'A copy of a database; when it was made is not noted.';
  return `Backed up ${momentInWords(madeAt)}, ${daysInWords(clock.now() - madeAt)}.`;
}

const isNewer = ({ contents }: Candidate): boolean => (contents?.migration ?? '') > (migrationsIn().at(-1)?.name ?? '');

/** A backup with faults is never restored without a person who says so. */
async function isWanted({ faults, isSealed }: Candidate, database: string, isSaid: boolean): Promise<boolean> {
  if (faults.length === 0) console.log(isSealed ? '  All of it is sound.' : '  SQLite finds nothing wrong with it.');
  else
    console.error(
      `  It has faults:\n${faults
        .slice(0, 20)
        .map((fault) => `    ${fault}`)
        .join('\n')}`,
    );
  if (existsSync(database))
    console.log('\n  It takes the place of the database that is there now, which is kept aside.');
  if (isSaid) return faults.length === 0;
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  const closed = new Promise<string>((resolve) => terminal.once('close', () => resolve('')));
  const answer = await Promise.race([terminal.question('  Restore it? Type yes: '), closed]);
  terminal.close();
  return answer.trim().toLowerCase() === 'yes';
}
