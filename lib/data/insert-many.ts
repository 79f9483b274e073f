import 'server-only';
import { inParts } from './by-owner';
import type { Rows } from './database';
import { type Cells, dialectHere } from './dialect';

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
  for (const some of inParts(data)) {
    const { sql, values } = dialectHere().insert(table, fields, some.map(cellsOf(fields)));
    await rows.$executeRawUnsafe(sql, ...values);
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
  for (const some of inParts(data)) {
    const { sql, values } = dialectHere().update(table, keys, fields, some.map(cellsOf(fields)));
    await rows.$executeRawUnsafe(sql, ...values);
  }
}

const cellsOf =
  (fields: readonly string[]) =>
  (row: Record<string, Stored>): Cells =>
    fields.map((field) => row[field] ?? null);
