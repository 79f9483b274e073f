import Database from 'better-sqlite3';

/** Whether a database holds no shop yet. Throws when there is no database. */
export function isWithoutShop(file) {
  const database = new Database(file, { fileMustExist: true, timeout: 1000 });
  try {
    return database.prepare('SELECT 1 FROM "Shop"').get() === undefined;
  } finally {
    database.close();
  }
}
