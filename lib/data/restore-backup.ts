import { copyFileSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Contents, type Looked, lookInto } from './backup-contents';
import { backupName, madeAtIn, manifestFile } from './backup-files.js';
import { copyWhole, type Manifest, sha256OfFile, syncFolder } from './make-backup';
import { markFile, numberOfFile, writeMark } from './shop-mark.js';

/** A backup that somebody thinks of restoring: what it holds, when it was made, and all that speaks against it. */
export type Candidate = Looked & { file: string; madeAt: number | null };

/** Look at a database file before it is restored. It is held against its manifest, where it has one. */
export async function candidate(file: string): Promise<Candidate> {
  const looked = await lookInto(file);
  const manifest = manifestOf(file);
  const isOther = manifest !== null && manifest.sha256 !== sha256OfFile(file);
  const faults = isOther ? ['The file is not as it was when it was backed up.', ...looked.faults] : looked.faults;
  const named = madeAtIn(file.split(/[\\/]/).at(-1) ?? '');
  return { ...looked, file, faults, madeAt: manifest?.madeAt ?? named };
}

function manifestOf(file: string): Manifest | null {
  try {
    return JSON.parse(readFileSync(manifestFile(file), 'utf8'));
  } catch {
    return null;
  }
}

/**
 * Put a backup in the place of the database, with the server stopped. What was there is moved aside into a folder named
 * by the moment. Halted anywhere, it leaves the old database, the new one, or a folder that the start refuses to fill
 * with a demo; done again, it goes on.
 *
 * Takes    the backup as it was looked at, the path of the database, and the moment in milliseconds
 * Gives    the folder with what was there before; null when nothing was
 * Throws   Error when the copy does not hold what was looked at; then nothing has changed
 */
export async function bringBack(from: Candidate, database: string, now: number): Promise<string | null> {
  const copy = `${database}.restoring`;
  for (const name of [copy, `${copy}-journal`]) rmSync(name, { force: true });
  copyWhole(from.file, copy);
  const { contents } = await lookInto(copy);
  if (!isSame(contents, from.contents)) {
    rmSync(copy, { force: true });
    throw new Error(`The copy of ${from.file} does not hold the same. Nothing was changed.`);
  }
  const aside = putAside(database, now);
  renameSync(copy, database);
  syncFolder(dirname(database));
  // A mark of another number: the next start sees that a backup was put back, and keeps people out until somebody confirms.
  writeMark(database, { database: otherNumber(numberOfFile(database)), commands: 0 });
  return aside;
}

const isSame = (one: Contents | null, other: Contents | null): boolean =>
  one !== null && JSON.stringify(one) === JSON.stringify(other);

/** The mark stays, too: it keeps a start from taking the folder for one that never held a shop. */
function putAside(database: string, now: number): string | null {
  const there = ['', '-wal', '-shm'].map((end) => `${database}${end}`).filter((file) => existsSync(file));
  if (there.length === 0) return null;
  const name = backupName(now).replace(/^shop-(.*)\.db$/, 'shop-put-aside-$1');
  let folder = join(dirname(database), name);
  for (let also = 2; existsSync(folder); also += 1) folder = join(dirname(database), `${name}-${also}`);
  mkdirSync(folder, { mode: 0o700 });
  if (existsSync(markFile(database))) copyFileSync(markFile(database), markFile(join(folder, 'shop.db')));
  // The database itself goes last: as long as it is there, its newest writes are looked for beside it.
  for (const file of there.toReversed()) renameSync(file, join(folder, file.slice(dirname(database).length + 1)));
  return folder;
}

const otherNumber = (number: string | null): string => (number === 'ffffffff' ? '00000000' : 'ffffffff');
