import { existsSync } from 'node:fs';
import Database from 'better-sqlite3';
import { type ChainFault, faultsInSteps } from '@/lib/engine/record/chain';
import type { Seal, Sealable } from '@/lib/engine/record/seal-text';
import { acceptedMarks } from './accepted-records';
import { allSealableIn } from './all-sealable';
import { SQLITE } from './dialect';
import { AT_ONCE, type Pace } from './pace';
import { type Ask, sealsIn } from './sealed-rows';
import { sha256 } from './sha256';

/** The records of one shop and the chain over them. */
export type ShopChecked = {
  shop: string;
  things: readonly Sealable[];
  seals: readonly Seal[];
  faults: ChainFault[];
  /** What is wrong as well, and somebody accepted as it stands. */
  accepted: ChainFault[];
};

/** The same out of a database file, with what the shop is called. */
export type RecordsChecked = ShopChecked & { name: string };

/**
 * Check the records of every shop in a database file, whether a server has it open or not. Nothing is written.
 *
 * Throws   Error with a sentence when there is no such file, or when it is not a database of this program
 */
export async function recordsOfFile(file: string): Promise<RecordsChecked[]> {
  if (!existsSync(file)) throw new Error(`There is no database at ${file}. Give its path, or set DATA_DIR.`);
  const database = new Database(file, { readonly: true, fileMustExist: true, timeout: 5_000 });
  try {
    const ask = askFile(database);
    const shops = await ask('SELECT CAST("id" AS TEXT) AS id, CAST("name" AS TEXT) AS name FROM "Shop" ORDER BY "id"');
    const checked: RecordsChecked[] = [];
    // In one transaction, so that what a running server writes meanwhile is not taken for damage.
    database.exec('BEGIN');
    for (const { id, name } of shops) checked.push({ name: String(name), ...(await recordsOfShop(ask, String(id))) });
    return checked;
  } catch (error) {
    throw new Error(`${file} cannot be read as a database of this program: ${(error as Error).message}.`, {
      cause: error,
    });
  } finally {
    database.close();
  }
}

/** The records of one shop and the chain over them, through any connection. */
export async function recordsOfShop(ask: Ask, shop: string, pace: Pace = AT_ONCE): Promise<ShopChecked> {
  const things = await allSealableIn(ask, shop, pace);
  const seals = await sealsIn(ask, shop);
  const all = await pace.through(faultsInSteps(seals, things, sha256));
  if (all.length === 0) return { shop, things, seals, faults: [], accepted: [] };
  const marks = await acceptedMarks(ask, shop);
  const [faults, accepted] = [false, true].map((is) => all.filter(({ mark }) => marks.has(mark) === is));
  return { shop, things, seals, faults: faults ?? all, accepted: accepted ?? [] };
}

/** Asks a database file that was opened without the client. */
export const askFile = (database: Database.Database): Ask =>
  Object.assign(
    async (sql: string, ...values: string[]) =>
      database.prepare<unknown[], Record<string, unknown>>(sql).all(...values),
    { dialect: SQLITE },
  );
