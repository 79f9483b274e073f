import { backupFolder } from './backup-files.js';
import { type Made, makeBackup, notMade, scheduledBackup } from './make-backup';

/*
 * One backup as a process of its own: the database's path, the moment, and a folder where the running shop's own is not
 * meant go in; the manifest comes out as JSON.
 */
const [database = '', madeAt = '', folder] = process.argv.slice(2);
try {
  const made: Made =
    folder === undefined
      ? await scheduledBackup(database, Number(madeAt))
      : await makeBackup(database, folder, Number(madeAt));
  process.stdout.write(JSON.stringify(made));
} catch (error) {
  process.stderr.write(`${notMade(error, folder ?? backupFolder(database, process.env))}\n`);
  process.exitCode = 1;
}
