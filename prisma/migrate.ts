import { clock } from '@/lib/clock';
import { databaseFile } from '@/lib/data/database-file';
import { migrate } from './bring-up-to-date.js';
import { sealEarlier } from './seal-earlier';

/*
 * Brings the database in the data folder up to this program, or makes a new one there, and seals what was recorded
 * before records were sealed. Part of `npm start`.
 */
try {
  const applied = await migrate(databaseFile());
  for (const name of applied) process.stdout.write(`applied ${name}\n`);
  const sealed = await sealEarlier(databaseFile(), clock.now());
  if (sealed > 0) process.stdout.write(`sealed ${sealed} records that were written before records were sealed\n`);
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : error}\n`);
  process.exitCode = 1;
}
