import Database from 'better-sqlite3';
import { askFile } from '@/lib/data/records-of-file';
import { sealRows } from '@/lib/data/seal-records';
import { sealableIn } from '@/lib/data/sealed-rows';

/**
 * Seal the records of shops that were written before records were sealed, in their order, each line saying that it was
 * made afterwards. A shop that has any seal is left alone: what is unsealed in it was not written by this program, and
 * stays to be found.
 *
 * Takes    the path of a database that is up to date and that nobody else has open, and the moment
 * Gives    how many lines were made
 */
export async function sealEarlier(file: string, now: number): Promise<number> {
  const database = new Database(file, { fileMustExist: true, timeout: 1_000 });
  try {
    database.pragma('synchronous = FULL');
    const ask = askFile(database);
    const shops = await ask('SELECT "id" FROM "Shop" WHERE "id" NOT IN (SELECT "shopId" FROM "RecordSeal")');
    let made = 0;
    for (const { id } of shops) {
      const things = await sealableIn(ask, { shopId: String(id), applications: null });
      const rows = sealRows(String(id), now, null, things);
      insertAll(database, rows);
      made += rows.length;
    }
    return made;
  } finally {
    database.close();
  }
}

/** All of them or none. */
function insertAll(database: Database.Database, rows: ReturnType<typeof sealRows>): void {
  const insert = database.prepare(
    'INSERT INTO "RecordSeal" ("shopId", "number", "applicationId", "version", "previousHash", "hash", "sealedAt") ' +
      'VALUES (@shopId, @number, @applicationId, @version, @previousHash, @hash, @sealedAt)',
  );
  database.transaction(() => {
    for (const row of rows) insert.run(row);
  })();
}
