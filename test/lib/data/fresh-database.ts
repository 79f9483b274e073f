import { copyFileSync, existsSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import pg from 'pg';
import { inject, onTestFinished } from 'vitest';
import { clockPinnedTo } from '@/lib/clock';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { migrate } from '@/prisma/bring-up-to-date.js';
import { migrationsIn } from '@/prisma/migration-folders.js';
import { dropDatabase, newDatabase } from '@/test/run/postgresql-databases';
import { quickFolder } from '@/test/run/quick-folder.js';

/** A clock that stands still, late on a spring morning. */
export const CLOCK = clockPinnedTo('2026-03-31T09:00:00Z');

/** The server on which this test runs; undefined where it runs on SQLite. */
const SERVER = inject('postgresql');

const made: { folder: string; address: string | undefined }[] = [];

/**
 * A fresh, migrated database in a folder of its own, or on the server, which every command and view then uses. Gives the
 * folder.
 */
export async function freshDatabase(): Promise<string> {
  const folder = mkdtempSync(join(quickFolder(), 'bench-and-bottle-'));
  const address = SERVER && (await newDatabase(SERVER));
  made.push({ folder, address });
  cleanUpAfterTest();
  if (!address) copyFileSync(await template(), join(folder, 'shop.db'));
  use(folder, address);
  return folder;
}

function use(folder: string, address: string | undefined): void {
  process.env.DATA_DIR = folder;
  if (address) process.env.DATABASE_URL = address;
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
  for (const { folder, address } of made.splice(0)) {
    use(folder, address);
    if (address || existsSync(join(folder, 'shop.db'))) await (await database().catch(() => null))?.close();
    if (address) await dropDatabase(address);
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Another program at the same database: it changes what it likes, and no command. */
export async function otherProgram(): Promise<{ exec(sql: string): Promise<void>; close(): Promise<void> }> {
  if (SERVER) {
    const client = new pg.Client({ connectionString: process.env.DATABASE_URL });
    await client.connect();
    return { exec: async (sql) => void (await client.query(sql)), close: () => client.end() };
  }
  const file = new Sqlite((await database()).file);
  return { exec: async (sql) => void file.exec(sql), close: async () => void file.close() };
}

/** Have another program change something. */
export async function changedElsewhere(sql: string): Promise<void> {
  const other = await otherProgram();
  await other.exec(sql).finally(() => other.close());
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
