import 'server-only';
import { existsSync } from 'node:fs';
import { type Prisma, PrismaClient } from '@/prisma/generated/client';
import { type Accepting, acceptingIn } from './accept-rows';
import { databaseName, postgresqlAddress } from './database-address';
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
  /** A connection that reads what is long, in parts: nobody else's question stands in its transaction. */
  longReader: () => Promise<PrismaClient>;
  /** Finds rows that do not fit their seals. */
  accepting: Accepting;
  /** What shows whether anything has changed. */
  marks: Marks;
  /** The end of the line of commands that wait their turn. Only `inTurn` touches it. */
  line: Promise<unknown>;
  /** What is known of the file from outside of SQLite. */
  watch: Watching;
  /** Moves what was written from the log into the file, and keeps the mark beside it. */
  keeper: Keeping;
  /** Let running writes finish, bring everything into the one file, and close it. */
  close(): Promise<void>;
};

/** What another thread of the program is given: its turn to write, and what it calls for each command it has committed. */
export type Beside = { turn: Promise<void>; onCommit: () => void };

/** How a file is watched, and how what was written is kept: by the thread that answers requests, for all of them. */
export type Watching = Pick<FileWatch, keyof FileWatch>;
export type Keeping = Omit<Pick<LogKeeper, keyof LogKeeper>, 'takeOver'> & { takeOver(): void | Promise<void> };

/** The connection that reads. */
export type PrismaReader = Pick<PrismaClient, '$transaction'>;

/** Either connection, or a transaction on one. */
export type Rows = Prisma.TransactionClient;

type House = {
  openDatabases?: Map<string, Promise<Database>>;
  readyDatabases?: Map<string, Database>;
  databasesClosed?: boolean;
  /** Other threads of this process that have the database open end before it is closed here. */
  closedFirst?: ((file: string) => Promise<unknown>)[];
};
const house: House & typeof globalThis = globalThis;

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
  const name = databaseName();
  const known = open.get(name);
  if (!known && house.databasesClosed) return Promise.reject(new Error('The shop is stopping.'));
  const opened = known ?? openHere().catch(forget(name));
  open.set(name, opened);
  return opened.then(lookedAt);
}

async function openHere(beside?: Beside): Promise<Database> {
  const address = postgresqlAddress();
  if (address === null) return openDatabase(databaseFile());
  // A shop in a file does without all of this.
  const { openPostgresql } = await import('./postgresql/open-postgresql');
  const opened: Database = { ...(await openPostgresql(address, beside)), close: () => end(opened, null) };
  ready.set(opened.file, opened);
  return opened;
}

/** The database that is open already, without waiting for it: for whoever must await nothing else. Null: it is not. */
export const databaseHere = (): Database | null => ready.get(databaseName()) ?? null;

/** Shared by every bundle of the process, as the promises above are. */
house.readyDatabases ??= new Map();
const ready = house.readyDatabases;

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
  const { sealing, writer, reader, marks } = await connectedTo(file, wanted);
  const watch = new FileWatch(file);
  const keeper = new LogKeeper(watch, sealing.driver);
  const inode = watch.signs().main.ino;
  const long = new LongReader(() => connectReader(file, wanted));
  const longReader = () => long.client();
  const close = () => end(opened, long);
  const accepting = acceptingIn(file, sealing.driver);
  const line = Promise.resolve();
  const opened: Database = { file, inode, writer, reader, longReader, accepting, marks, watch, keeper, line, close };
  ready.set(file, opened);
  return opened;
}

async function connectedTo(file: string, wanted: Wanted) {
  const sealing = new SealingConnections(settingsOf(file));
  const writer = new PrismaClient({ adapter: sealing });
  let reader: PrismaClient;
  try {
    await setPragmas(writer, wanted.writer);
    await refuseWrongPragmas(writer, WRITER_PRAGMAS, 'writing');
    reader = await connectReader(file, wanted);
  } catch (error) {
    await writer.$disconnect();
    open.delete(file);
    throw error;
  }
  return { sealing, writer, reader, marks: marksOf(file) };
}

async function connectReader(file: string, wanted: Wanted): Promise<PrismaClient> {
  const reader = new PrismaClient({ adapter: new ReadingConnections({ ...settingsOf(file), readonly: true }) });
  try {
    await setPragmas(reader, wanted.reader);
    await refuseWrongPragmas(reader, READER_PRAGMAS, 'reading');
    return reader;
  } catch (error) {
    await reader.$disconnect();
    throw error;
  }
}

/** A connection that is opened when it is first asked for. */
class LongReader {
  private opened: Promise<PrismaClient> | null = null;

  constructor(private readonly connect: () => Promise<PrismaClient>) {}

  client(): Promise<PrismaClient> {
    this.opened ??= this.connect();
    this.opened.catch(() => {
      this.opened = null;
    });
    return this.opened;
  }

  async close(): Promise<void> {
    const opened = await this.opened?.catch(() => null);
    await opened?.$disconnect();
  }
}

/**
 * Open the database once more in another thread of a program that has it open already. That program watches the file and
 * brings the log into it; here nothing of the kind is done, and no other handle of the file is opened or closed, because
 * closing one would release the locks of the whole process.
 *
 * Takes    the turn in the line of commands, which that program gives; and what is called for each command that was
 *          committed, so that it is looked for in the file and acknowledged there
 */
export async function openBeside(file: string, { turn, onCommit }: Beside): Promise<Database> {
  if (postgresqlAddress() !== null) {
    const there = openHere({ turn, onCommit });
    open.set(file, there);
    return there;
  }
  const { sealing, writer, reader, marks } = await connectedTo(file, PRAGMAS);
  const accepting = acceptingIn(file, sealing.driver);
  const watch: Watching = { ...NOT_WATCHED, file, prove: () => false };
  const keeper: Keeping = { ...NOT_KEPT, acknowledge: onCommit };
  const close = async () => {
    marks.close();
    await reader.$disconnect();
    await writer.$disconnect();
  };
  // Nobody else asks on this thread.
  const longReader = () => Promise.resolve(reader);
  const opened: Database = {
    ...{ file, inode: 0n, writer, reader, longReader, accepting, marks },
    ...{ watch, keeper, line: turn, close },
  };
  open.set(file, Promise.resolve(opened));
  return opened;
}

const NOTHING_SEEN = { main: { ino: 0n, dev: 0n, size: 0n, mtimeNs: 0n }, log: null };

const NOT_WATCHED = {
  ...{ trouble: null, look: () => false, begin: () => {}, end: () => {}, accept: () => {} },
  ...{ signs: () => NOTHING_SEEN, logSize: 0, close: () => {} },
};

const NOT_KEPT = {
  ...{ commands: 0, isRestored: () => false, takeOver: () => {}, afterWrite: () => {}, finish: () => true },
};

/**
 * The connection that closes last brings the log into the file. Where that is no longer the file that was opened, it must
 * not: so the one that can only read closes last, and the log stays where it is.
 */
async function end(opened: Database, long: LongReader | null): Promise<void> {
  const { file, writer, reader, marks, watch, keeper, line } = opened;
  await line;
  await Promise.all((house.closedFirst ?? []).map((close) => close(file)));
  const isSound = keeper.finish();
  open.delete(file);
  ready.delete(file);
  marks.close();
  await long?.close();
  for (const connection of isSound ? [reader, writer] : [writer, reader]) await connection.$disconnect();
  watch.close();
}

type Wanted = { writer: Pragma[]; reader: Pragma[] };
const PRAGMAS: Wanted = { writer: WRITER_PRAGMAS, reader: READER_PRAGMAS };

const settingsOf = (file: string) => ({ url: file, fileMustExist: true, timeout: 250 });

/** Have something done before a database is closed. */
export function beforeClosing(close: (file: string) => Promise<unknown>): void {
  house.closedFirst ??= [];
  house.closedFirst.push(close);
}

/** A database that could not be opened is tried anew by the next request. */
const forget = (file: string) => (error: unknown) => {
  open.delete(file);
  throw error;
};
