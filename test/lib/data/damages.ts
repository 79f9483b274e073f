import { closeSync, fstatSync, openSync, readSync, truncateSync, writeSync } from 'node:fs';
import Sqlite from 'better-sqlite3';

/** Numbers that look random and are the same in every run. */
export function seeded(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

type Random = (below: number) => number;

/** What goes wrong with a file on a disk. Each gives what it did, in words. */
export const DAMAGES: Record<string, (file: string, random: Random) => string> = {
  bit: (file, random) =>
    changed(file, random, 1, (bytes) => {
      bytes[0] = (bytes[0] ?? 0) ^ (1 << random(8));
    }),
  'sixteen bytes': (file, random) => changed(file, random, 16, (bytes) => fill(bytes, random)),
  'garbage page': (file, random) => page(file, random, (bytes) => fill(bytes, random)),
  'page of nothing': (file, random) => page(file, random, (bytes) => bytes.fill(0)),
  'page of elsewhere': (file, random) =>
    page(file, random, (bytes) => bytes.set(readAt(file, 4096 * random(40), 4096))),
  digit: digitOfAValue,
  cut: (file, random) => {
    const left = random(sizeOf(file));
    truncateSync(file, left);
    return `cut to ${left} bytes`;
  },
};

function digitOfAValue(file: string, random: Random): string {
  const database = new Sqlite(file);
  try {
    return changeADigit(database, random) ?? digitOfAValue(file, random);
  } finally {
    database.close();
  }
}

/** Change one digit or letter of one value by raw SQL, past every guard. Null: this row holds nothing to change. */
function changeADigit(database: Sqlite.Database, random: Random): string | null {
  database.exec('PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON');
  const tables = database
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE '\\_%' ESCAPE '\\'")
    .pluck()
    .all() as string[];
  const table = tables[random(tables.length)] ?? '';
  const triggers = database
    .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = ?")
    .all(table) as { name: string; sql: string }[];
  const rows = database.prepare(`SELECT * FROM "${table}"`).all() as Record<string, unknown>[];
  const [at, row] = [rows.length, rows[random(rows.length)]];
  const filled = Object.entries(row ?? {}).filter(([, value]) => /[0-9a-z]/i.test(String(value)));
  const [column = '', value] = filled[random(filled.length)] ?? [];
  if (at === 0 || value === undefined || Buffer.isBuffer(value)) return null;
  const is = otherDigit(value as string | number, random);
  for (const { name } of triggers) database.exec(`DROP TRIGGER "${name}"`);
  const where = Object.entries(row ?? {}).map(([name]) => `"${name}" IS ?`);
  const statement = database.prepare(`UPDATE OR REPLACE "${table}" SET "${column}" = ? WHERE ${where.join(' AND ')}`);
  statement.run(is, ...Object.values(row ?? {}));
  for (const { sql } of triggers) database.exec(sql);
  return `${table}.${column}: ${value} became ${is}`;
}

function otherDigit(value: string | number, random: Random): string | number {
  const text = String(value);
  const places = [...text].flatMap((letter, place) => (/[0-9a-z]/i.test(letter) ? [place] : []));
  const place = places[random(places.length)] ?? 0;
  const next = text[place] === '9' ? '8' : String.fromCharCode(text.charCodeAt(place) + 1);
  const is = `${text.slice(0, place)}${next}${text.slice(place + 1)}`;
  return typeof value === 'number' ? Number(is) : is;
}

export const sizeOf = (file: string): number => {
  const handle = openSync(file, 'r');
  try {
    return fstatSync(handle).size;
  } finally {
    closeSync(handle);
  }
};

const fill = (bytes: Uint8Array, random: Random): void => {
  for (const at of bytes.keys()) bytes[at] = random(256);
};

const page = (file: string, random: Random, change: (bytes: Uint8Array) => void): string =>
  changedAt(file, 4096 * random(sizeOf(file) / 4096), 4096, change);

const changed = (file: string, random: Random, length: number, change: (bytes: Uint8Array) => void): string =>
  changedAt(file, random(sizeOf(file) - length), length, change);

function changedAt(file: string, at: number, length: number, change: (bytes: Uint8Array) => void): string {
  const bytes = readAt(file, at, length);
  change(bytes);
  const handle = openSync(file, 'r+');
  writeSync(handle, bytes, 0, bytes.length, at);
  closeSync(handle);
  return `${length} bytes at ${at}`;
}

function readAt(file: string, at: number, length: number): Buffer {
  const bytes = Buffer.alloc(length);
  const handle = openSync(file, 'r');
  const read = readSync(handle, bytes, 0, length, at);
  closeSync(handle);
  return bytes.subarray(0, read);
}

/** Everything that a database holds, table by table and row by row: what any answer could come from. */
export function contentOf(file: string): string {
  const database = new Sqlite(file, { readonly: true });
  try {
    database.defaultSafeIntegers(true);
    const names = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name").pluck().all();
    const tables = names.map((name) => [name, database.prepare(`SELECT * FROM "${name}"`).raw().all()]);
    return JSON.stringify(tables, (_, value) => (typeof value === 'bigint' ? `${value}n` : value));
  } finally {
    database.close();
  }
}
