import { join, resolve } from 'node:path';

/** Where the database is kept: in the data folder, which is DATA_DIR, or `data`. */
export const databaseFile = (): string => join(resolve(process.env.DATA_DIR ?? 'data'), 'shop.db');
