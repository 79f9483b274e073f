import 'server-only';
import { inParts } from './by-owner';
import type { Rows } from './database';

/** The tables of which a list of thousands brings thousands of rows. */
type Table =
  | 'Product'
  | 'Content'
  | 'Rate'
  | 'Offer'
  | 'Price'
  | 'PriceBreak'
  | 'Lot'
  | 'Container'
  | 'Movement'
  | 'Application'
  | 'ApplicationVersion'
  | 'ApplicationBench'
  | 'ApplicationProduct'
  | 'RecordSeal';

/** What a row may hold: lists of plain words and the like stand in a column as JSON. */
type Stored = string | number | bigint | boolean | null | undefined | readonly Stored[] | { [field: string]: Stored };

/**
 * Insert rows into a table, a few hundred with each statement.
 *
 * The client's own createMany makes a plan for each row of it, which takes seconds for a list of thousands. This writes
 * the same rows: every value as a parameter, and every constraint and trigger of the table as always.
 *
 * Takes    rows that all have the same fields, named like the columns
 */
export async function insertMany(rows: Rows, table: Table, data: readonly Record<string, Stored>[]): Promise<void> {
  const fields = Object.keys(data[0] ?? {});
  const columns = fields.map((field) => `"${field}"`).join(', ');
  const places = `(${fields.map(() => '?').join(', ')})`;
  for (const some of inParts(data)) {
    const values = some.flatMap((row) => fields.map((field) => asColumn(row[field])));
    const all = some.map(() => places).join(', ');
    await rows.$executeRawUnsafe(`INSERT INTO "${table}" (${columns}) VALUES ${all}`, ...values);
  }
}

/**
 * Change rows of a table, a few hundred with each statement: an update each takes a millisecond of the client's.
 *
 * Takes    the columns that say which row, and rows that all have the same fields: these, and what they are to hold
 */
export async function updateMany(
  rows: Rows,
  table: Table,
  keys: readonly string[],
  data: readonly Record<string, Stored>[],
): Promise<void> {
  const fields = Object.keys(data[0] ?? {});
  const column = new Map(fields.map((field, at) => [field, `"new"."column${at + 1}"`]));
  const which = keys.map((key) => `"${table}"."${key}" = ${column.get(key)}`).join(' AND ');
  const set = fields.filter((field) => !keys.includes(field)).map((field) => `"${field}" = ${column.get(field)}`);
  const places = `(${fields.map(() => '?').join(', ')})`;
  for (const some of inParts(data)) {
    const values = some.flatMap((row) => fields.map((field) => asColumn(row[field])));
    const all = some.map(() => places).join(', ');
    const sql = `UPDATE "${table}" SET ${set.join(', ')} FROM (VALUES ${all}) AS "new" WHERE ${which}`;
    await rows.$executeRawUnsafe(sql, ...values);
  }
}

function asColumn(value: Stored): string | number | bigint | null {
  if (value === null || value === undefined) return null;
  if (typeof value === 'boolean') return value ? 1 : 0;
  return typeof value === 'object' ? JSON.stringify(value) : value;
}
