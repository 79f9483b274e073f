import type Sqlite from 'better-sqlite3';

/*
 * A value of a kind that its column cannot hold, such as text among numbers or broken JSON, makes the client refuse every
 * row of the answer. So each answer is looked through before the client sees it: such a value becomes one of the right
 * kind that no shop file may hold. The contract then refuses that one thing, and the rest of the shop is read.
 */

/** What a column may hold. */
type Column = { name: string; kind: string; isRequired: boolean };

type Columns = ReadonlyMap<string, Column>;

/** What stands for a value of the wrong kind. Every contract of a shop file refuses it. */
export const UNREADABLE = '\u0000';
const LEAST: Record<string, unknown> = { INTEGER: -(2n ** 31n), BIGINT: -(2n ** 53n - 1n), REAL: -1e300 };

export const WRONG_NUMBERS: readonly number[] = Object.values(LEAST).map(Number);
const KINDS = ['TEXT', 'BOOLEAN', 'BLOB', 'JSONB'];

/** What counts as yes where nobody said so, as in a shop file. */
const YES_IF_UNKNOWN = ['customers', 'enclosed'];

/** A yes or no that is asked anew where it cannot be read: the column, and the field of a shop file. */
const ASKED = ['alkaliSilicate', 'customers', 'enclosed', 'extra', 'withdrawn'];
const ASKED_MARK = `${UNREADABLE}yes or no `;

/** Stands in a shop for a yes or no that cannot be read. */
export const NEITHER = `${UNREADABLE}neither yes nor no`;

/** Let a connection give only rows that the client can take. */
export function giveReadableCells(driver: Sqlite.Database): void {
  const prepare = driver.prepare.bind(driver);
  const known = new Map<string, Columns>();
  const columnsOf = (table: string): Columns => {
    const columns = known.get(table) ?? columnsIn(prepare, table);
    known.set(table, columns);
    return columns;
  };
  const prepareReadable = (sql: string) => {
    const statement = prepare(sql);
    if (!statement.reader) return statement;
    const all = statement.all.bind(statement);
    statement.all = (...values) => {
      const rows = all(...values);
      // The client takes rows as lists of cells. Whoever takes them by name looks at the cells by itself.
      if (Array.isArray(rows[0])) mend(rows as unknown[][], columnsOfAnswer(statement, columnsOf));
      return rows;
    };
    return statement;
  };
  Object.assign(driver, { prepare: prepareReadable });
}

function columnsIn(prepare: Sqlite.Database['prepare'], table: string): Columns {
  const info = prepare('SELECT name, type, "notnull" AS required, pk FROM pragma_table_info(?)').all(table);
  const rows = info as { name: string; type: string; required: bigint | number; pk: bigint | number }[];
  return new Map(
    rows.map(({ name, type, required, pk }) => [
      name,
      { name, kind: type, isRequired: Number(required) > 0 || Number(pk) > 0 },
    ]),
  );
}

const columnsOfAnswer = (statement: Sqlite.Statement, columnsOf: (table: string) => Columns): (Column | null)[] =>
  statement.columns().map(({ table, column }) => (table && column && columnsOf(table).get(column)) || null);

function mend(rows: unknown[][], columns: readonly (Column | null)[]): void {
  for (const row of rows) {
    for (const [at, column] of columns.entries()) {
      if (column === null || isReadable(row[at], column)) continue;
      row[at] = instead(row[at], column);
      // Both answers to yes or no can be true, so the row itself is made unreadable.
      if (column.kind === 'BOOLEAN') spoil(row, columns, column.name);
    }
  }
}

function isReadable(value: unknown, { kind, isRequired }: Column): boolean {
  if (value === null) return !isRequired || !(kind in LEAST || KINDS.includes(kind));
  switch (kind) {
    case 'TEXT':
      return typeof value === 'string';
    case 'INTEGER':
      return typeof value === 'bigint' && value >= -(2n ** 31n) && value < 2n ** 31n;
    case 'BIGINT':
      return typeof value === 'bigint';
    case 'BOOLEAN':
      return value === 0n || value === 1n;
    case 'REAL':
      return typeof value === 'number' || typeof value === 'bigint';
    case 'BLOB':
      return Buffer.isBuffer(value);
    case 'JSONB':
      return typeof value === 'string' ? isJson(value) : !Buffer.isBuffer(value);
    default:
      return true;
  }
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

function instead(value: unknown, { name, kind }: Column): unknown {
  if (kind === 'TEXT') return `${UNREADABLE}${value ?? ''}`;
  if (kind === 'BOOLEAN') return YES_IF_UNKNOWN.includes(name) ? 1n : 0n;
  if (kind === 'BLOB') return Buffer.from(String(value));
  return LEAST[kind] ?? JSON.stringify(`${UNREADABLE}${value ?? ''}`);
}

/** A text that names nothing else takes the mark, with which yes or no is to be asked. The best is one that a shop file has. */
function spoil(row: unknown[], columns: readonly (Column | null)[], name: string): void {
  const told = columns.findIndex((column) => column?.name === 'name' || column?.name === 'sprayedBy');
  const at = told >= 0 ? told : columns.findIndex((one) => one?.kind === 'TEXT' && !/(^id|Id)$/.test(one.name));
  if (at < 0) return;
  const mark = ASKED.includes(name) ? `${ASKED_MARK}${name}${UNREADABLE}` : UNREADABLE;
  row[at] = `${mark}${row[at] ?? ''}`;
}

/** The same thing with its text as it was and, in place of each yes or no that could not be read, a value that is refused. */
export function askedYesNo<T extends Record<string, unknown>>(thing: T, text: keyof T & string): T {
  let now: Record<string, unknown> = thing;
  for (let said = now[text]; typeof said === 'string' && said.startsWith(ASKED_MARK); said = now[text]) {
    const [name = '', ...rest] = said.slice(ASKED_MARK.length).split(UNREADABLE);
    now = { ...now, [text]: rest.join(UNREADABLE) || null, [name]: NEITHER };
  }
  return now as T;
}
