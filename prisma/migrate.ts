import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { clock } from '@/lib/clock';
import { databaseFile } from '@/lib/data/database-file';
import { fileTrouble } from '@/lib/data/file-trouble';
import { sealAll } from '@/lib/data/row-seals';
import { migrate } from './bring-up-to-date.js';
import { refuseForgotten } from './refuse-forgotten';
import { rowFaultsBefore } from './row-faults-before';
import { sealEarlier } from './seal-earlier';

/*
 * Brings the database in the data folder up to this program, or makes a new one there, and seals what was recorded
 * before records and rows were sealed. Part of `npm start`.
 */
try {
  const file = databaseFile();
  if (existsSync(file)) refuseForgotten(file);
  const before = rowFaultsBefore(file);
  const applied = await migrate(file);
  for (const name of applied) process.stdout.write(`applied ${name}\n`);
  if (applied.length > 0) sealRows(file, before);
  const sealed = await sealEarlier(file, clock.now());
  if (sealed > 0) process.stdout.write(`sealed ${sealed} records that were written before records were sealed\n`);
} catch (error) {
  const trouble = fileTrouble(error, databaseFile()) ?? error;
  process.stderr.write(`${trouble instanceof Error ? trouble.message : trouble}\n`);
  process.exitCode = 1;
}

/** A migration changes tables, and what their rows hold: they are sealed anew, but for those that were damaged before. */
function sealRows(file: string, before: ReturnType<typeof rowFaultsBefore>): void {
  const database = new Database(file, { fileMustExist: true, timeout: 1_000 });
  try {
    database.pragma('synchronous = FULL');
    sealAll(database, before);
  } finally {
    database.close();
  }
}
