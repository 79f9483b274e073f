import type { Client } from 'pg';
import { type RecordsChecked, recordsOfShop } from '../records-of-file';
import type { Ask } from '../sealed-rows';
import { BELOW, belowInWords, type Finding, inWords, sheetInWords, type WholeCheck } from '../whole-check';
import { askClient, atOneMoment } from './ask-client';
import { COUNTING, SEALING } from './guard-rows';
import { rowFaults, sealedTables } from './row-seals';

/**
 * Check a whole PostgreSQL database: that every row can be read, every reference, every level of the ledgers, the seal of
 * every row, the chain of every shop's records, and the guards. Nothing is written. The files are PostgreSQL's own: it says by
 * itself when a page of them cannot be read, and that counts like a damaged file.
 */
export async function wholeCheckOfPostgresql(url: string): Promise<WholeCheck> {
  const found: WholeCheck = { file: [], rows: [], records: [], commands: 0 };
  try {
    return await atOneMoment(url, async (client) => {
      const ask = askClient(client);
      const [count] = await ask('SELECT count(*) AS commands FROM "Command"');
      found.commands = Number(count?.commands);
      found.rows = [
        ...(await references(client)),
        ...(await levels(ask)),
        ...(await sheets(ask)),
        ...(await guards(ask)),
      ];
      found.rows.push(...(await rowFaults(ask)).map(inWords));
      for (const { shop, faults } of await recordsThrough(ask)) found.records.push([shop, faults]);
      return found;
    });
  } catch (error) {
    const { code } = error as { code?: string };
    // XX001, XX002: PostgreSQL found a page or an index of its files damaged.
    if (!code?.startsWith('XX')) throw error;
    return { ...found, file: [`PostgreSQL cannot read all of it: ${(error as Error).message}`] };
  }
}

/** The records of every shop with the chain over them, as `recordsOfFile` gives them of a file. */
export const recordsOfPostgresql = (url: string): Promise<RecordsChecked[]> =>
  atOneMoment(url, (client) => recordsThrough(askClient(client)));

async function recordsThrough(ask: Ask): Promise<RecordsChecked[]> {
  const checked: RecordsChecked[] = [];
  for (const { id, name } of await ask('SELECT "id", "name" FROM "Shop" ORDER BY "id"'))
    checked.push({ name: String(name), ...(await recordsOfShop(ask, String(id))) });
  return checked;
}

type Reference = { name: string; table: string; parent: string; own: string[]; theirs: string[] };

/** Rows that refer to nothing. PostgreSQL refuses them, unless somebody has switched that off. */
async function references(client: Client): Promise<Finding[]> {
  const { rows } = await client.query<Reference>(`
    SELECT conname AS name, c.relname AS table, p.relname AS parent,
      (SELECT array_agg(CAST(attname AS text) ORDER BY k.at) FROM unnest(conkey) WITH ORDINALITY k(num, at)
        JOIN pg_attribute ON attrelid = conrelid AND attnum = k.num) AS own,
      (SELECT array_agg(CAST(attname AS text) ORDER BY k.at) FROM unnest(confkey) WITH ORDINALITY k(num, at)
        JOIN pg_attribute ON attrelid = confrelid AND attnum = k.num) AS theirs
    FROM pg_constraint JOIN pg_class c ON c.oid = conrelid JOIN pg_class p ON p.oid = confrelid
    WHERE contype = 'f' AND connamespace = CAST('public' AS regnamespace) ORDER BY 1`);
  const found: Finding[] = [];
  for (const { table, parent, own, theirs } of rows) {
    const on = own.map((name, at) => `p."${theirs[at]}" = t."${name}"`).join(' AND ');
    const isWhole = own.map((name) => `t."${name}" IS NOT NULL`).join(' AND ');
    const broken = await client.query<{ count: string }>(
      `SELECT count(*) FROM "${table}" t WHERE ${isWhole} AND NOT EXISTS (SELECT 1 FROM "${parent}" p WHERE ${on})`,
    );
    const count = Number(broken.rows[0]?.count);
    if (count === 0) continue;
    const message = `${count} ${count === 1 ? 'row' : 'rows'} of ${table} refer to a row of ${parent} that is not there.`;
    found.push({ shop: null, table, row: null, message });
  }
  return found;
}

const levels = async (ask: Ask): Promise<Finding[]> =>
  (await ask(BELOW)).map(({ shop, lot, place }) =>
    belowInWords({ shop: String(shop), lot: String(lot), place: Number(place) }),
  );

const SHEETS = `SELECT "shopId" AS shop, "productId" AS product, "number" FROM "SafetySheet"
  WHERE encode(sha256("bytes"), 'hex') <> "hash"`;

const sheets = async (ask: Ask): Promise<Finding[]> =>
  (await ask(SHEETS)).map(({ shop, product, number }) =>
    sheetInWords({ shop: String(shop), product: String(product), number: Number(number) }),
  );

/** Tables whose guards are missing or switched off: then nobody would know what was changed in them. */
async function guards(ask: Ask): Promise<Finding[]> {
  const rows = await ask(
    `SELECT c.relname AS "table", t.tgname AS name FROM pg_trigger t JOIN pg_class c ON c.oid = t.tgrelid
     WHERE NOT t.tgisinternal AND t.tgenabled IN ('O', 'A')`,
  );
  const there = new Set(rows.map(({ table, name }) => `${table} ${name}`));
  const wanted = [COUNTING, `${COUNTING}_emptied`, SEALING, `${SEALING}_changes`];
  return (await sealedTables(ask)).flatMap(({ table }) =>
    wanted.every((name) => there.has(`${table} ${name}`))
      ? []
      : [{ shop: null, table, row: null, message: `The guards of ${table} are missing or switched off.` }],
  );
}
