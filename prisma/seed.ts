import { restoreAdvice } from '@/lib/data/backup-files.js';
import { postgresqlAddress } from '@/lib/data/database-address';
import { databaseFile } from '@/lib/data/database-file';
import { fileTrouble } from '@/lib/data/file-trouble';
import { readMark } from '@/lib/data/shop-mark.js';
import { isWithoutShop, isWithoutShopOnPostgresql } from './is-without-shop.js';

/*
 * Puts the demo shop into a database that has no shop yet, in a folder that never held one. Part of `npm start`, and so it
 * looks first: the program itself is only read in when there is something to load.
 */
try {
  const file = databaseFile();
  const address = postgresqlAddress();
  if (await (address === null ? isWithoutShop(file) : isWithoutShopOnPostgresql(address))) {
    if (address === null && readMark(file)) {
      throw new Error(
        `There is no shop in ${file}, and there has been one in that folder. ${restoreAdvice(file, process.env)}`,
      );
    }
    const { clock } = await import('@/lib/clock');
    const { loadDemo } = await import('./load-demo');
    const { database } = await import('@/lib/data/database');
    await loadDemo(clock);
    await (await database()).close();
    process.stdout.write('loaded the demo shop\n');
  }
} catch (error) {
  const trouble = fileTrouble(error) ?? error;
  process.stderr.write(`${trouble instanceof Error ? trouble.message : trouble}\n`);
  process.exitCode = 1;
}
