import type { Client } from 'pg';
import { type Canonical, canonical, DigestOfTable, type TableDigest } from './row-digests';

/** A column of a table on PostgreSQL: its name, the name of its type, and its place in the key, from 1; 0 outside of it. */
export type Column = { name: string; type: string; key: number };

/** The tables of a PostgreSQL database with their columns by name; the list of migrations is not among them. */
export async function tablesOf(client: Client): Promise<Map<string, Column[]>> {
  const { rows } = await client.query(`
    SELECT c.table_name AS of, c.column_name AS name, c.data_type AS type, coalesce(k.ordinal_position, 0)::int AS key
    FROM information_schema.columns c
    LEFT JOIN information_schema.table_constraints p ON p.table_schema = c.table_schema
      AND p.table_name = c.table_name AND p.constraint_type = 'PRIMARY KEY'
    LEFT JOIN information_schema.key_column_usage k ON k.constraint_schema = p.constraint_schema
      AND k.constraint_name = p.constraint_name AND k.column_name = c.column_name
    WHERE c.table_schema = 'public' AND c.table_name <> '_prisma_migrations'
    ORDER BY (c.table_name)::text COLLATE "C", (c.column_name)::text COLLATE "C"`);
  const tables = new Map<string, Column[]>();
  for (const { of, name, type, key } of rows) tables.set(of, [...(tables.get(of) ?? []), { name, type, key }]);
  return tables;
}

/**
 * How many rows each table holds and a hash over them, the same as `digestsOfFile` gives of a SQLite database with the
 * same rows.
 *
 * Takes    a connection in a transaction that sees one moment
 */
export async function digestsOfPostgresql(client: Client): Promise<Record<string, TableDigest>> {
  const digests: [string, TableDigest][] = [];
  for (const [table, columns] of await tablesOf(client)) {
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

const WHOLE = ['bigint', 'integer'];

function asText({ name, type }: Column): string {
  if (type === 'boolean') return `"${name}"::int::text`;
  return type === 'text' || type === 'bytea' || type === 'double precision' ? `"${name}"` : `"${name}"::text`;
}

function asInSqlite(value: unknown, column: Column | undefined): Value {
  if (value === null || typeof value === 'number' || Buffer.isBuffer(value)) return value;
  const isWhole = column?.type === 'boolean' || WHOLE.includes(column?.type ?? '');
  return isWhole ? BigInt(String(value)) : String(value);
}
