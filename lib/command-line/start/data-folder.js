import { chmodSync, existsSync, mkdirSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { trouble } from './trouble.js';

/**
 * The one folder that holds everything the shop knows: DATA_DIR, else `data` beside the program. Made when missing,
 * and tried with a small file, so that a folder that cannot be written is found before a record is lost in it. It is
 * for the account alone that the shop runs in.
 */
export function readyDataFolder(root, env) {
  const folder = resolve(root, env.DATA_DIR || 'data');
  try {
    makeFolder(folder);
    if (!statSync(folder).isDirectory()) throw Object.assign(new Error(), { code: 'ENOTDIR' });
    tryWriting(join(folder, `.try-${process.pid}`));
    keepPrivate(folder);
  } catch (error) {
    throw folderTrouble(error, folder);
  }
  return folder;
}

/** Folder by folder, since Node's own recursive mkdir never returns below a place like /proc. */
function makeFolder(folder) {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  mkdirSync(folder, { mode: 0o700 });
}

/** What the shop keeps in its folder, and which of it are files of its own. */
const [OWN, OWN_FILE] = [/^(shop\b|server\.lock$|backups$|postgresql$)/, /^(shop\.|server\.lock$)/];

/**
 * Take every right to the shop's files from other accounts. A folder that holds other things as well is not ours to
 * close, so there only our own files are. Windows has no such rights; a disk or an owner that refuses them changes nothing.
 */
function keepPrivate(folder) {
  if (process.platform === 'win32') return;
  const names = readdirSync(folder);
  for (const name of names.filter((one) => OWN_FILE.test(one))) allowOnlyOwner(join(folder, name), 0o600);
  if (names.every((name) => OWN.test(name))) allowOnlyOwner(folder, 0o700);
}

/** Do a piece of work whose new files are for this account alone. */
export async function privately(work) {
  const before = process.platform === 'win32' ? null : process.umask(0o077);
  try {
    return await work();
  } finally {
    if (before !== null) process.umask(before);
  }
}

function allowOnlyOwner(path, mode) {
  try {
    if (statSync(path).isDirectory() === (mode === 0o700)) chmodSync(path, mode);
  } catch (error) {
    if (!['EPERM', 'EACCES', 'ENOTSUP', 'EROFS', 'ENOENT'].includes(error.code)) throw error;
  }
}

function tryWriting(probe) {
  try {
    writeFileSync(probe, Buffer.alloc(65_536, 1));
  } finally {
    rmSync(probe, { force: true });
  }
}

function folderTrouble(error, folder) {
  const elsewhere = 'or keep the data elsewhere, for example: DATA_DIR=/path/to/folder npm start';
  switch (error.code) {
    case 'EEXIST':
    case 'ENOTDIR':
      return trouble(`The data folder ${folder} is not a folder but a file.`, `Move that file away, ${elsewhere}`);
    case 'ENOSPC':
    case 'EDQUOT':
      return trouble(`The disk that holds ${folder} is full.`, `Make room on it, ${elsewhere}`);
    case 'EROFS':
      return trouble(`The data folder ${folder} is on a disk that can only be read.`, `Make it writable, ${elsewhere}`);
    case 'EACCES':
    case 'EPERM':
      return trouble(`This account may not write in the data folder ${folder}.`, `Give it that right, ${elsewhere}`);
    default:
      return trouble(
        `The data folder ${folder} cannot be used (${error.code ?? error.message}).`,
        `Mend it, ${elsewhere}`,
      );
  }
}
