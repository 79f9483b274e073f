import Sqlite from 'better-sqlite3';
import type { Rows } from './database';
import { knowSeals, type RowFault, rowFaults, type Sealed, sealedTables } from './row-seals';
import { sha256 } from './sha256';

/** A row that does not fit its seal, as it stands: its columns with what they hold, and a hash of them. Null: it is gone. */
export type RowAsItStands = RowFault & { held: Record<string, string> | null; hash: string | null };

/** How a database finds rows that do not fit their seals, and gives them new ones. */
export type Accepting = {
  /** The rows of a shop, and those of no shop, that do not fit their seals and may be accepted as they stand. */
  seen(shopId: string): Promise<RowAsItStands[]>;
  /** The same in the middle of a command. */
  inWrite(rows: Rows, shopId: string): Promise<RowAsItStands[]>;
  /** Give rows the seals of what they hold. One that is gone loses its seal. */
  seal(rows: Rows, found: readonly RowFault[]): Promise<void>;
};

/** The same of a SQLite file. Takes the connection of the commands, which stands in their transaction. */
export const acceptingIn = (file: string, driver: Sqlite.Database): Accepting => ({
  seen: async (shopId) => rowsSeenToAccept(file, shopId),
  inWrite: async (_, shopId) => rowsToAccept(driver, shopId),
  seal: async (_, found) => sealAsTheyStand(driver, found),
});

/** The marks of the clock are made anew by whoever confirms it. The tables themselves are nobody's to accept. */
export const NOT_ACCEPTED = ['ClockMark', 'sqlite_schema'];

/** Takes a connection that knows seals, in a transaction. */
function rowsToAccept(database: Sqlite.Database, shopId: string): RowAsItStands[] {
  const tables = new Map(sealedTables(database).map((sealed) => [sealed.table, sealed]));
  return rowFaults(database)
    .filter(({ shop, table }) => (shop === shopId || shop === '') && !NOT_ACCEPTED.includes(table))
    .map((fault) => asItStands(database, tables.get(fault.table), fault));
}

function rowsSeenToAccept(file: string, shopId: string): RowAsItStands[] {
  const database = new Sqlite(file, { readonly: true, fileMustExist: true, timeout: 5_000 });
  try {
    knowSeals(database);
    return database.transaction(() => rowsToAccept(database, shopId))();
  } finally {
    database.close();
  }
}

function asItStands(database: Sqlite.Database, sealed: Sealed | undefined, fault: RowFault): RowAsItStands {
  const columns = sealed?.columns.map((name) => `quote(t."${name}") AS "${name}"`).join(', ');
  const row =
    sealed &&
    database
      .prepare<unknown[], Record<string, string>>(
        `SELECT ${columns} FROM main."${sealed.table}" AS t WHERE ${sealed.shop('t')} = ? AND ${sealed.key('t')} = ?`,
      )
      .get(fault.shop, fault.row);
  return { ...fault, held: row ?? null, hash: row ? sha256(Buffer.from(JSON.stringify(row))) : null };
}

function sealAsTheyStand(database: Sqlite.Database, rows: readonly RowFault[]): void {
  const tables = new Map(sealedTables(database).map((sealed) => [sealed.table, sealed]));
  const forget = database.prepare('DELETE FROM "RowSeal" WHERE "shopId" = ? AND "tableName" = ? AND "rowKey" = ?');
  for (const { shop, table, row } of rows) {
    forget.run(shop, table, row);
    const sealed = tables.get(table);
    if (!sealed) continue;
    const own = `SELECT ${sealed.shop('t')}, '${table}', ${sealed.key('t')}, ${sealed.seal('t')} FROM main."${table}" AS t
      WHERE ${sealed.shop('t')} = ? AND ${sealed.key('t')} = ?`;
    database.prepare(`INSERT INTO "RowSeal" ("shopId", "tableName", "rowKey", "hash") ${own}`).run(shop, row);
  }
}

/** What a person was shown: the same for the same rows that hold the same. */
export const shownRows = (rows: readonly RowAsItStands[]): string =>
  sha256(Buffer.from(JSON.stringify(rows.map(({ shop, table, row, wrong, hash }) => [shop, table, row, wrong, hash]))));
