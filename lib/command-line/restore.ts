import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, realpathSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline/promises';
import { fileURLToPath } from 'node:url';
import { clock } from '@/lib/clock';
import { knownBackups, whenMade } from '@/lib/data/backup-files.js';
import { databaseName, postgresqlAddress } from '@/lib/data/database-address';
import { copyWhole, makeBackup } from '@/lib/data/make-backup';
import { bringBack, type Candidate, candidate } from '@/lib/data/restore-backup';
import { migrationsIn } from '@/prisma/migration-folders.js';
import { programsOn, restoreToPostgresql } from '@/prisma/move';
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
  const address = postgresqlAddress();
  const isFilled = address === null ? existsSync(database) : true;
  if (address !== null && (await programsOn(address)) > 0) return say('The shop is running. Stop it first.');
  if (!(await isWanted(from, isFilled, args.includes('--yes')))) return say('Nothing was changed.');
  const aside = await (address === null
    ? bringBack(from, database, clock.now())
    : intoPostgresql(from, address, folder));
  console.log(`\n  Restored into ${address === null ? folder : databaseName()}.`);
  if (aside) console.log(`  What was there before is kept in ${aside}`);
  console.log(AFTERWARDS);
  return 0;
}

/** Put a backup in the place of what PostgreSQL holds. Gives the backup of what was there, made before. */
async function intoPostgresql(from: Candidate, address: string, folder: string): Promise<string> {
  const { file: aside } = await makeBackup(join(folder, 'shop.db'), join(folder, 'shop-put-aside'), clock.now());
  const own = join(folder, 'shop-restoring');
  rmSync(own, { recursive: true, force: true });
  mkdirSync(own, { mode: 0o700 });
  try {
    copyWhole(from.file, join(own, 'shop.db'));
    bringUp(own);
    await restoreToPostgresql(join(own, 'shop.db'), address);
  } finally {
    rmSync(own, { recursive: true, force: true });
  }
  return aside;
}

/** Bring the file in a folder up to this program, as the start does. */
function bringUp(folder: string): void {
  const args = ['--import', 'tsx', '--conditions=react-server', 'prisma/migrate.ts'];
  const cwd = fileURLToPath(new URL('../../', import.meta.url));
  const env = { ...process.env, DATA_DIR: folder, DATABASE_URL: '' };
  const { status, stderr } = spawnSync(process.execPath, args, { cwd, env, encoding: 'utf8' });
  if (status !== 0) throw new Error(`The backup could not be brought up to date. ${stderr}`);
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
async function isWanted({ faults, isSealed }: Candidate, isFilled: boolean, isSaid: boolean): Promise<boolean> {
  if (faults.length === 0) console.log(isSealed ? '  All of it is sound.' : '  SQLite finds nothing wrong with it.');
  else
    console.error(
      `  It has faults:\n${faults
        .slice(0, 20)
        .map((fault) => `    ${fault}`)
        .join('\n')}`,
    );
  if (isFilled) console.log('\n  It takes the place of the database that is there now, which is kept aside.');
  if (isSaid) return faults.length === 0;
  const terminal = createInterface({ input: process.stdin, output: process.stdout });
  const closed = new Promise<string>((resolve) => terminal.once('close', () => resolve('')));
  const answer = await Promise.race([terminal.question('  Restore it? Type yes: '), closed]);
  terminal.close();
  return answer.trim().toLowerCase() === 'yes';
}
