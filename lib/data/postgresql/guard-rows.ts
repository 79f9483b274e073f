import { randomBytes } from 'node:crypto';
import type { Client } from 'pg';
import { type Column, tablesOf } from '../postgresql-digests';
import { sha256 } from '../sha256';
import { askClient } from './ask-client';
import { columnsSealed, type Sealed, sealedOf } from './row-seals';

/*
 * What PostgreSQL has to know of the rows of a shop beside their tables, in a schema of its own: how a row is sealed, and how
 * often something else than this program has changed anything. Connections of this program say that they are its own by the
 * setting `kept.program`: one that writes seals what it writes, one that copies brings the seals along.
 */

/** What a connection of this program says of itself. */
export const PROGRAM = { writes: '-c kept.program=writes', copies: '-c kept.program=copies' } as const;

/**
 * Teach a database how rows are sealed, and have it count what others change. Done again, it changes nothing. Text is kept in
 * the order of its bytes, as SQLite keeps it, whatever language the database was made for.
 *
 * Takes    a connection in a transaction, after the migrations
 * Throws   Error with a sentence when the database keeps text in another encoding than UTF-8
 */
export async function guardRows(client: Client): Promise<void> {
  const { rows } = await client.query<{ encoding: string }>('SHOW server_encoding');
  if (rows[0] && Object.values(rows[0])[0] !== 'UTF8') {
    throw new Error("The database that DATABASE_URL names keeps no UTF-8 text. Make one with ENCODING 'UTF8'.");
  }
  const tables = await tablesOf(askClient(client));
  const guards = sha256(Buffer.from([...tables].map(([table, columns]) => guardsOf(table, columns)).join(FUNCTIONS)));
  if ((await guardsHere(client)) === guards) return;
  await teachSeals(client);
  for (const [table, columns] of tables) {
    await orderByBytes(client, table, columns);
    await client.query(guardsOf(table, columns));
  }
  await client.query('INSERT INTO kept.outside (identity) SELECT $1 WHERE NOT EXISTS (SELECT 1 FROM kept.outside)', [
    randomBytes(4).toString('hex'),
  ]);
  await client.query('UPDATE kept.outside SET guards = $1', [guards]);
}

/** Teach a database only how a row is sealed. */
export const teachSeals = (client: Client): Promise<unknown> => client.query(FUNCTIONS);

/** What the guards were made from; null before there were any. Making them waits for whoever writes, so it is done once. */
async function guardsHere(client: Client): Promise<string | null> {
  const there = await client.query(`SELECT to_regclass('kept.outside') IS NOT NULL AS "isThere"`);
  if (!there.rows[0]?.isThere) return null;
  const { rows } = await client.query<{ guards: string | null }>('SELECT guards FROM kept.outside');
  return rows[0]?.guards ?? null;
}

function guardsOf(table: string, columns: readonly Column[]): string {
  const sealed = sealedOf(table, columns);
  return `${countingOf(table)}${sealed ? sealingOf(sealed) : ''}`;
}

const FUNCTIONS = `
CREATE SCHEMA IF NOT EXISTS kept;
CREATE TABLE IF NOT EXISTS kept.outside (identity text NOT NULL, changes bigint NOT NULL DEFAULT 0, guards text,
  found text NOT NULL DEFAULT '', "isRestored" boolean NOT NULL DEFAULT false);
CREATE TABLE IF NOT EXISTS kept.plan_run (name text PRIMARY KEY, seconds int NOT NULL, began timestamptz NOT NULL,
  noted timestamptz NOT NULL, progress bytea, plan bytea, "isStopped" boolean NOT NULL, "hasFailed" boolean NOT NULL);
CREATE OR REPLACE FUNCTION kept.signs(held text) RETURNS int LANGUAGE sql IMMUTABLE AS $$
  SELECT CASE WHEN octet_length(held) = length(held) THEN length(held)
    ELSE length(held) + length(regexp_replace(held, '[^\\U00010000-\\U0010FFFF]', '', 'g')) END $$;
CREATE OR REPLACE FUNCTION kept.decimals(held float8) RETURNS text LANGUAGE sql IMMUTABLE AS $$
  SELECT CASE WHEN held = 0 OR abs(held) >= 1e-6 AND abs(held) < 1e21 THEN CAST(CAST(CAST(held AS text) AS numeric) AS text)
    ELSE regexp_replace(CAST(held AS text), 'e([+-])0+', 'e\\1') END $$;
CREATE OR REPLACE FUNCTION kept.seal(written text) RETURNS text LANGUAGE sql IMMUTABLE AS $$
  SELECT left(translate(encode(sha256(convert_to(written, 'UTF8')), 'base64'), '+/', '-_'), 22) $$;
CREATE OR REPLACE FUNCTION kept.count_change() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = pg_catalog AS $$
BEGIN
  UPDATE kept.outside SET changes = changes + 1;
  RETURN NULL;
END $$;`;

/** Text in the order of its bytes. Rewrites the indexes of a table once. */
async function orderByBytes(client: Client, table: string, columns: readonly Column[]): Promise<void> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT attname AS name FROM pg_attribute JOIN pg_collation c ON c.oid = attcollation
     WHERE attrelid = CAST(quote_ident($1) AS regclass) AND attnum > 0 AND collname <> 'C'`,
    [table],
  );
  const other = new Set(rows.map(({ name }) => name));
  const changes = columns
    .filter(({ name, type }) => type === 'text' && other.has(name))
    .map(({ name }) => `ALTER COLUMN "${name}" TYPE text COLLATE "C"`);
  if (changes.length > 0) await client.query(`ALTER TABLE "${table}" ${changes.join(', ')}`);
}

/** The name of the trigger that counts what others change in a table, and of the one that seals what is written. */
export const COUNTING = 'kept_counts';
export const SEALING = 'kept_seals';

const countingOf = (table: string): string => `
  CREATE OR REPLACE TRIGGER ${COUNTING} AFTER INSERT OR UPDATE OR DELETE ON "${table}" FOR EACH STATEMENT
    WHEN (coalesce(current_setting('kept.program', true), '') NOT IN ('writes', 'copies'))
    EXECUTE FUNCTION kept.count_change();
  CREATE OR REPLACE TRIGGER ${COUNTING}_emptied AFTER TRUNCATE ON "${table}" FOR EACH STATEMENT
    WHEN (coalesce(current_setting('kept.program', true), '') NOT IN ('writes', 'copies'))
    EXECUTE FUNCTION kept.count_change();`;

function sealingOf(sealed: Sealed): string {
  const { table, shop, key, seal } = sealed;
  const fits = `"shopId" = ${shop('OLD')} AND "tableName" = '${table}' AND "rowKey" = ${key('OLD')} AND "hash" = ${seal('OLD')}`;
  const changed = columnsSealed(sealed).map((name) => `"${name}"`);
  const mine = `WHEN (current_setting('kept.program', true) = 'writes') EXECUTE FUNCTION kept."seal ${table}"()`;
  return `
  CREATE OR REPLACE FUNCTION kept."seal ${table}"() RETURNS trigger LANGUAGE plpgsql AS $seal$
  BEGIN
    IF TG_OP = 'INSERT' THEN
      INSERT INTO "RowSeal" ("shopId", "tableName", "rowKey", "hash")
        VALUES (${shop('NEW')}, '${table}', ${key('NEW')}, ${seal('NEW')}) ON CONFLICT DO NOTHING;
    ELSIF TG_OP = 'UPDATE' THEN
      UPDATE "RowSeal" SET "hash" = ${seal('NEW')} WHERE ${fits};
    ELSE
      DELETE FROM "RowSeal" WHERE ${fits};
    END IF;
    RETURN NULL;
  END $seal$;
  CREATE OR REPLACE TRIGGER ${SEALING} AFTER INSERT OR DELETE ON "${table}" FOR EACH ROW ${mine};
  CREATE OR REPLACE TRIGGER ${SEALING}_changes AFTER UPDATE OF ${changed.join(', ')} ON "${table}" FOR EACH ROW ${mine};`;
}
