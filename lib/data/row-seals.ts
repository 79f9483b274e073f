import { hash } from 'node:crypto';
import type Sqlite from 'better-sqlite3';

/*
 * Every row of a shop has a seal: a hash of what the database really holds in it. Triggers on the one connection that
 * writes keep the seals, so they change with their rows, in the same transaction. Another connection has no such
 * triggers: what it changes no longer fits its seal, and so does a digit that went wrong on the disk.
 *
 * A seal follows its row only as long as the two fit. So a change of a damaged row never makes the damage good, and
 * entering again what the row said before does.
 */

/** A row that does not fit its seal. `row` is its key without the shop, in parts on lines of their own. */
export type RowFault = { wrong: 'changed' | 'missing' | 'unsealed'; shop: string; table: string; row: string };

/** Records have a chain of seals of their own; sessions come and go. The last is where the migrations are noted. */
export const NOT_SEALED = [
  ...['Application', 'ApplicationVersion', 'ApplicationBench', 'ApplicationProduct', 'AmendmentConfirmation'],
  ...['RecordSeal', 'RowSeal', 'Session', '_prisma_migrations'],
];

/** Columns that count commands, change with every minute or have a hash of their own beside them. */
export const NOT_IN_A_SEAL = ['Shop.revision', 'SafetySheet.bytes'];

/** One sealed table: how SQL names the shop, the key and the seal of a row that has some name. */
export type Sealed = { table: string; columns: string[]; shop: Named; key: Named; seal: Named };
type Named = (row: string) => string;

export function sealedTables(database: Sqlite.Database): Sealed[] {
  const tables = database
    .prepare("SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")
    .pluck()
    .all()
    .map(String);
  return tables.filter((table) => !NOT_SEALED.includes(table)).map((table) => sealedTable(database, table));
}

function sealedTable(database: Sqlite.Database, table: string): Sealed {
  const all = database.prepare<unknown[], { name: string; pk: number | bigint }>(
    'SELECT name, pk FROM main.pragma_table_info(?) ORDER BY pk, name',
  );
  const info = all.all(table);
  const columns = info
    .map(({ name }) => name)
    .filter((name) => !NOT_IN_A_SEAL.includes(`${table}.${name}`))
    .sort();
  const owner = table === 'Shop' ? 'id' : 'shopId';
  const keys = info.filter(({ name, pk }) => Number(pk) > 0 && name !== owner).map(({ name }) => name);
  const hasOwner = info.some(({ name }) => name === owner);
  return {
    ...{ table, columns },
    shop: (row) => (hasOwner ? `CAST(${row}."${owner}" AS TEXT)` : "''"),
    key: (row) => keys.map((name) => `CAST(${row}."${name}" AS TEXT)`).join(' || char(10) || ') || "''",
    seal: (row) => {
      const values = columns.map((name) => `${row}."${name}"`);
      return `row_seal('${table}', '${columns.join(' ')}', ${values.join(', ')})`;
    },
  };
}

/** Teach a connection how a row is sealed: `row_seal(table, names of columns, their values)`. */
export function knowSeals(database: Sqlite.Database): void {
  const options = { deterministic: true, varargs: true, safeIntegers: true };
  database.function('row_seal', options, (table: unknown, names: unknown, ...values: unknown[]) =>
    rowSeal(String(table), namesIn(String(names)), values),
  );
}

const known = new Map<string, string[]>();

function namesIn(text: string): string[] {
  const names = known.get(text) ?? text.split(' ');
  known.set(text, names);
  return names;
}

/**
 * The seal of a row: the first 22 letters of the SHA-256, in base64url, of a line for its table and one for each column
 * that holds something. A column that a later program adds changes no seal until it does.
 */
export function rowSeal(table: string, names: readonly string[], values: readonly unknown[]): string {
  let text = `${table}\n`;
  for (const [at, value] of values.entries()) {
    if (value !== null) text += `${names[at]} ${written(value)}\n`;
  }
  return hash('sha256', text, 'base64url').slice(0, 22);
}

function written(value: unknown): string {
  if (typeof value === 'bigint') return `integer ${value}`;
  if (typeof value === 'number') return `real ${value}`;
  if (typeof value === 'string') return `text ${value.length} ${value}`;
  return `blob ${Buffer.from(value as Uint8Array).toString('hex')}`;
}

/** Let a connection seal every row that it writes. Its triggers are its own and end with it. */
export function sealWhatIsWritten(database: Sqlite.Database): void {
  knowSeals(database);
  for (const sealed of sealedTables(database)) database.exec(triggersOf(sealed));
}

function triggersOf({ table, columns, shop, key, seal }: Sealed): string {
  const fits = `"shopId" = ${shop('OLD')} AND "tableName" = '${table}' AND "rowKey" = ${key('OLD')} AND "hash" = ${seal('OLD')}`;
  const now = `FROM "${table}" AS t WHERE t.rowid = NEW.rowid`;
  const changed = columns.map((name) => `"${name}"`).join(', ');
  return `
    CREATE TEMP TRIGGER "${table} inserted" AFTER INSERT ON main."${table}" BEGIN
      INSERT OR IGNORE INTO "RowSeal" ("shopId", "tableName", "rowKey", "hash")
        SELECT ${shop('t')}, '${table}', ${key('t')}, ${seal('t')} ${now};
    END;
    CREATE TEMP TRIGGER "${table} updated" AFTER UPDATE OF ${changed} ON main."${table}" BEGIN
      UPDATE "RowSeal" SET "hash" = (SELECT ${seal('t')} ${now}) WHERE ${fits};
    END;
    CREATE TEMP TRIGGER "${table} deleted" AFTER DELETE ON main."${table}" BEGIN
      DELETE FROM "RowSeal" WHERE ${fits};
    END;`;
}

/**
 * Every row that does not fit its seal, tables in the order of their names.
 *
 * Takes    a connection that knows seals, in a transaction
 */
export function rowFaults(database: Sqlite.Database): RowFault[] {
  const tables = sealedTables(database).sort((a, b) => (a.table < b.table ? -1 : 1));
  const strangers = `SELECT "shopId" AS shop, "tableName" AS "table", "rowKey" AS row, 'missing' AS wrong FROM "RowSeal"
    WHERE "tableName" NOT IN (${[...tables.map(({ table }) => `'${table}'`), `'${SCHEMA.table}'`].join(', ')})`;
  return [...tables, SCHEMA].flatMap((sealed) => faultsIn(database, sealed)).concat(asked(database, strangers));
}

function faultsIn(database: Sqlite.Database, { table, shop, key, seal }: Sealed): RowFault[] {
  const [from, own] = [`main."${table}" AS t`, `s."tableName" = '${table}'`];
  const isChecked = table !== SCHEMA.table || database.prepare(`SELECT 1 FROM "RowSeal" s WHERE ${own}`).get();
  if (!isChecked) return [];
  const wrong = `SELECT ${shop('t')} AS shop, '${table}' AS "table", ${key('t')} AS row,
      CASE WHEN s."hash" IS NULL THEN 'unsealed' ELSE 'changed' END AS wrong
    FROM ${from} LEFT JOIN "RowSeal" s ON s."shopId" = ${shop('t')} AND ${own} AND s."rowKey" = ${key('t')}
    WHERE s."hash" IS NOT ${seal('t')}`;
  const gone = `SELECT shop, '${table}' AS "table", row, 'missing' AS wrong FROM (
    SELECT s."shopId" AS shop, s."rowKey" AS row FROM "RowSeal" s WHERE ${own}
    EXCEPT SELECT ${shop('t')}, ${key('t')} FROM ${from})`;
  return [...asked(database, wrong), ...asked(database, gone)];
}

const asked = (database: Sqlite.Database, sql: string): RowFault[] => database.prepare<unknown[], RowFault>(sql).all();

/** The tables themselves, their guards and their indexes are sealed like rows, by what the migrations made them. */
const SCHEMA: Sealed = {
  table: 'sqlite_schema',
  columns: ['name', 'sql', 'tbl_name', 'type'],
  shop: () => "''",
  key: (row) => `${row}."type" || ' ' || ${row}."name"`,
  seal: (row) =>
    `row_seal('sqlite_schema', 'name sql tbl_name type', ${row}."name", ${row}."sql", ${row}."tbl_name", ${row}."type")`,
};

/**
 * Seal every row as it stands, after a migration has changed tables. Rows that did not fit their seals before are left
 * as they are, to be found.
 *
 * Takes    a connection to a database that nobody else has open, and the faults found before the migration
 */
export function sealAll(database: Sqlite.Database, before: readonly RowFault[]): void {
  knowSeals(database);
  database.transaction(() => {
    database.exec('CREATE TEMP TABLE "Doubted" ("shopId" TEXT, "tableName" TEXT, "rowKey" TEXT)');
    const doubt = database.prepare('INSERT INTO "Doubted" VALUES (?, ?, ?)');
    for (const { shop, table, row } of before) doubt.run(shop, table, row);
    const doubted = 'SELECT "shopId", "tableName", "rowKey" FROM "Doubted"';
    const isDoubted = `("shopId", "tableName", "rowKey") IN (${doubted})`;
    database.exec(`DELETE FROM "RowSeal" WHERE NOT ${isDoubted}`);
    for (const { table, shop, key, seal } of [...sealedTables(database), SCHEMA]) {
      database.exec(`INSERT OR IGNORE INTO "RowSeal" ("shopId", "tableName", "rowKey", "hash")
        SELECT ${shop('t')}, '${table}', ${key('t')}, ${seal('t')} FROM main."${table}" AS t
        WHERE (${shop('t')}, '${table}', ${key('t')}) NOT IN (${doubted})`);
    }
    database.exec('DROP TABLE "Doubted"');
  })();
}
