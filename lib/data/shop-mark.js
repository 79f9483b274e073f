import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

/*
 * The mark: a small file beside the database that says that a shop was kept in this folder, which database that was, and
 * how many commands it has acknowledged. Plain JavaScript, because the start reads it before anything is installed.
 */

/**
 * @typedef {{ database: string | null, commands: number }} Mark
 *   `database` is the number in the header of the file, in hexadecimal; each start of the shop gives it a new one.
 */

const NAME = 'shop.mark';

/** Where the mark of a database file is kept. */
export const markFile = (/** @type {string} */ file) => join(dirname(file), NAME);

/**
 * The mark beside a database file. Null when there is none: then no shop was ever kept there. A mark that cannot be read
 * says only that there was a shop.
 *
 * @param {string} file
 * @returns {Mark | null}
 */
export function readMark(file) {
  if (!existsSync(markFile(file))) return null;
  const text = readFileSync(markFile(file), 'utf8');
  const [, database = null, commands = '0'] = /^database ([0-9a-f]{8})\ncommands (\d{12})\n/m.exec(text) ?? [];
  return { database, commands: Number(commands) };
}

/** The text of a mark. Always equally long, so that it can be written over. */
const markText = (/** @type {Mark} */ { database, commands }) =>
  [
    'Bench & Bottle keeps a shop in this folder. Leave this file beside shop.db.',
    `database ${database ?? '00000000'}`,
    `commands ${String(commands).padStart(12, '0')}`,
    '',
  ].join('\n');

/**
 * Write a mark in the place of the one that is there: the old one or the new one, whatever happens meanwhile.
 *
 * @param {string} file
 * @param {Mark} mark
 */
export function writeMark(file, mark) {
  const [name, fresh] = [markFile(file), `${markFile(file)}.new`];
  rmSync(fresh, { force: true });
  const handle = openSync(fresh, 'wx', 0o600);
  try {
    writeSync(handle, markText(mark));
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  renameSync(fresh, name);
}

/**
 * Note how many commands were acknowledged. Takes microseconds: nothing waits for the disk, so after a power cut the
 * mark may say fewer than the database holds, and never more than were acknowledged.
 *
 * @param {number} handle an open mark
 * @param {Mark} mark
 */
export function noteCommands(handle, mark) {
  writeSync(handle, markText(mark), 0);
}

/** The magic text at the beginning of a SQLite database, and where the number stands that a start gives it. */
const MAGIC = Buffer.from('SQLite format 3\0', 'latin1');
const NUMBER_AT = 60;

/**
 * The number in the header of a database; null when this is no header of a SQLite database.
 *
 * @param {Uint8Array} header its first 100 bytes
 */
export function numberIn(header) {
  const bytes = Buffer.from(header);
  if (bytes.length < 100 || !bytes.subarray(0, MAGIC.length).equals(MAGIC)) return null;
  return bytes.subarray(NUMBER_AT, NUMBER_AT + 4).toString('hex');
}

/**
 * The number in the header of a database file; null when it is no SQLite database.
 *
 * @param {string} file
 */
export function numberOfFile(file) {
  const handle = openSync(file, 'r');
  try {
    const header = Buffer.alloc(100);
    return numberIn(header.subarray(0, readSync(handle, header, 0, 100, 0)));
  } finally {
    closeSync(handle);
  }
}

/** The size of a file in bytes; null when there is none. */
export const sizeOf = (/** @type {string} */ file) => statSync(file, { throwIfNoEntry: false })?.size ?? null;
