import { join, resolve } from 'node:path';

/**
 * Where the database is kept: in the data folder, which is DATA_DIR, or `data`. The note in it keeps the build from
 * following the path into every folder there is.
 */
export const databaseFile = (): string =>
  join(resolve(/* turbopackIgnore: true */ process.env.DATA_DIR ?? 'data'), 'shop.db');
