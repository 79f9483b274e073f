import Sqlite from 'better-sqlite3';
import { askFile, recordsOfShop } from './records-of-file';
import { digestsOfFile, type TableDigest } from './row-digests';
import { type WholeCheck, wholeCheck } from './whole-check';

/** One shop in a database file: since when it is there, when it last changed, and how much it holds. */
export type ShopInFile = {
  id: string;
  name: string;
  isDemo: boolean;
  createdOn: string;
  /** Milliseconds since the epoch; null when no command is kept. */
  changedAt: number | null;
  commands: number;
  records: number;
  movements: number;
  /** The hash of the newest line of the chain of records; null without records. */
  recordsHash: string | null;
};

/** What a database file holds. */
export type Contents = { migration: string | null; shops: ShopInFile[]; tables: Record<string, TableDigest> };

/** What a database file holds, and everything that is wrong with it, in words. */
export type Looked = { contents: Contents | null; faults: string[]; isSealed: boolean };

/**
 * Look into a database file that nobody writes to: what it holds, and whether all of it is as this program wrote it. A
 * file from before rows had seals is checked by SQLite alone.
 */
export async function lookInto(file: string): Promise<Looked> {
  let database: Sqlite.Database | null = null;
  try {
    database = new Sqlite(file, { readonly: true, fileMustExist: true, timeout: 5_000 });
    const isSealed = database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'RowSeal'").get() !== undefined;
    const faults = isSealed ? faultsOf(await wholeCheck(file)) : faultsBySqlite(database);
    return { contents: await contentsOf(database), faults, isSealed };
  } catch (error) {
    return { contents: null, faults: [`${file} cannot be read: ${(error as Error).message}.`], isSealed: false };
  } finally {
    database?.close();
  }
}

function faultsOf({ file, rows, records }: WholeCheck): string[] {
  const chains = records.flatMap(([shop, faults]) => (faults.length > 0 ? [chainSentence(shop, faults.length)] : []));
  return [...file, ...rows.map(({ message }) => message), ...chains];
}

const chainSentence = (shop: string, faults: number): string =>
  `The records of shop ${shop} are not as they were sealed (${faults} ${faults === 1 ? 'place' : 'places'}).`;

function faultsBySqlite(database: Sqlite.Database): string[] {
  const lines = database.prepare('PRAGMA integrity_check(20)').pluck().all().map(String);
  const broken = (database.pragma('foreign_key_check') as unknown[]).length;
  return [...lines.filter((line) => line !== 'ok'), ...(broken > 0 ? [`${broken} rows refer to nothing.`] : [])];
}

async function contentsOf(database: Sqlite.Database): Promise<Contents> {
  const migration = database.prepare('SELECT max(migration_name) FROM _prisma_migrations').pluck().get();
  const rows = database.prepare<[], Record<string, unknown>>(SHOPS).all();
  const shops: ShopInFile[] = [];
  for (const row of rows) shops.push({ ...shopIn(row), recordsHash: await headOf(database, String(row.id)) });
  return { migration: migration === null ? null : String(migration), shops, tables: digestsOfFile(database) };
}

const SHOPS = `SELECT "id", "name", "isDemo", "createdOn",
  (SELECT max("recordedAt") FROM "Command" c WHERE c."shopId" = s."id") AS changedAt,
  (SELECT count(*) FROM "Command" c WHERE c."shopId" = s."id") AS commands,
  (SELECT count(*) FROM "Application" a WHERE a."shopId" = s."id") AS records,
  (SELECT count(*) FROM "Movement" m WHERE m."shopId" = s."id") AS movements
  FROM "Shop" s ORDER BY "createdOn", "id"`;

const shopIn = (row: Record<string, unknown>) => ({
  ...{ id: String(row.id), name: String(row.name), isDemo: Number(row.isDemo) === 1, createdOn: String(row.createdOn) },
  changedAt: row.changedAt === null ? null : Number(row.changedAt),
  ...{ commands: Number(row.commands), records: Number(row.records), movements: Number(row.movements) },
});

async function headOf(database: Sqlite.Database, shop: string): Promise<string | null> {
  const { seals } = await recordsOfShop(askFile(database), shop).catch(() => ({ seals: [] }));
  return seals.at(-1)?.hash ?? null;
}
