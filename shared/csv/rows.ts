/** What stands between two cells. */
export const DELIMITERS = [',', ';', '\t', '|'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

/** A line of a list: its cells, and the line of the file on which it begins. A quoted cell may run over several. */
export type Row = { line: number; cells: string[] };

/** All rows; or where reading had to stop, with the cell counted from 0. */
export type ReadRows = { ok: true; rows: Row[] } | { ok: false; line: number; place: number; message: string };

type State = { text: string; at: number; line: number; delimiter: Delimiter };
type ReadCell = { ok: true; text: string } | { ok: false; message: string };

/**
 * Comma-separated values, with any delimiter.
 *
 * A cell in quotes may hold the delimiter, line breaks, and quotes written twice. A quote inside a cell that does not
 * begin with one is an ordinary character. A line ends with CRLF, LF or CR. The last line may lack its end.
 *
 * Refuses  a quoted cell that never ends, or has something other than the delimiter behind its closing quote
 * Source   RFC 4180, section 2
 */
export function readRows(text: string, delimiter: Delimiter, most = Number.POSITIVE_INFINITY): ReadRows {
  const state = { text, at: 0, line: 1, delimiter };
  const rows: Row[] = [];
  while (state.at < text.length && rows.length < most) {
    const row: Row = { line: state.line, cells: [] };
    do {
      const begun = state.line;
      const cell = readCell(state);
      if (!cell.ok) return { ok: false, line: begun, place: row.cells.length, message: cell.message };
      row.cells.push(cell.text);
    } while (skipped(state, delimiter));
    if (skipped(state, '\r\n') || skipped(state, '\n') || skipped(state, '\r')) state.line += 1;
    rows.push(row);
  }
  return { ok: true, rows };
}

function readCell(state: State): ReadCell {
  const { text, at, delimiter } = state;
  if (text[at] === '"') return readQuoted(state);
  let end = at;
  while (end < text.length && !isEnd(text[end], delimiter)) end += 1;
  state.at = end;
  return { ok: true, text: text.slice(at, end) };
}

const isEnd = (letter: string | undefined, delimiter: Delimiter): boolean =>
  letter === undefined || letter === delimiter || letter === '\n' || letter === '\r';

function readQuoted(state: State): ReadCell {
  const { text, delimiter } = state;
  let held = '';
  state.at += 1;
  for (;;) {
    const end = text.indexOf('"', state.at);
    if (end === -1) return { ok: false, message: NEVER_ENDS };
    held += text.slice(state.at, end);
    state.at = end + 1;
    if (!skipped(state, '"')) break;
    held += '"';
  }
  state.line += lineBreaksIn(held);
  while (text[state.at] === ' ') state.at += 1;
  if (isEnd(text[state.at], delimiter)) return { ok: true, text: held };
  return { ok: false, message: `Behind a closing quote stands ${JSON.stringify(text[state.at])}. ${WRITE_TWICE}` };
}

const NEVER_ENDS =
  'A cell begins with a quote here, and no quote ends it. Add the closing quote, or take the first away.';
const WRITE_TWICE = 'Inside a quoted cell, write a quote twice: "".';

const lineBreaksIn = (text: string): number => text.split(/\r\n|\n|\r/).length - 1;

function skipped(state: State, what: string): boolean {
  if (!state.text.startsWith(what, state.at)) return false;
  state.at += what.length;
  return true;
}
