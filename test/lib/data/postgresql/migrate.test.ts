import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import pg from 'pg';
import { afterAll, expect, test } from 'vitest';
import { migratePostgresql } from '@/prisma/bring-postgresql-up-to-date.js';
import { migrate } from '@/prisma/bring-up-to-date.js';
import { APPEND_ONLY } from '@/prisma/guards.js';
import { MIGRATIONS, migrationsIn, POSTGRESQL_SCRIPT } from '@/prisma/migration-folders.js';
import { guardedPostgresql } from '@/prisma/postgresql-guards.js';
import { postgresqlSchema } from '@/prisma/postgresql-schema.js';
import { EVERYTHING, withPostgresqlEngine } from '@/prisma/schema-engine.js';
import { startPostgresql } from '@/test/run/postgresql.js';

const server = await startPostgresql();
const folder = mkdtempSync(join(tmpdir(), 'migrate-postgresql-'));
let made = 0;

afterAll(() => {
  server?.stop();
  rmSync(folder, { recursive: true, force: true });
});

/** Ask a database, and close the connection. */
async function ask(url: string, sql: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

/** The address of a new, empty database. */
async function emptyDatabase(): Promise<string> {
  made += 1;
  await ask(`${server?.url}/postgres`, `CREATE DATABASE "of_${made}"`);
  return `${server?.url}/of_${made}`;
}

const names = migrationsIn().map(({ name }) => name);
const datamodel = (content: string) => ({ tag: 'schemaDatamodel', files: [{ path: 'schema.prisma', content }] });

test('each migration has a script for PostgreSQL that leads to the same schema', async () => {
  let before: string | null = null;
  for (const [at, { schema, script }] of migrationsIn(MIGRATIONS, POSTGRESQL_SCRIPT).entries()) {
    const change = {
      from: before === null ? { tag: 'empty' } : datamodel(postgresqlSchema(before)),
      to: datamodel(postgresqlSchema(schema ?? '')),
      ...{ script: true, exitCode: null, filters: EVERYTHING },
    };
    const { stdout } = await withPostgresqlEngine((engine) => engine.diff(change));
    expect(script).toBe(guardedPostgresql(stdout ?? '', at === 0));
    before = schema;
  }
});

test.runIf(server)('an empty database is filled once, and one that is up to date is left alone', async () => {
  const url = await emptyDatabase();
  expect(await migratePostgresql(url)).toEqual(names);
  expect(await migratePostgresql(url)).toEqual([]);
  const applied = await ask(url, 'SELECT "migration_name" FROM "_prisma_migrations" ORDER BY 1');
  expect(applied.map(({ migration_name }) => migration_name)).toEqual(names);
});

/** Everything that a database is made of, one line each. */
async function madeOf(url: string): Promise<string[]> {
  const parts = await ask(
    url,
    `SELECT concat_ws(' ', table_name, column_name, data_type, is_nullable, column_default) AS part
       FROM information_schema.columns WHERE table_schema = 'public' AND table_name <> '_prisma_migrations'
     UNION ALL SELECT indexdef FROM pg_indexes WHERE schemaname = 'public' AND tablename <> '_prisma_migrations'
     UNION ALL SELECT conrelid::regclass::text || ' ' || pg_get_constraintdef(oid) FROM pg_constraint
       WHERE connamespace = 'public'::regnamespace AND conrelid <> '_prisma_migrations'::regclass
     UNION ALL SELECT pg_get_triggerdef(oid) FROM pg_trigger WHERE NOT tgisinternal`,
  );
  return parts.map(({ part }) => String(part)).sort();
}

test.runIf(server)('what the migrations make is what the schema says: the difference is empty', async () => {
  const [stepwise, atOnce] = [await emptyDatabase(), await emptyDatabase()];
  await migratePostgresql(stepwise);
  const schema = readFileSync(join(MIGRATIONS, '..', 'schema.prisma'), 'utf8');
  const { stdout } = await withPostgresqlEngine((engine) =>
    engine.diff({
      ...{ from: { tag: 'empty' }, to: datamodel(postgresqlSchema(schema)) },
      ...{ script: true, exitCode: null, filters: EVERYTHING },
    }),
  );
  await ask(atOnce, `${guardedPostgresql(stdout ?? '', true)}; CREATE TABLE "_prisma_migrations" (id TEXT)`);
  const made = await madeOf(stepwise);
  expect(made.length).toBeGreaterThan(400);
  expect(made).toEqual(await madeOf(atOnce));
});

test.runIf(server)('two starts at once make it once', async () => {
  const url = await emptyDatabase();
  const applied = await Promise.all([migratePostgresql(url), migratePostgresql(url), migratePostgresql(url)]);
  expect(applied.map((list) => list.length).sort((a, b) => a - b)).toEqual([0, 0, names.length]);
});

test.runIf(server)('a migration that fails half-way leaves the database as it was', async () => {
  const url = await emptyDatabase();
  const own = join(folder, 'migrations');
  cpSync(MIGRATIONS, own, { recursive: true });
  mkdirSync(join(own, '9999_more'));
  const script = join(own, '9999_more', POSTGRESQL_SCRIPT);
  writeFileSync(script, 'CREATE TABLE "First" ("id" TEXT); CREATE TABLE "Second" (nonsense here (;');
  await expect(migratePostgresql(url, own)).rejects.toThrow(/could not be brought up to date/);
  expect(await ask(url, `SELECT 1 FROM pg_tables WHERE schemaname = 'public'`)).toEqual([]);
  writeFileSync(script, 'CREATE TABLE "First" ("id" TEXT);');
  expect(await migratePostgresql(url, own)).toEqual([...names, '9999_more']);
  await expect(migratePostgresql(url)).rejects.toThrow(/newer version/);
});

test.runIf(server)('a database of another program is refused', async () => {
  const url = await emptyDatabase();
  await ask(url, 'CREATE TABLE strangers (id TEXT)');
  await expect(migratePostgresql(url)).rejects.toThrow(/another program/);
});

test.runIf(server)(
  'tables that only grow refuse UPDATE, DELETE and TRUNCATE, and amounts and days are checked',
  async () => {
    const url = await emptyDatabase();
    await migratePostgresql(url);
    for (const table of APPEND_ONLY) {
      const [column] = await ask(
        url,
        `SELECT column_name AS name FROM information_schema.columns WHERE table_name = '${table}' LIMIT 1`,
      );
      for (const sql of [
        `UPDATE "${table}" SET "${column?.name}" = "${column?.name}"`,
        `DELETE FROM "${table}"`,
        `TRUNCATE "${table}" CASCADE`,
      ])
        await expect(ask(url, sql)).rejects.toThrow(/only grows/);
    }
    const insert = (on: string, days: number) =>
      `INSERT INTO "Shop" ("id", "createdOn", "name", "timeZone", "currency", "units", "openingHours", "fillCapacity", "lossPerFill", "measuringStep", "safetyDays", "sameModeInARow", "capitalPerYear")
     VALUES ('s', '${on}', 'A', 'UTC', 'EUR', 'us', '{"b":1,"a":2}', '1 L', '0 mL', '0 mL', ${days}, 2, 0)`;
    await expect(ask(url, insert('31 March', 1))).rejects.toThrow(/check/);
    await expect(ask(url, insert('2026-03-31', -1))).rejects.toThrow(/check/);
    await ask(url, insert('2026-03-31', 1));
    // JSON stays as it was written, in the order of its keys: seals are made over it.
    expect(await ask(url, 'SELECT "openingHours"::text AS held FROM "Shop"')).toEqual([{ held: '{"b":1,"a":2}' }]);
  },
);

test.runIf(server)('both databases have the same tables and the same columns', async () => {
  const url = await emptyDatabase();
  await migratePostgresql(url);
  const file = join(folder, 'shop.db');
  await migrate(file);
  const sqlite = new Sqlite(file, { readonly: true });
  const here = sqlite
    .prepare(
      "SELECT t.name || '.' || c.name FROM sqlite_schema t, pragma_table_info(t.name) c WHERE t.type = 'table' AND t.name NOT LIKE '\\_prisma%' ESCAPE '\\' ORDER BY 1",
    )
    .pluck()
    .all();
  sqlite.close();
  const there = await ask(
    url,
    `SELECT table_name || '.' || column_name AS name FROM information_schema.columns WHERE table_schema = 'public' AND table_name <> '_prisma_migrations' ORDER BY (table_name || '.' || column_name) COLLATE "C"`,
  );
  expect(there.map(({ name }) => name)).toEqual(here);
});
