import { DELIMITERS, type Delimiter, type Row, readRows } from './rows';

/** A list as it was written: its first line names the columns. Lines without anything in them are left out. */
export type Table = { delimiter: Delimiter; header: Row; rows: Row[] };

/** A list that was read; or the one thing that makes the rest unreadable, with its column counted from 1 where it has one. */
export type ReadTable =
  | { ok: true; table: Table }
  | { ok: false; fault: { line: number; column: number | null; message: string } };

/**
 * A list out of a CSV file.
 *
 * Takes    the text, and whether the name of a column is one that is looked for: the delimiter that gives most of these is
 *          taken for the file's, and of several the one that gives most columns
 * Refuses  an empty file, a workbook, characters that no text holds, and quotes that do not close
 */
export function readTable(text: string, isLookedFor: (name: string) => boolean): ReadTable {
  const wrong = noTable(text);
  if (wrong) return { ok: false, fault: { line: 1, column: null, message: wrong } };
  const bare = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const delimiter = DELIMITERS.map((each) => ({ each, names: firstNames(bare, each) })).reduce((best, other) =>
    score(other.names, isLookedFor) > score(best.names, isLookedFor) ? other : best,
  ).each;
  const read = readRows(bare, delimiter);
  if (!read.ok) return { ok: false, fault: { line: read.line, column: read.place + 1, message: read.message } };
  const [header, ...rows] = read.rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  if (!header) return { ok: false, fault: { line: 1, column: null, message: EMPTY } };
  return { ok: true, table: { delimiter, header, rows } };
}

const EMPTY = 'There is nothing in this file. Its first line names the columns, and each line below it is one thing.';
const WORKBOOK = 'This is a workbook and not a CSV file. Save the sheet as CSV, and send that.';
const NOT_TEXT = 'This file holds characters that no text holds. Save the list as CSV in UTF-8, and send that.';

function noTable(text: string): string | null {
  if (text.startsWith('PK\u0003\u0004')) return WORKBOOK;
  if (text.includes('\u0000')) return NOT_TEXT;
  return null;
}

/** The cells of the first line that has something in it; as far as they can be read. */
function firstNames(text: string, delimiter: Delimiter): string[] {
  const begun = text.replace(/^[\s;,|]*(?:\r\n|\n|\r)/, '');
  const read = readRows(begun, delimiter, 1);
  return read.ok ? (read.rows[0]?.cells ?? []) : [];
}

/** A column that is looked for counts more than any number of others. */
const score = (names: string[], isLookedFor: (name: string) => boolean): number =>
  names.filter(isLookedFor).length * 1_000 + Math.min(names.length, 999);
