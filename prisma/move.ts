import { rmSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import pg from 'pg';
import { lookInto } from '@/lib/data/backup-contents';
import { type Column, digestsOfPostgresql, eachRow, tablesOf, type Value } from '@/lib/data/postgresql-digests';
import { digestsOfFile, type TableDigest } from '@/lib/data/row-digests';
import { migratePostgresql } from './bring-postgresql-up-to-date.js';
import { migrate } from './bring-up-to-date.js';

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
  await migratePostgresql(url);
  const source = new Sqlite(file, { readonly: true, fileMustExist: true, timeout: 1_000 });
  try {
    source.exec('BEGIN');
    return await withPostgresql(url, async (client) => {
      const tables = await tablesOf(client);
      await refuseFilled(client, [...tables.keys()]);
      for (const table of inOrder(source, [...tables.keys()]))
        await fill(client, source, table, tables.get(table) ?? []);
      return same(digestsOfFile(source), await digestsOfPostgresql(client));
    });
  } finally {
    source.close();
  }
}

/**
 * Write everything in a PostgreSQL database into a new SQLite file, and compare all of it.
 *
 * Takes    the address, and the path of a file that is not there yet
 * Throws   Error with a sentence when anything came out differently, or when the new file is not sound; then it is taken away
 */
export async function moveFromPostgresql(url: string, file: string): Promise<Digests> {
  await migrate(file);
  const target = new Sqlite(file, { fileMustExist: true });
  try {
    target.pragma('synchronous = FULL');
    target.pragma('foreign_keys = ON');
    const digests = await withPostgresql(url, async (client) => {
      const tables = await tablesOf(client);
      target.exec('BEGIN; PRAGMA defer_foreign_keys = ON');
      // A new database has seals of its own tables already, and they come with all others.
      target.exec('DELETE FROM "RowSeal"');
      for (const table of inOrder(target, [...tables.keys()])) {
        const columns = tables.get(table) ?? [];
        const names = columns.map(({ name }) => `"${name}"`).join(', ');
        const insert = target.prepare(
          `INSERT INTO "${table}" (${names}) VALUES (${columns.map(() => '?').join(', ')})`,
        );
        await eachRow(client, table, columns, (values) => insert.run(...values));
      }
      const found = same(await digestsOfPostgresql(client), digestsOfFile(target));
      target.exec('COMMIT');
      return found;
    });
    target.pragma('journal_mode = DELETE');
    target.close();
    const { faults } = await lookInto(file);
    if (faults.length > 0) throw new Error(`What came back is not sound. ${faults[0]}`);
    return digests;
  } catch (error) {
    target.close();
    for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${file}${end}`, { force: true });
    throw error;
  }
}

/** One transaction that sees one moment, kept only when the work comes to its end. */
async function withPostgresql<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
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
