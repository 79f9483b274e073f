import 'server-only';
import { existsSync, statSync } from 'node:fs';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { type Prisma, PrismaClient } from '@/prisma/generated/client';
import { databaseFile } from './database-file';
import { type Pragma, READER_PRAGMAS, refuseWrongPragmas, setPragmas, WRITER_PRAGMAS } from './pragmas';

/** The database of the shops, on two connections: one writes, one command after another; the other only reads. */
export type Database = {
  file: string;
  /** Which file it is, whatever stands under its name later. */
  inode: bigint;
  writer: PrismaClient;
  reader: PrismaClient;
  /** The end of the line of commands that wait their turn. Only `write` touches it. */
  line: Promise<unknown>;
  close(): Promise<void>;
};

/** Either connection, or a transaction on one. */
export type Rows = Prisma.TransactionClient;

const open = openInThisProcess(globalThis);

/**
 * The database in the data folder (DATA_DIR, or `data`), opened once per process, also across reloads in development.
 *
 * Throws   Error with a sentence when there is none, when it would not keep what it is given, or when the file that was
 *          opened is no longer the one in the folder: it could still be read, and would show a shop that is gone
 */
export function database(): Promise<Database> {
  const file = databaseFile();
  const opened = open.get(file) ?? openDatabase(file).catch(forget(file));
  open.set(file, opened);
  return opened.then(stillThere);
}

function stillThere(opened: Database): Database {
  const { file, inode } = opened;
  if (statSync(file, { bigint: true, throwIfNoEntry: false })?.ino === inode) return opened;
  throw new Error(
    `The database at ${file} was taken away or replaced while it was open. Stop the shop and start it anew.`,
  );
}

/**
 * Open the database in a file that is already there, and make sure of how it keeps what it is given.
 *
 * Throws   Error with a sentence: no such file (a mistyped path never makes a new database), or a setting that would
 *          not hold
 */
export async function openDatabase(file: string, wanted: { writer: Pragma[]; reader: Pragma[] } = PRAGMAS) {
  if (!existsSync(file)) {
    throw new Error(
      `There is no database at ${file}. Check DATA_DIR; \`npm start\` makes a new one where there is none.`,
    );
  }
  const [writer, reader] = [connect(file), connect(file)];
  const close = async () => {
    await Promise.all([writer.$disconnect(), reader.$disconnect()]);
    open.delete(file);
  };
  try {
    await setPragmas(writer, wanted.writer);
    await setPragmas(reader, wanted.reader);
    await refuseWrongPragmas(writer, WRITER_PRAGMAS, 'writing');
    await refuseWrongPragmas(reader, READER_PRAGMAS, 'reading');
  } catch (error) {
    await close();
    throw error;
  }
  const { ino: inode } = statSync(file, { bigint: true });
  return { file, inode, writer, reader, line: Promise.resolve(), close } satisfies Database;
}

const PRAGMAS = { writer: WRITER_PRAGMAS, reader: READER_PRAGMAS };

const connect = (file: string): PrismaClient =>
  new PrismaClient({ adapter: new PrismaBetterSqlite3({ url: file, fileMustExist: true, timeout: 250 }) });

/** A database that could not be opened is tried anew by the next request. */
const forget = (file: string) => (error: unknown) => {
  open.delete(file);
  throw error;
};

/** The databases that this process has open, kept where a reload of the program in development finds them again. */
function openInThisProcess(house: { openDatabases?: Map<string, Promise<Database>> } & typeof globalThis) {
  house.openDatabases ??= new Map();
  return house.openDatabases;
}
