import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { sealAll } from '@/lib/data/row-seals';
import { migrate } from './bring-up-to-date.js';
import { rowFaultsBefore } from './row-faults-before';
import { sealEarlier } from './seal-earlier';

/**
 * Bring the file of a shop up to this program, or make a new one, and seal what was recorded before records and rows were
 * sealed.
 *
 * Gives    the migrations that were applied, and how many records were sealed
 */
export async function bringFileUp(file: string, now: number): Promise<{ applied: string[]; sealed: number }> {
  const before = existsSync(file) ? rowFaultsBefore(file) : [];
  const applied: string[] = await migrate(file);
  if (applied.length > 0) sealRows(file, before);
  return { applied, sealed: await sealEarlier(file, now) };
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
