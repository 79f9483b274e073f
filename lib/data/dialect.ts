import { postgresqlAddress } from './database-address';
import { kindOfType } from './postgresql/kind-of-type';

/*
 * Whatever is written differently for SQLite and for PostgreSQL. All other raw SQL of this folder is for both: names in
 * quotes, `?` for a value, CAST instead of ::.
 */

/** One of the two kinds of database, and how it is asked. */
export type Dialect = {
  name: 'sqlite' | 'postgresql';
  /** A statement with its places for values as this database takes them. */
  withPlaces(sql: string): string;
  /** Asks for name, type and value of each column of the table that `?` names, in their order. */
  columnsOfTable: string;
  /**
   * An expression for the kind of a value by its first letter and the value after it: `i` a whole number, `r` a real one
   * (whose value comes apart), `t` a text, `b` bytes in hexadecimal. NULL for none.
   */
  kindAndText(value: string, type: string): string;
  /** An expression for a real number in a column; NULL where it holds something else. Null: it can hold none. */
  realIn(value: string, type: string): string | null;
  /** A statement that inserts rows, and one that changes them, with the values they are given. */
  insert(table: string, fields: readonly string[], rows: readonly Cells[]): Statement;
  update(table: string, keys: readonly string[], fields: readonly string[], rows: readonly Cells[]): Statement;
};

/** What the cells of a row hold, in the order of the fields. */
export type Cells = readonly (string | number | bigint | boolean | null | object)[];

type Statement = { sql: string; values: (string | number | bigint | null)[] };

const quoted = (name: string): string => `"${name}"`;

export const SQLITE: Dialect = {
  name: 'sqlite',
  withPlaces: (sql) => sql,
  columnsOfTable: `SELECT name, type, '"' || name || '"' AS value FROM pragma_table_info(?)`,
  kindAndText: (value) =>
    `CASE typeof(${value}) WHEN 'null' THEN NULL WHEN 'real' THEN 'r' WHEN 'blob' THEN 'b' || hex(${value}) ` +
    `WHEN 'text' THEN 't' || ${value} ELSE 'i' || ${value} END`,
  // SQLite rounds the text of a real number. A column of text makes text of every number.
  realIn: (value, type) => (type === 'TEXT' ? null : `CASE WHEN typeof(${value}) = 'real' THEN ${value} END`),
  insert: (table, fields, rows) => ({
    sql: `INSERT INTO "${table}" (${fields.map(quoted).join(', ')}) VALUES ${placesOf(rows)}`,
    values: rows.flatMap((row) => row.map(cell)),
  }),
  update(table, keys, fields, rows) {
    const column = new Map(fields.map((field, at) => [field, `"new"."column${at + 1}"`]));
    const which = keys.map((key) => `"${table}"."${key}" = ${column.get(key)}`).join(' AND ');
    const set = fields.filter((field) => !keys.includes(field)).map((field) => `"${field}" = ${column.get(field)}`);
    return {
      sql: `UPDATE "${table}" SET ${set.join(', ')} FROM (VALUES ${placesOf(rows)}) AS "new" WHERE ${which}`,
      values: rows.flatMap((row) => row.map(cell)),
    };
  },
};

const placesOf = (rows: readonly Cells[]): string => rows.map((row) => `(${row.map(() => '?').join(', ')})`).join(', ');

function cell(value: Cells[number]): string | number | bigint | null {
  if (typeof value === 'boolean') return value ? 1 : 0;
  return typeof value === 'object' && value !== null ? JSON.stringify(value) : value;
}

export const POSTGRESQL: Dialect = {
  name: 'postgresql',
  withPlaces(sql) {
    let at = 0;
    return sql.replace(/\?/g, () => `$${++at}`);
  },
  columnsOfTable: `SELECT * FROM (
    SELECT attname AS name, format_type(atttypid, NULL) AS type, '"' || attname || '"' AS value FROM pg_attribute
    WHERE attrelid = CAST(quote_ident(?) AS regclass) AND attnum > 0 AND NOT attisdropped ORDER BY attnum) AS "columns"`,
  kindAndText(value, type) {
    const written = {
      whole: `'i' || CAST(${value} AS text)`,
      real: `CASE WHEN ${value} IS NOT NULL THEN 'r' END`,
      'yes-no': `'i' || CAST(CAST(${value} AS integer) AS text)`,
      bytes: `'b' || upper(encode(${value}, 'hex'))`,
      text: `'t' || CAST(${value} AS text)`,
    };
    return written[kindOfType(type)];
  },
  realIn: (value, type) => (kindOfType(type) === 'real' ? value : null),
  // The types are those of the table. JSON within the JSON stays as it was written.
  insert: (table, fields, rows) => {
    const columns = fields.map(quoted).join(', ');
    return {
      sql: `INSERT INTO "${table}" (${columns}) SELECT ${columns} FROM ${rowsFrom(table)}`,
      values: [records(fields, rows)],
    };
  },
  update(table, keys, fields, rows) {
    const which = keys.map((key) => `"${table}"."${key}" = "new"."${key}"`).join(' AND ');
    const set = fields.filter((field) => !keys.includes(field)).map((field) => `"${field}" = "new"."${field}"`);
    const sql = `UPDATE "${table}" SET ${set.join(', ')} FROM ${rowsFrom(table)} AS "new" WHERE ${which}`;
    return { sql, values: [records(fields, rows)] };
  },
};

const rowsFrom = (table: string): string => `json_populate_recordset(CAST(NULL AS "${table}"), CAST($1 AS json))`;

/** Rows as a JSON list. A big whole number is written in all of its digits. */
const records = (fields: readonly string[], rows: readonly Cells[]): string =>
  JSON.stringify(
    rows.map((row) => Object.fromEntries(fields.map((field, at) => [field, row[at]]))),
    (_, value) => (typeof value === 'bigint' ? String(value) : value),
  );

/** The kind of database that this program uses. */
export const dialectHere = (): Dialect => (postgresqlAddress() === null ? SQLITE : POSTGRESQL);
