import type { Client } from 'pg';
import { askClient } from '@/lib/data/postgresql/ask-client';
import { guardRows, teachSeals } from '@/lib/data/postgresql/guard-rows';
import { rowFaults, sealedTables } from '@/lib/data/postgresql/row-seals';
import type { RowFault } from '@/lib/data/row-seals';
import { migratePostgresql } from './bring-postgresql-up-to-date.js';
import { MIGRATIONS } from './migration-folders.js';

/**
 * Bring a PostgreSQL database of shops up to this program, with its guards, or fill an empty one. A migration changes tables,
 * and what their rows hold: they are sealed anew, but for those that were damaged before. All of it happens or nothing.
 *
 * Gives    the names of the migrations that were applied
 * Throws   Error with a sentence, as `migratePostgresql` does
 */
export const readyPostgresql = (url: string, folder = MIGRATIONS): Promise<string[]> =>
  migratePostgresql(url, folder, async (client: Client, pending: number, migrate: () => Promise<void>) => {
    const before = pending > 0 ? await faultsBefore(client) : [];
    await migrate();
    await guardRows(client);
    if (pending > 0) await sealAll(client, before);
  });

/** The rows that do not fit their seals before the migration; none where there are no seals yet. */
async function faultsBefore(client: Client): Promise<RowFault[]> {
  const { rows } = await client.query(`SELECT to_regclass('"RowSeal"') IS NOT NULL AS "isSealed"`);
  if (!rows[0]?.isSealed) return [];
  await teachSeals(client);
  return rowFaults(askClient(client));
}

/** Seals of SQLite's own tables go, too: they no longer say what the tables would be there. */
async function sealAll(client: Client, before: readonly RowFault[]): Promise<void> {
  await client.query(
    'CREATE TEMP TABLE "Doubted" ("shopId" text COLLATE "C", "tableName" text COLLATE "C", "rowKey" text COLLATE "C") ON COMMIT DROP',
  );
  const columns = ['shop', 'table', 'row'] as const;
  await client.query(
    'INSERT INTO "Doubted" SELECT * FROM unnest(CAST($1 AS text[]), CAST($2 AS text[]), CAST($3 AS text[]))',
    columns.map((name) => before.map((fault) => fault[name])),
  );
  const doubted = 'IN (SELECT "shopId", "tableName", "rowKey" FROM "Doubted")';
  await client.query(`DELETE FROM "RowSeal" WHERE ("shopId", "tableName", "rowKey") NOT ${doubted}`);
  for (const { table, shop, key, seal } of await sealedTables(askClient(client))) {
    await client.query(`INSERT INTO "RowSeal" ("shopId", "tableName", "rowKey", "hash")
      SELECT ${shop('t')}, '${table}', ${key('t')}, ${seal('t')} FROM "${table}" AS t
      WHERE (${shop('t')}, '${table}', ${key('t')}) NOT ${doubted} ON CONFLICT DO NOTHING`);
  }
}
