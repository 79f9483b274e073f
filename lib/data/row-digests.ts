import { createHash, hash } from 'node:crypto';
import type Sqlite from 'better-sqlite3';

/** How many rows a table holds, and the SHA-256 of what is in them, in the order of their keys. */
export type TableDigest = { rows: number; digest: string };

/** A value of a row as plain text with its kind: `n`, `i12`, `r0.5`, `ttext`, `b` and a hash of the bytes. */
export type Canonical = string;

/** Takes the rows of a table one by one. The columns of each stand in the order of their names. */
export class DigestOfTable {
  private readonly sum = createHash('sha256');
  private rows = 0;

  add(values: readonly Canonical[]): void {
    this.sum.update(`${JSON.stringify(values)}\n`);
    this.rows += 1;
  }

  result(): TableDigest {
    return { rows: this.rows, digest: this.sum.digest('hex') };
  }
}

/** The same for every table of a SQLite database, by name; the list of migrations is not among them. */
export function digestsOfFile(database: Sqlite.Database): Record<string, TableDigest> {
  const tables = database
    .prepare("SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")
    .pluck()
    .all()
    .map(String)
    .filter((name) => name !== '_prisma_migrations');
  return Object.fromEntries(tables.sort().map((table) => [table, digestOf(database, table)]));
}

type Column = { name: string; pk: number };

function digestOf(database: Sqlite.Database, table: string): TableDigest {
  const info = database.prepare<string[], Column>('SELECT name, pk FROM pragma_table_info(?) ORDER BY name').all(table);
  const columns = info.map(({ name }) => `"${name}"`).join(', ');
  const keys = info.filter(({ pk }) => pk > 0).sort((one, other) => one.pk - other.pk);
  const order = keys.length > 0 ? `ORDER BY ${keys.map(({ name }) => `"${name}"`).join(', ')}` : '';
  const rows = database.prepare<[], unknown[]>(`SELECT ${columns} FROM "${table}" ${order}`).raw().safeIntegers();
  const digest = new DigestOfTable();
  for (const row of rows.iterate()) digest.add(row.map(canonical));
  return digest.result();
}

/** A value as a database hands it out, as plain text with its kind. */
export function canonical(value: unknown): Canonical {
  if (value === null) return 'n';
  if (typeof value === 'bigint') return `i${value}`;
  if (typeof value === 'number') return `r${value}`;
  return Buffer.isBuffer(value) ? `b${hash('sha256', value)}` : `t${String(value)}`;
}
