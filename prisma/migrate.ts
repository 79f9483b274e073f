import { existsSync } from 'node:fs';
import { clock } from '@/lib/clock';
import { postgresqlAddress } from '@/lib/data/database-address';
import { databaseFile } from '@/lib/data/database-file';
import { fileTrouble } from '@/lib/data/file-trouble';
import { bringFileUp } from './bring-file-up';
import { readyPostgresql } from './ready-postgresql';
import { refuseForgotten } from './refuse-forgotten';

/*
 * Brings the file in the data folder up to this program, or makes a new one there, and seals what was recorded before records
 * and rows were sealed; or fills the PostgreSQL database that DATABASE_URL names, or brings that up to date. Part of `npm
 * start`.
 */
try {
  const address = postgresqlAddress();
  if (address === null) await bringUp(databaseFile());
  else for (const name of await readyPostgresql(address)) process.stdout.write(`applied ${name}\n`);
} catch (error) {
  const trouble = fileTrouble(error) ?? error;
  process.stderr.write(`${trouble instanceof Error ? trouble.message : trouble}\n`);
  process.exitCode = 1;
}

async function bringUp(file: string): Promise<void> {
  if (existsSync(file)) refuseForgotten(file);
  const { applied, sealed } = await bringFileUp(file, clock.now());
  for (const name of applied) process.stdout.write(`applied ${name}\n`);
  if (sealed > 0) process.stdout.write(`sealed ${sealed} records that were written before records were sealed\n`);
}
