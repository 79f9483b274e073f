import type { Client } from 'pg';
import { grouped } from '@/lib/engine/grouped';
import { askClient } from './postgresql/ask-client';
import { kindOfType } from './postgresql/kind-of-type';
import { type Canonical, canonical, DigestOfTable, type TableDigest } from './row-digests';
import type { Ask } from './sealed-rows';

/** A column of a table on PostgreSQL: its name, the name of its type, and its place in the key, from 1; 0 outside of it. */
export type Column = { name: string; type: string; key: number };

/** The tables of a PostgreSQL database with their columns by name; the list of migrations is not among them. */
export async function tablesOf(ask: Ask): Promise<Map<string, Column[]>> {
  const rows = await ask(`
    SELECT c.relname AS "table", a.attname AS name, format_type(a.atttypid, NULL) AS type,
      CAST(coalesce(array_position(CAST(i.indkey AS int2[]), a.attnum) + 1, 0) AS text) AS key
    FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped
    LEFT JOIN pg_index i ON i.indrelid = c.oid AND i.indisprimary
    WHERE c.relkind = 'r' AND c.relnamespace = CAST('public' AS regnamespace) AND c.relname <> '_prisma_migrations'
    ORDER BY CAST(c.relname AS text) COLLATE "C", CAST(a.attname AS text) COLLATE "C"`);
  const columns = rows.map(({ table, name, type, key }) => ({
    ...{ table: String(table), name: String(name), type: String(type), key: Number(key) },
  }));
  const tables = grouped(columns, ({ table }) => table);
  return new Map([...tables].map(([table, its]) => [table, its.map(({ name, type, key }) => ({ name, type, key }))]));
}

/**
 * How many rows each table holds and a hash over them, the same as `digestsOfFile` gives of a SQLite database with the
 * same rows.
 *
 * Takes    a connection in a transaction that sees one moment
 */
export async function digestsOfPostgresql(client: Client): Promise<Record<string, TableDigest>> {
  const digests: [string, TableDigest][] = [];
  for (const [table, columns] of await tablesOf(askClient(client))) {
    const digest = new DigestOfTable();
    await eachRow(client, table, columns, (values) => digest.add(values.map(canonical)));
    digests.push([table, digest.result()]);
  }
  return Object.fromEntries(digests);
}

/** What a value of a column is for SQLite: whole numbers as big ones, yes and no as 1 and 0, JSON as its text. */
export type Value = bigint | number | string | Buffer | null;

const AT_ONCE = 2_000;

/** Go through a table in the order of its key, with values as SQLite has them, columns in the order given. */
export async function eachRow(
  client: Client,
  table: string,
  columns: readonly Column[],
  take: (values: Value[]) => void,
): Promise<void> {
  const keys = columns.filter(({ key }) => key > 0).toSorted((one, other) => one.key - other.key);
  const order = keys.map(({ name, type }) => (type === 'text' ? `its."${name}" COLLATE "C"` : `its."${name}"`));
  const wanted = columns.map(asText).join(', ');
  await client.query(`DECLARE each_row CURSOR FOR SELECT ${wanted} FROM "${table}" its ORDER BY ${order.join(', ')}`);
  for (;;) {
    const { rows } = await client.query<Canonical[]>({ text: `FETCH ${AT_ONCE} FROM each_row`, rowMode: 'array' });
    for (const row of rows) take(row.map((value, at) => asInSqlite(value, columns[at])));
    if (rows.length < AT_ONCE) break;
  }
  await client.query('CLOSE each_row');
}

function asText({ name, type }: Column): string {
  const kind = kindOfType(type);
  if (kind === 'yes-no') return `"${name}"::int::text`;
  return kind === 'bytes' || kind === 'real' ? `"${name}"` : `"${name}"::text`;
}

function asInSqlite(value: unknown, column: Column | undefined): Value {
  if (value === null || typeof value === 'number' || Buffer.isBuffer(value)) return value;
  const kind = kindOfType(column?.type ?? '');
  return kind === 'whole' || kind === 'yes-no' ? BigInt(String(value)) : String(value);
}
