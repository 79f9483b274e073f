import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { migrate } from '@/prisma/bring-up-to-date.js';
import { guarded } from '@/prisma/guards.js';
import { MIGRATIONS, migrationsIn } from '@/prisma/migration-folders.js';

let folder = '';
let file = '';
let migrations = '';

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bench-and-bottle-'));
  file = join(folder, 'shop.db');
  migrations = join(folder, 'migrations');
  cpSync(MIGRATIONS, migrations, { recursive: true });
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

const query = (sql: string): unknown[] => {
  const database = new Database(file);
  const rows = database.prepare(sql).all();
  database.close();
  return rows;
};

function addMigration(name: string, script: string): void {
  mkdirSync(join(migrations, name));
  writeFileSync(join(migrations, name, 'migration.sql'), script);
}

test('a new database is made once, and one that is up to date is left alone', async () => {
  const names = migrationsIn().map(({ name }) => name);
  expect(await migrate(file)).toEqual(names);
  const made = readFileSync(file);
  expect(await migrate(file)).toEqual([]);
  expect(readFileSync(file).equals(made)).toBe(true);
  const applied = query('SELECT migration_name FROM _prisma_migrations ORDER BY migration_name');
  expect(applied).toEqual(names.map((migration_name) => ({ migration_name })));
  expect(readdirSync(folder).filter((name) => name.startsWith('shop.db'))).toEqual(['shop.db']);
});

test('a migration that fails half-way leaves the database as it was, and the mended one is applied', async () => {
  await migrate(file, migrations);
  addMigration('9999_more', 'CREATE TABLE "First" ("id" TEXT);\nCREATE TABLE "Second" (nonsense here (;\n');
  await expect(migrate(file, migrations)).rejects.toThrow(/could not be brought up to date; it is as it was before/);
  expect(query(`SELECT name FROM sqlite_master WHERE name IN ('First', 'Second')`)).toEqual([]);
  expect(query('SELECT count(*) AS applied FROM _prisma_migrations')).toEqual([{ applied: migrationsIn().length }]);

  writeFileSync(join(migrations, '9999_more', 'migration.sql'), 'CREATE TABLE "First" ("id" TEXT);\n');
  expect(await migrate(file, migrations)).toEqual(['9999_more']);
  expect(query(`SELECT name FROM sqlite_master WHERE name = 'First'`)).toEqual([{ name: 'First' }]);
});

test('a start that was halted in the middle leaves a copy that the next one throws away', async () => {
  await migrate(file, migrations);
  writeFileSync(`${file}.migrating`, 'half of a database');
  writeFileSync(`${file}.migrating-journal`, 'half of a journal');
  addMigration('9999_more', 'CREATE TABLE "First" ("id" TEXT);\n');
  expect(await migrate(file, migrations)).toEqual(['9999_more']);
  expect(existsSync(`${file}.migrating`)).toBe(false);
  expect(existsSync(`${file}.migrating-journal`)).toBe(false);
});

test('what stands in the write-ahead log is not lost', async () => {
  await migrate(file, migrations);
  const writer = new Database(file);
  writer.exec(
    `INSERT INTO "Shop" (id, createdOn, name, timeZone, currency, units, openingHours, fillCapacity, lossPerFill, measuringStep, safetyDays, sameModeInARow, capitalPerYear)
     VALUES ('s', '2026-03-31', 'A', 'UTC', 'EUR', 'us', '{}', '1 L', '0 mL', '0 mL', 1, 2, 0)`,
  );
  expect(existsSync(`${file}-wal`)).toBe(true);
  addMigration('9999_more', 'CREATE TABLE "First" ("id" TEXT);\n');
  await expect(migrate(file, migrations)).rejects.toThrow(/in use by another process/);
  writer.close();
  expect(await migrate(file, migrations)).toEqual(['9999_more']);
  expect(query('SELECT id FROM "Shop"')).toEqual([{ id: 's' }]);
});

test('a database of a newer program, of another program, or with an edited history is refused', async () => {
  addMigration('9999_more', 'CREATE TABLE "First" ("id" TEXT);\n');
  await migrate(file, migrations);
  await expect(migrate(file)).rejects.toThrow(/newer version of this program.*9999_more/);
  writeFileSync(join(migrations, '9999_more', 'migration.sql'), 'CREATE TABLE "First" ("id" INT);\n');
  await expect(migrate(file, migrations)).rejects.toThrow(/was edited after it was applied/);

  const other = join(folder, 'other.db');
  const theirs = new Database(other);
  theirs.exec('CREATE TABLE t (a)');
  theirs.close();
  await expect(migrate(other)).rejects.toThrow(/database of another program/);
});

test('the newest migration leads to the schema that the client is made from', () => {
  const schema = readFileSync(join(MIGRATIONS, '..', 'schema.prisma'), 'utf8');
  expect(migrationsIn().at(-1)?.schema).toBe(schema);
});

test('a column that a migration adds is guarded like the others', () => {
  const script = guarded(
    'ALTER TABLE "Lot" ADD COLUMN "count" INTEGER NOT NULL;\nALTER TABLE "Lot" ADD COLUMN "seenOn" TEXT;',
  );
  expect(script).toContain('"count" INTEGER NOT NULL CHECK ("count" > 0 AND "count" = CAST("count" AS BIGINT));');
  expect(script).toContain(`"seenOn" TEXT CHECK ("seenOn" LIKE '____-__-__');`);
});

test('a table that a migration makes anew gets its guards again', () => {
  const script = guarded('CREATE TABLE "new_Movement" (\n    "amount" BIGINT NOT NULL,\n    "spokenOn" TEXT\n);');
  expect(script).toContain(`"amount" BIGINT NOT NULL CHECK ("amount" > 0 AND "amount" = CAST("amount" AS BIGINT)),`);
  expect(script).toContain(`"spokenOn" TEXT CHECK ("spokenOn" LIKE '____-__-__')\n`);
  expect(script.match(/CREATE TRIGGER "Movement_no_(update|delete)"/g)).toHaveLength(2);
});
