import { accessSync, closeSync, constants, openSync, readSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { restoreAdvice } from '../../data/backup-files.js';
import { postgresqlAddressIn } from '../../data/postgresql-address.js';
import { markFile, numberIn, readMark, sizeOf } from '../../data/shop-mark.js';
import { trouble } from './trouble.js';

/**
 * Look at the database of a data folder before anything opens it. A folder that has never held a shop has none, and gets
 * one; everywhere else the file must be there, be a database, be writable with what lies beside it, and have no log of
 * another one beside it.
 *
 * Where DATABASE_URL names a PostgreSQL database, that one is asked instead, once the packages are there.
 *
 * Refuses  all else, with what to do; nothing is changed
 */
export function readyDatabase(folder, env = process.env) {
  if (addressIn(env) !== null) return;
  const file = join(folder, 'shop.db');
  const mark = readMark(file);
  if (sizeOf(file) === null) return mark || hasLog(file) ? refuseMissing(file, folder) : undefined;
  const number = numberIn(readHeader(file));
  if (number === null) throw notADatabase(file);
  if (hasLog(file) && mark?.database && mark.database !== number) throw logOfAnother(file);
  for (const beside of [`${file}-wal`, `${file}-shm`, markFile(file)]) tryToWrite(beside);
}

/** A file beside the database that this account may not write stops the first record, or any look at the shop. */
function tryToWrite(beside) {
  if (sizeOf(beside) === null) return;
  try {
    closeSync(openSync(beside, 'r+'));
  } catch (error) {
    throw fileTrouble(error, beside);
  }
}

function addressIn(env) {
  try {
    return postgresqlAddressIn(env);
  } catch (error) {
    throw trouble(error.message, 'Then run npm start again.');
  }
}

const hasLog = (file) => (sizeOf(`${file}-wal`) ?? 0) > 0;

function refuseMissing(file, folder) {
  throw trouble(
    `There is no database at ${file}, and a shop has been kept in that folder. No new one is made in its place.`,
    `Put shop.db back there, from where it was moved. Or go back to a backup: ${restore(file)} If the folder is the wrong one, name the right one: DATA_DIR=/path/to/folder npm start. To begin anew in ${folder}, delete what begins with "shop." in it.`,
  );
}

/** The first 100 bytes, read through a handle that may write, so that a file which may only be read is known at once. */
function readHeader(file) {
  try {
    if (!statSync(file).isFile()) throw Object.assign(new Error(), { code: 'EISDIR' });
    accessSync(file, constants.R_OK);
    const handle = openSync(file, 'r+');
    try {
      const header = Buffer.alloc(100);
      return header.subarray(0, readSync(handle, header, 0, 100, 0));
    } finally {
      closeSync(handle);
    }
  } catch (error) {
    throw fileTrouble(error, file);
  }
}

function fileTrouble(error, file) {
  switch (error.code) {
    case 'EISDIR':
      return trouble(`${file} is not a file.`, 'Move it away and put the database of your shop there.');
    case 'EROFS':
      return trouble(
        `${file}, which the database needs, is on a disk that can only be read.`,
        'Make that disk writable.',
      );
    case 'EACCES':
    case 'EPERM':
      return trouble(
        `This account may not write to ${file}, which the database needs.`,
        'Give it that right, or start the shop from the account that the file belongs to.',
      );
    default:
      return trouble(
        `${file}, which the database needs, cannot be read (${error.code ?? error.message}).`,
        restore(file),
      );
  }
}

/** What to do about a file that is damaged: go back to the newest sound backup, by its name. */
const restore = (file) => restoreAdvice(file, process.env);

const notADatabase = (file) =>
  trouble(
    sizeOf(file) === 0
      ? `The database ${file} is empty, and it is kept as it is.`
      : `The file ${file} is not a database of this program, or its beginning was overwritten. It is kept as it is.`,
    `${restore(file)} To begin anew, delete what begins with "shop." there.`,
  );

const logOfAnother = (file) =>
  trouble(
    `Beside ${file} lies the log of another database: ${file}-wal belongs to the one that was there before. Read together they would be neither.`,
    `Move ${file}-wal and ${file}-shm out of the folder and run npm start again. What ${markFile(file)} says is brought up to date then.`,
  );
