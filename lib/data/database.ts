import 'server-only';
import { existsSync } from 'node:fs';
import type Sqlite from 'better-sqlite3';
import { type Prisma, PrismaClient } from '@/prisma/generated/client';
import { databaseFile } from './database-file';
import { FileWatch } from './file-watch';
import { LogKeeper } from './log-keeper';
import { type Marks, marksOf } from './marks';
import { type Pragma, READER_PRAGMAS, refuseWrongPragmas, setPragmas, WRITER_PRAGMAS } from './pragmas';
import { ReadingConnections, SealingConnections } from './sealing-connection';

/** The database of the shops, on two connections: one writes, one command after another; the other only reads. */
export type Database = {
  file: string;
  /** Which file it is, whatever stands under its name later. */
  inode: bigint;
  writer: PrismaClient;
  reader: PrismaClient;
  /** The driver's own writing connection, for what the client has no words for. In a command it stands in its transaction. */
  driver: Sqlite.Database;
  /** What shows whether anything has changed. */
  marks: Marks;
  /** The end of the line of commands that wait their turn. Only `inTurn` touches it. */
  line: Promise<unknown>;
  /** What is known of the file from outside of SQLite. */
  watch: FileWatch;
  /** Moves what was written from the log into the file, and keeps the mark beside it. */
  keeper: LogKeeper;
  /** Let running writes finish, bring everything into the one file, and close it. */
  close(): Promise<void>;
};

/** Either connection, or a transaction on one. */
export type Rows = Prisma.TransactionClient;

const house: { openDatabases?: Map<string, Promise<Database>>; databasesClosed?: boolean } & typeof globalThis =
  globalThis;

/** The databases that this process has open, kept where a reload of the program in development finds them again. */
house.openDatabases ??= new Map();
const open = house.openDatabases;

/**
 * The database in the data folder (DATA_DIR, or `data`), opened once per process, also across reloads in development.
 *
 * Throws   Error with a sentence when there is none, when it would not keep what it is given, when its file was cut,
 *          overwritten, taken away or replaced since it was opened, or when the program is stopping
 */
export function database(): Promise<Database> {
  const file = databaseFile();
  const known = open.get(file);
  if (!known && house.databasesClosed) return Promise.reject(new Error('The shop is stopping.'));
  const opened = known ?? openDatabase(file).catch(forget(file));
  open.set(file, opened);
  return opened.then(lookedAt);
}

function lookedAt(opened: Database): Database {
  opened.watch.look();
  return opened;
}

/**
 * Open the database in a file that is already there, and make sure of how it keeps what it is given.
 *
 * Throws   Error with a sentence: no such file (a mistyped path never makes a new database), or a setting that would
 *          not hold
 */
export async function openDatabase(file: string, wanted: Wanted = PRAGMAS): Promise<Database> {
  if (!existsSync(file)) {
    throw new Error(
      `There is no database at ${file}. Check DATA_DIR; \`npm start\` makes a new one in a folder that never held a shop.`,
    );
  }
  const sealing = new SealingConnections(settingsOf(file));
  const writer = new PrismaClient({ adapter: sealing });
  const reader = new PrismaClient({ adapter: new ReadingConnections({ ...settingsOf(file), readonly: true }) });
  try {
    await setPragmas(writer, wanted.writer);
    await setPragmas(reader, wanted.reader);
    await refuseWrongPragmas(writer, WRITER_PRAGMAS, 'writing');
    await refuseWrongPragmas(reader, READER_PRAGMAS, 'reading');
  } catch (error) {
    await Promise.all([writer.$disconnect(), reader.$disconnect()]);
    open.delete(file);
    throw error;
  }
  const marks = marksOf(file);
  const watch = new FileWatch(file);
  const keeper = new LogKeeper(watch, sealing.driver);
  const inode = watch.signs().main.ino;
  const close = () => end(opened);
  const { driver } = sealing;
  const line = Promise.resolve();
  const opened: Database = { file, inode, writer, reader, driver, marks, watch, keeper, line, close };
  return opened;
}

/**
 * The connection that closes last brings the log into the file. Where that is no longer the file that was opened, it must
 * not: so the one that can only read closes last, and the log stays where it is.
 */
async function end({ file, writer, reader, marks, watch, keeper, line }: Database): Promise<void> {
  await line;
  const isSound = keeper.finish();
  open.delete(file);
  marks.close();
  for (const connection of isSound ? [reader, writer] : [writer, reader]) await connection.$disconnect();
  watch.close();
}

type Wanted = { writer: Pragma[]; reader: Pragma[] };
const PRAGMAS: Wanted = { writer: WRITER_PRAGMAS, reader: READER_PRAGMAS };

const settingsOf = (file: string) => ({ url: file, fileMustExist: true, timeout: 250 });

/** A database that could not be opened is tried anew by the next request. */
const forget = (file: string) => (error: unknown) => {
  open.delete(file);
  throw error;
};
