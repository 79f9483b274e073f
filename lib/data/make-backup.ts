import { createHash, randomBytes } from 'node:crypto';
import {
  appendFileSync,
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import Sqlite from 'better-sqlite3';
import { type Contents, lookInto } from './backup-contents';
import { backupFolder, backupName, backupsIn, elsewhereFile, manifestFile } from './backup-files.js';
import { postgresqlAddress } from './database-address';
import { backupsToRemove } from './kept-backups';

/** What is kept beside a backup: when it was made, what it holds, and what the check after writing found. */
export type Manifest = {
  format: 'bench-and-bottle/backup@1';
  madeAt: number;
  bytes: number;
  sha256: string;
  isSound: boolean;
  faults: string[];
  contents: Contents | null;
};

/** A backup that was made: its file and its manifest. */
export type Made = { file: string; manifest: Manifest };

const MOST_FAULTS = 20;

/**
 * Make a backup of a database, whether a server has it open or not: one file with everything in it, as it stood at one
 * moment. It is checked after writing and gets its name last, so a file with the name of a backup is whole.
 *
 * Takes    the database, the folder for the backup, and the moment in milliseconds
 * Throws   Error when there is no database or nothing can be written; a file that was begun is taken away
 */
export async function makeBackup(database: string, folder: string, madeAt: number): Promise<Made> {
  makeFolder(folder);
  const begun = join(folder, `.begun-${process.pid}-${randomBytes(4).toString('hex')}`);
  try {
    await copyHere(database, begun);
    const { contents, faults } = await lookInto(begun);
    const manifest: Manifest = {
      ...{ format: 'bench-and-bottle/backup@1', madeAt, bytes: statSync(begun).size, sha256: sha256OfFile(begun) },
      ...{ isSound: contents !== null && faults.length === 0, faults: faults.slice(0, MOST_FAULTS), contents },
    };
    const file = freeName(folder, madeAt);
    writeSafely(manifestFile(file), `${JSON.stringify(manifest, null, 1)}\n`);
    renameSync(begun, file);
    syncFolder(folder);
    noteElsewhere(database, file);
    return { file, manifest };
  } finally {
    for (const name of [begun, `${begun}-journal`]) rmSync(name, { force: true });
  }
}

/** A copy of the database that this program uses. Of PostgreSQL it is a file, too: either kind can be restored from it. */
async function copyHere(database: string, copy: string): Promise<void> {
  const address = postgresqlAddress();
  if (address === null) return copyWhole(database, copy);
  const { copyFromPostgresql } = await import('@/prisma/move');
  await copyFromPostgresql(address, copy);
  chmodSync(copy, 0o600);
  syncFile(copy);
}

/** Why a backup could not be made, for people. What is wrong with a disk is said of the folder for the backup. */
export function notMade(error: unknown, folder: string): string {
  const said = (error as Error).message;
  if (/ENOSPC|EDQUOT|disk is full/.test(said)) return `The disk that holds ${folder} is full. Make room on it.`;
  if (/EACCES|EPERM|EROFS|unable to open|readonly/i.test(said)) return `Nothing can be written to ${folder}.`;
  return said;
}

/**
 * Make a backup in the folder of the running shop, and remove what its scheme no longer keeps. One with faults removes
 * nothing.
 */
export async function scheduledBackup(database: string, madeAt: number): Promise<Made> {
  const folder = backupFolder(database, process.env);
  const made = await makeBackup(database, folder, madeAt);
  if (!made.manifest.isSound) return made;
  for (const { file } of backupsToRemove(backupsIn(folder), madeAt)) {
    for (const name of [file, manifestFile(file)]) rmSync(name, { force: true });
  }
  return made;
}

/** The folder, for this account alone; one that was there keeps its rights. What an ended program left begun goes. */
function makeFolder(folder: string): void {
  if (!existsSync(folder)) mkdirSync(folder, { recursive: true, mode: 0o700 });
  for (const name of readdirSync(folder)) {
    const [, pid] = /^\.begun-(\d+)-/.exec(name) ?? [];
    if (pid !== undefined && !isRunning(Number(pid))) rmSync(join(folder, name), { force: true });
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/**
 * A whole copy. It gets a number of its own in its header: a start that finds it in the place of the database then knows
 * that it is another one.
 */
export function copyWhole(database: string, copy: string): void {
  if (!existsSync(database)) throw new Error(`There is no database at ${database}.`);
  const source = new Sqlite(database, { readonly: true, fileMustExist: true, timeout: 10_000 });
  try {
    source.prepare('VACUUM INTO ?').run(copy);
  } finally {
    source.close();
  }
  chmodSync(copy, 0o600);
  const written = new Sqlite(copy, { fileMustExist: true });
  try {
    written.pragma('synchronous = FULL');
    written.pragma('journal_mode = DELETE');
    written.pragma(`user_version = ${randomBytes(4).readInt32BE()}`);
  } finally {
    written.close();
  }
  syncFile(copy);
}

function freeName(folder: string, madeAt: number): string {
  const name = backupName(madeAt);
  for (let also = 1; ; also += 1) {
    const file = join(folder, also === 1 ? name : name.replace(/\.db$/, `-${also}.db`));
    if (!existsSync(file)) return file;
  }
}

/** A backup outside of the shop's own folder is noted, so that the newest one is always known. */
function noteElsewhere(database: string, file: string): void {
  if (resolve(dirname(file)) === resolve(backupFolder(database, process.env))) return;
  const list = elsewhereFile(database);
  mkdirSync(dirname(list), { recursive: true, mode: 0o700 });
  appendFileSync(list, `${resolve(file)}\n`, { mode: 0o600 });
}

/** The SHA-256 of a file, read piece by piece. */
export function sha256OfFile(file: string): string {
  const [sum, piece] = [createHash('sha256'), Buffer.alloc(2 ** 20)];
  const handle = openSync(file, 'r');
  try {
    for (let read = readSync(handle, piece); read > 0; read = readSync(handle, piece))
      sum.update(piece.subarray(0, read));
  } finally {
    closeSync(handle);
  }
  return sum.digest('hex');
}

function writeSafely(file: string, text: string): void {
  writeFileSync(file, text, { mode: 0o600 });
  syncFile(file);
}

/** Have what was written on the disk before going on. */
function syncFile(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** The same for the names in a folder; Windows knows no such thing. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
