import Sqlite from 'better-sqlite3';
import type { ChainFault } from '@/lib/engine/record/chain';
import { askFile, recordsOfShop } from './records-of-file';
import { knowSeals, type RowFault, rowFaults } from './row-seals';
import { sha256 } from './sha256';

/** Something in a database that is not as this program wrote it. Without a shop it speaks against all of them. */
export type Finding = { shop: string | null; table: string | null; row: string | null; message: string };

/** What a whole check found: in the file itself, in the rows, and in the chains of records, shop by shop; and how many commands there are. */
export type WholeCheck = {
  file: string[];
  rows: Finding[];
  records: [shop: string, faults: ChainFault[]][];
  commands: number;
};

/** So many lines of SQLite's own check are kept: one is enough to know. */
const MOST_LINES = 20;

/**
 * Check a whole database, whether a server has it open or not: SQLite's own check, every reference, every level of the
 * ledgers, the seal of every row, and the chain of every shop's records. Nothing is written. Takes about six seconds a
 * gigabyte, and everything that it is told is for people.
 */
export async function wholeCheck(file: string): Promise<WholeCheck> {
  const found: WholeCheck = { file: [], rows: [], records: [], commands: 0 };
  let database: Sqlite.Database | null = null;
  try {
    database = new Sqlite(file, { readonly: true, fileMustExist: true, timeout: 5_000 });
    knowSeals(database);
    // In one transaction, so that what a running server writes meanwhile is not taken for damage.
    database.exec('BEGIN');
    found.file = fileFaults(database);
    if (found.file.length > 0) return found;
    found.commands = Number(database.prepare('SELECT count(*) FROM "Command"').pluck().get());
    found.rows = [...references(database), ...levels(database), ...sheets(database)];
    found.rows.push(...rowFaults(database).map(inWords));
    const ask = askFile(database);
    const shops = await ask('SELECT CAST("id" AS TEXT) AS id FROM "Shop" ORDER BY "id"');
    for (const { id } of shops) {
      const { faults } = await recordsOfShop(ask, String(id));
      found.records.push([String(id), faults]);
    }
  } catch (error) {
    found.file.push(`SQLite cannot read all of it: ${(error as Error).message}.`);
  } finally {
    database?.close();
  }
  return found;
}

function fileFaults(database: Sqlite.Database): string[] {
  const lines = database.prepare(`PRAGMA integrity_check(${MOST_LINES})`).pluck().all().map(String);
  return lines.length === 1 && lines[0] === 'ok' ? [] : lines;
}

type Broken = { table: string; rowid: number | null; parent: string };

function references(database: Sqlite.Database): Finding[] {
  const broken = database.pragma('foreign_key_check') as Broken[];
  return broken.map(({ table, rowid, parent }) => ({
    ...{ shop: null, table, row: rowid === null ? null : `line ${rowid}` },
    message: `A row of ${table} (line ${rowid}) refers to a row of ${parent} that is not there.`,
  }));
}

/** Containers from which more was taken than ever came into them. */
function levels(database: Sqlite.Database): Finding[] {
  return database.prepare<unknown[], Below>(BELOW).all().map(belowInWords);
}

type Below = { shop: string; lot: string; place: number };

export const BELOW = `SELECT "shopId" AS shop, "lotId" AS lot, "place" AS place FROM "Movement"
  GROUP BY "shopId", "lotId", "place" HAVING
    sum(CASE "toSide" WHEN 'container' THEN "amount" ELSE 0 END) <
    sum(CASE "fromSide" WHEN 'container' THEN "amount" ELSE 0 END)`;

export const belowInWords = ({ shop, lot, place }: Below): Finding => ({
  ...{ shop, table: 'Movement', row: `${lot} ${place}` },
  message: `The ledger of bottle ${place + 1} of lot "${lot}" takes more out of it than ever came into it.`,
});

/** Safety data sheets whose bytes are not those that were kept. */
function sheets(database: Sqlite.Database): Finding[] {
  const kept = database.prepare<
    unknown[],
    { shop: string; product: string; number: number; hash: string; bytes: Buffer }
  >('SELECT "shopId" AS shop, "productId" AS product, "number", "hash", "bytes" FROM "SafetySheet"');
  const found: Finding[] = [];
  for (const { shop, product, number, hash, bytes } of kept.iterate()) {
    if (Buffer.isBuffer(bytes) && sha256(bytes) === hash) continue;
    found.push(sheetInWords({ shop, product, number }));
  }
  return found;
}

export const sheetInWords = ({
  shop,
  product,
  number,
}: {
  shop: string;
  product: string;
  number: number;
}): Finding => ({
  ...{ shop, table: 'SafetySheet', row: `${product} ${number}` },
  message: `Safety data sheet ${number} of product "${product}" is not as it was kept.`,
});

const WORDS: Record<RowFault['wrong'], string> = {
  changed: 'was changed outside of this program, or on the disk',
  missing: 'was there and is gone',
  unsealed: 'was not written by this program',
};

/** What has a name of its own, and needs none of a row. */
const KNOWN_AS: Readonly<Record<string, string>> = {
  Shop: 'The settings of the shop',
  ClockMark: 'What was noted of the clock',
};

export function inWords({ wrong, shop, table, row }: RowFault): Finding {
  const key = row.replaceAll('\n', ' ');
  const which = KNOWN_AS[table] ?? `Row "${key}" of ${table}`;
  // A row that names no shop, or a table of tables, belongs to all of them.
  return { shop: shop === '' ? null : shop, table, row: key, message: `${which} ${WORDS[wrong]}.` };
}
