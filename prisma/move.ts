import { rmSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import pg from 'pg';
import { lookInto } from '@/lib/data/backup-contents';
import { APP, askClient } from '@/lib/data/postgresql/ask-client';
import { type Column, digestsOfPostgresql, eachRow, tablesOf, type Value } from '@/lib/data/postgresql-digests';
import { digestsOfFile, type TableDigest } from '@/lib/data/row-digests';
import { migrate } from './bring-up-to-date.js';
import { readyPostgresql } from './ready-postgresql';

type Digests = Record<string, TableDigest>;

/**
 * Write everything in a SQLite database into an empty PostgreSQL database, which gets its tables first. All of it is
 * compared, table by table, before anything is kept.
 *
 * Gives    the number and hash of the rows of each table
 * Throws   Error with a sentence when the file is not sound, when the other database holds something already, or when
 *          anything came out differently; then nothing is kept there
 */
export async function moveToPostgresql(file: string, url: string): Promise<Digests> {
  const { faults } = await lookInto(file);
  if (faults.length > 0) throw new Error(`${file} is not sound, so it is not moved. ${faults[0]}`);
  await readyPostgresql(url);
  return withPostgresql(url, async (client) => {
    await refuseFilled(client, [...(await tablesOf(askClient(client))).keys()]);
    return fillFrom(client, file);
  });
}

/**
 * Fill empty tables with everything in a SQLite file, and compare all of it.
 *
 * Takes    a connection in the transaction in which the tables were emptied
 */
async function fillFrom(client: pg.Client, file: string): Promise<Digests> {
  const source = new Sqlite(file, { readonly: true, fileMustExist: true, timeout: 1_000 });
  try {
    source.exec('BEGIN');
    const tables = await tablesOf(askClient(client));
    for (const table of inOrder(source, [...tables.keys()])) await fill(client, source, table, tables.get(table) ?? []);
    return same(digestsOfFile(source), await digestsOfPostgresql(client));
  } finally {
    source.close();
  }
}

/**
 * Put everything in a SQLite file in the place of what a PostgreSQL database holds. All of it is compared, and kept together
 * with the note that it was restored: until somebody confirms, no bench opens.
 *
 * Takes    a file that is up to date with this program, and the address of a database whose shop is stopped
 * Throws   Error with a sentence when anything came out differently; then nothing has changed
 */
export async function restoreToPostgresql(file: string, url: string): Promise<Digests> {
  await readyPostgresql(url);
  return withPostgresql(url, async (client) => {
    const tables = [...(await tablesOf(askClient(client))).keys()].map((table) => `"${table}"`);
    // The guards of tables that only grow stand aside for this one transaction.
    for (const table of tables) await client.query(`ALTER TABLE ${table} DISABLE TRIGGER USER`);
    await client.query(`TRUNCATE ${tables.join(', ')}`);
    const digests = await fillFrom(client, file);
    for (const table of tables) await client.query(`ALTER TABLE ${table} ENABLE TRIGGER USER`);
    await client.query('UPDATE kept.outside SET "isRestored" = true');
    return digests;
  });
}

/** How many other connections of this program a database has: its shop is running then. */
export async function programsOn(url: string): Promise<number> {
  return withPostgresql(url, async (client) => {
    const { rows } = await client.query<{ count: string }>(
      'SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND application_name = $1',
      [APP],
    );
    return Number(rows[0]?.count);
  });
}

/**
 * Write everything in a PostgreSQL database into a new SQLite file, and compare all of it.
 *
 * Takes    the address, and the path of a file that is not there yet
 * Throws   Error with a sentence when anything came out differently, or when the new file is not sound; then it is taken away
 */
export async function moveFromPostgresql(url: string, file: string): Promise<Digests> {
  const digests = await copyFromPostgresql(url, file);
  const { faults } = await lookInto(file);
  if (faults.length === 0) return digests;
  takeAway(file);
  throw new Error(`What came back is not sound. ${faults[0]}`);
}

/** The same, whether what is there is sound or not. */
export async function copyFromPostgresql(url: string, file: string): Promise<Digests> {
  await migrate(file);
  const target = new Sqlite(file, { fileMustExist: true });
  try {
    target.pragma('synchronous = FULL');
    target.pragma('foreign_keys = ON');
    const digests = await withPostgresql(url, (client) => readInto(target, client));
    target.pragma('journal_mode = DELETE');
    target.close();
    return digests;
  } catch (error) {
    target.close();
    takeAway(file);
    throw error;
  }
}

async function readInto(target: Sqlite.Database, client: pg.Client): Promise<Digests> {
  const tables = await tablesOf(askClient(client));
  const ofItsTables = target.prepare('SELECT * FROM "RowSeal" WHERE "tableName" = \'sqlite_schema\'').raw().all();
  target.exec('BEGIN; PRAGMA defer_foreign_keys = ON');
  // A new database has seals of its own tables already. Where the shop has been on SQLite before, they come with all others.
  target.exec('DELETE FROM "RowSeal"');
  for (const table of inOrder(target, [...tables.keys()])) {
    const columns = tables.get(table) ?? [];
    const names = columns.map(({ name }) => `"${name}"`).join(', ');
    const insert = target.prepare(`INSERT INTO "${table}" (${names}) VALUES (${columns.map(() => '?').join(', ')})`);
    await eachRow(client, table, columns, (values) => insert.run(...values));
  }
  const found = same(await digestsOfPostgresql(client), digestsOfFile(target));
  const seal = target.prepare('INSERT OR IGNORE INTO "RowSeal" VALUES (?, ?, ?, ?)');
  for (const values of ofItsTables) seal.run(...(values as unknown[]));
  target.exec('COMMIT');
  return found;
}

function takeAway(file: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${file}${end}`, { force: true });
}

/** One transaction that sees one moment, kept only when the work comes to its end. */
async function withPostgresql<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url, options: '-c kept.program=copies' });
  await client.connect();
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ');
    const result = await work(client);
    await client.query('COMMIT');
    return result;
  } finally {
    await client.end();
  }
}

async function refuseFilled(client: pg.Client, tables: readonly string[]): Promise<void> {
  for (const table of tables) {
    const { rowCount } = await client.query(`SELECT 1 FROM "${table}" LIMIT 1`);
    if (rowCount) throw new Error('The PostgreSQL database holds a shop already. Name an empty database.');
  }
}

/** Tables after those that they refer to. */
function inOrder(database: Sqlite.Database, tables: readonly string[]): string[] {
  const parents = database.prepare<[string], { table: string }>('SELECT "table" FROM pragma_foreign_key_list(?)');
  const ordered = new Set<string>();
  const add = (table: string): void => {
    if (ordered.has(table)) return;
    for (const { table: parent } of parents.all(table)) if (parent !== table) add(parent);
    ordered.add(table);
  };
  for (const table of tables) add(table);
  return [...ordered];
}

/** A statement takes 65,535 values. */
const MOST_VALUES = 20_000;

async function fill(
  client: pg.Client,
  source: Sqlite.Database,
  table: string,
  columns: readonly Column[],
): Promise<void> {
  const names = columns.map(({ name }) => `"${name}"`).join(', ');
  const isOwnParent = source.prepare('SELECT 1 FROM pragma_foreign_key_list(?) WHERE "table" = ?').get(table, table);
  // Where a row refers to another one of its table, they go in the order in which they were written.
  const order = isOwnParent ? 'ORDER BY rowid' : '';
  const rows = source.prepare<[], Value[]>(`SELECT ${names} FROM "${table}" ${order}`).raw().safeIntegers();
  let some: Value[][] = [];
  const write = async () => {
    if (some.length === 0) return;
    const places = some.map((_, row) => `(${columns.map((_c, at) => `$${row * columns.length + at + 1}`).join(', ')})`);
    const values = some.flatMap((row) => row.map((value, at) => forPostgresql(value, columns[at]?.type)));
    await client.query(`INSERT INTO "${table}" (${names}) VALUES ${places.join(', ')}`, values);
    some = [];
  };
  for (const row of rows.iterate()) {
    some.push(row);
    if (some.length * columns.length >= MOST_VALUES) await write();
  }
  await write();
}

function forPostgresql(value: Value, type: string | undefined): string | number | boolean | Buffer | null {
  if (type === 'boolean' && value !== null) return value === 1n;
  return typeof value === 'bigint' ? String(value) : value;
}

function same(was: Digests, is: Digests): Digests {
  const other = Object.keys({ ...was, ...is }).filter(
    (table) => was[table]?.rows !== is[table]?.rows || was[table]?.digest !== is[table]?.digest,
  );
  if (other.length > 0) throw new Error(`These tables came out differently: ${other.join(', ')}. Nothing was kept.`);
  return is;
}
