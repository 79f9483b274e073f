import { databaseFile } from '@/lib/data/database-file';
import { migrate } from './bring-up-to-date.js';

/*
 * Brings the database in the data folder up to this program, or makes a new one there. Part of `npm start`.
 */
try {
  const applied = await migrate(databaseFile());
  for (const name of applied) process.stdout.write(`applied ${name}\n`);
} catch (error) {
  process.stderr.write(`${error instanceof Error ? error.message : error}\n`);
  process.exitCode = 1;
}
