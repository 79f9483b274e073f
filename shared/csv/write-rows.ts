/** What one cell is to say: a text, a number, or nothing. */
export type CellOut = string | number | null;

/** The mark that tells spreadsheet programs that a file is UTF-8. */
export const BYTE_ORDER_MARK = '\uFEFF';

/**
 * Rows as comma-separated values: texts in quotes, numbers bare, lines ending with CRLF.
 *
 * A text that a spreadsheet would take for a formula gets a ' in front, which `unguarded` takes away again.
 *
 * Source   RFC 4180, section 2
 */
export const csvText = (rows: readonly (readonly CellOut[])[]): string =>
  rows.map((cells) => `${cells.map(written).join(',')}\r\n`).join('');

const written = (cell: CellOut): string =>
  typeof cell === 'string' ? `"${guarded(cell).replaceAll('"', '""')}"` : String(cell ?? '');

/** What begins a formula in a spreadsheet, also where the signs are wide ones; and ' before it, so that nothing is lost. */
const FORMULA = /^'*[=+\-@\t\r\n＝＋－＠]/;

/** A text that no spreadsheet takes for a formula. */
export const guarded = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

/** The text as it was before `guarded`. */
export const unguarded = (text: string): string => (text.startsWith("'") && FORMULA.test(text) ? text.slice(1) : text);
