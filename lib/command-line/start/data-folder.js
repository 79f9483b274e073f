import { existsSync, mkdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { trouble } from './trouble.js';

/**
 * The one folder that holds everything the shop knows: DATA_DIR, else `data` beside the program. Made when missing,
 * and tried with a small file, so that a folder that cannot be written is found before a record is lost in it.
 */
export function readyDataFolder(root, env) {
  const folder = resolve(root, env.DATA_DIR || 'data');
  try {
    makeFolder(folder);
    if (!statSync(folder).isDirectory()) throw Object.assign(new Error(), { code: 'ENOTDIR' });
    tryWriting(join(folder, `.try-${process.pid}`));
  } catch (error) {
    throw folderTrouble(error, folder);
  }
  return folder;
}

/** Folder by folder, since Node's own recursive mkdir never returns below a place like /proc. */
function makeFolder(folder) {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  mkdirSync(folder);
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
