import Database from 'better-sqlite3';
import pg from 'pg';

/** Whether a database holds no shop yet. Throws when there is no database. */
export function isWithoutShop(file) {
  const database = new Database(file, { fileMustExist: true, timeout: 1000 });
  try {
    return database.prepare('SELECT 1 FROM "Shop"').get() === undefined;
  } finally {
    database.close();
  }
}

/** The same of a PostgreSQL database. */
export async function isWithoutShopOnPostgresql(url) {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    const { rowCount } = await client.query('SELECT 1 FROM "Shop" LIMIT 1');
    return rowCount === 0;
  } finally {
    await client.end();
  }
}
