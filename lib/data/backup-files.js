import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

/*
 * The backups of a shop as files: how they are named, where they lie, and which one is the newest. Plain JavaScript,
 * because the start names the newest sound backup before anything is installed.
 */

/**
 * @typedef {{ file: string, name: string, madeAt: number, bytes: number, isSound: boolean | null }} Backup
 *   `madeAt` is in milliseconds since the epoch. `isSound` is what the check found after writing; null without a manifest.
 */

/** What the folder beside the database is called that holds the backups. */
const FOLDER = 'backups';

const NAME = /^shop-(\d{4}-\d{2}-\d{2})-(\d{2})(\d{2})(\d{2})Z(?:-(\d+))?\.db$/;

/**
 * The folder for the backups that the running shop makes by itself: BACKUP_DIR, or `backups` in the data folder.
 *
 * @param {string} database the path of the database
 * @param {Record<string, string | undefined>} env
 */
export const backupFolder = (database, env) =>
  env.BACKUP_DIR ? resolve(env.BACKUP_DIR) : join(dirname(database), FOLDER);

/**
 * The name of a backup made at a moment: its date and time in UTC, to the second.
 *
 * @param {number} madeAt milliseconds since the epoch
 */
export function backupName(madeAt) {
  const [day, time = ''] = new Date(madeAt).toISOString().split('T');
  return `shop-${day}-${time.slice(0, 8).replaceAll(':', '')}Z.db`;
}

/**
 * When a backup was made, by its name; null when it is not the name of a backup.
 *
 * @param {string} name
 */
export function madeAtIn(name) {
  const [, day, hour, minute, second] = NAME.exec(name) ?? [];
  const madeAt = day === undefined ? Number.NaN : Date.parse(`${day}T${hour}:${minute}:${second}Z`);
  return Number.isNaN(madeAt) ? null : madeAt;
}

/** The manifest beside a backup: what it holds, and whether it was found sound. */
export const manifestFile = (/** @type {string} */ file) => `${file}.json`;

/** The list of backups in other folders, one path a line, beside the database. */
export const elsewhereFile = (/** @type {string} */ database) => join(dirname(database), FOLDER, 'elsewhere.txt');

/**
 * The backups in a folder, the newest first. A folder that is not there or cannot be read holds none.
 *
 * @param {string} folder
 * @returns {Backup[]}
 */
export function backupsIn(folder) {
  try {
    return readdirSync(folder)
      .flatMap((name) => backupAt(join(folder, name)) ?? [])
      .sort(newestFirst);
  } catch {
    return [];
  }
}

const newestFirst = (/** @type {Backup} */ one, /** @type {Backup} */ other) =>
  other.madeAt - one.madeAt || numberAmong(other.name) - numberAmong(one.name);

/** Which of the backups of one second it is, from 1. */
const numberAmong = (/** @type {string} */ name) => Number(NAME.exec(name)?.[5] ?? 1);

/**
 * @param {string} file
 * @returns {Backup | null}
 */
function backupAt(file) {
  const name = file.split(/[\\/]/).at(-1) ?? '';
  const madeAt = madeAtIn(name);
  const size = madeAt === null ? null : (statSync(file, { throwIfNoEntry: false })?.size ?? null);
  if (madeAt === null || size === null) return null;
  // Pages ask for the newest sound one alone, so a manifest is read only when it is asked for.
  return {
    ...{ file, name, madeAt, bytes: size },
    get isSound() {
      return soundnessOf(file);
    },
  };
}

/** What the manifest of a backup says; null when there is none, or when it cannot be read. */
function soundnessOf(/** @type {string} */ file) {
  try {
    const { isSound } = JSON.parse(readFileSync(manifestFile(file), 'utf8'));
    return typeof isSound === 'boolean' ? isSound : null;
  } catch {
    return null;
  }
}

/**
 * Every backup of a database that is known: in the folder of the running shop, and in the folders that were named.
 *
 * @param {string} database the path of the database
 * @param {Record<string, string | undefined>} env
 */
export function knownBackups(database, env) {
  const list = elsewhereFile(database);
  const paths = existsSync(list) ? readFileSync(list, 'utf8').split('\n').filter(Boolean) : [];
  const elsewhere = [...new Set(paths)].flatMap((path) => backupAt(path) ?? []);
  return [...backupsIn(backupFolder(database, env)), ...elsewhere].sort(newestFirst);
}

/**
 * The newest backup of a database that was found sound when it was written; null when there is none.
 *
 * @param {string} database
 * @param {Record<string, string | undefined>} env
 */
export const newestSound = (database, env) => knownBackups(database, env).find(({ isSound }) => isSound) ?? null;

/**
 * How to go back to the newest sound backup, by its name, in one or two sentences.
 *
 * @param {string} database
 * @param {Record<string, string | undefined>} env
 */
export function restoreAdvice(database, env) {
  const newest = newestSound(database, env);
  if (newest) return `The newest sound backup is of ${whenMade(newest)}. ${restoreWith(newest.file)}`;
  return `No backup is known. If you have a copy of the database elsewhere: ${restoreWith('PATH-OF-THE-COPY')}`;
}

const restoreWith = (/** @type {string} */ file) =>
  `Stop the shop, run: npm run restore -- "${file}" and then npm start.`;

/** The moment of a backup as its name says it: "2026-03-31 09:00 UTC". */
export const whenMade = (/** @type {Pick<Backup, 'madeAt'>} */ { madeAt }) =>
  `${new Date(madeAt).toISOString().slice(0, 16).replace('T', ' ')} UTC`;
