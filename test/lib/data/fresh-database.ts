import { copyFileSync, existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { migrate } from '@/prisma/bring-up-to-date.js';
import { migrationsIn } from '@/prisma/migration-folders.js';
import { quickFolder } from '@/test/run/quick-folder.js';

/** A clock that stands still, late on a spring morning. */
export const CLOCK = clockPinnedTo('2026-03-31T09:00:00Z');

const folders: string[] = [];

/** A fresh, migrated database in a folder of its own, which every command and view then uses. Gives the folder. */
export async function freshDatabase(): Promise<string> {
  const folder = mkdtempSync(join(quickFolder(), 'bench-and-bottle-'));
  folders.push(folder);
  cleanUpAfterTest();
  copyFileSync(await template(), join(folder, 'shop.db'));
  process.env.DATA_DIR = folder;
  return folder;
}

/** Not with a hook of this file: several test files share what one of them has read in, and only that one would have it. */
function cleanUpAfterTest(): void {
  try {
    onTestFinished(closeDatabases);
  } catch {
    // Not within a test: whoever makes a database for a whole file closes it.
  }
}

/** Close and remove every database that was made here since the last time. */
export async function closeDatabases(): Promise<void> {
  for (const folder of folders.splice(0)) {
    process.env.DATA_DIR = folder;
    if (existsSync(join(folder, 'shop.db'))) await (await database().catch(() => null))?.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Migrating takes a fifth of a second, copying a migrated file none. Test files that run at once share one. */
async function template(): Promise<string> {
  const migrations = fingerprint(migrationsIn().map(({ checksum }) => checksum)).slice(0, 16);
  const file = join(quickFolder(), `bench-and-bottle-template-${migrations}.db`);
  if (existsSync(file)) return file;
  const own = `${file}.${process.pid}`;
  await migrate(own);
  renameSync(own, file);
  return file;
}
