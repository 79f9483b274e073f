import { existsSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { MIGRATIONS, migrationsIn } from './migration-folders.js';
import { EVERYTHING, withSchemaEngine } from './schema-engine.js';

/**
 * Bring the database of a shop up to this program, or make a new one.
 *
 * The work is done on a copy, which takes the place of the database in one step when it is finished: a start that is
 * halted, or a migration that fails, leaves the database as it was.
 *
 * Takes    the path of the database file, and where the migrations are
 * Gives    the names of the migrations that were applied; none when the database was up to date
 * Throws   Error with a sentence when the database was made by a newer program, was changed by hand, or is in use
 */
export async function migrate(file, folder = MIGRATIONS) {
  const migrations = migrationsIn(folder);
  const pending = existsSync(file) ? pendingIn(file, migrations) : migrations;
  if (pending.length === 0) return [];

  const copy = `${file}.migrating`;
  for (const name of [copy, `${copy}-wal`, `${copy}-shm`, `${copy}-journal`]) rmSync(name, { force: true });
  if (existsSync(file)) copyWhole(file, copy);
  await apply(copy, migrations, folder);
  settle(copy);
  if (existsSync(file)) leaveAlone(file);
  renameSync(copy, file);
  return pending.map(({ name }) => name);
}

/** The migrations that a database still lacks. Throws when its history is not a beginning of ours. */
function pendingIn(file, migrations) {
  const known = new Map(migrations.map((migration) => [migration.name, migration]));
  const done = appliedIn(file);
  for (const { migration_name, checksum } of done) {
    const ours = known.get(migration_name);
    if (!ours) {
      throw new Error(
        `The database ${file} was last used by a newer version of this program (it has the change "${migration_name}"). ` +
          'Start that version, or name another data folder in DATA_DIR.',
      );
    }
    if (ours.checksum !== checksum) {
      throw new Error(
        `The migration "${migration_name}" was edited after it was applied to ${file}. Put it back as it was.`,
      );
    }
  }
  const names = new Set(done.map(({ migration_name }) => migration_name));
  return migrations.filter(({ name }) => !names.has(name));
}

function appliedIn(file) {
  const database = new Database(file, { fileMustExist: true, timeout: 1000 });
  try {
    const tables = database.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").pluck().all();
    if (!tables.includes('_prisma_migrations')) {
      if (tables.length === 0) return [];
      throw new Error(`${file} is a database of another program. Name another data folder in DATA_DIR.`);
    }
    return database
      .prepare(
        'SELECT migration_name, checksum FROM _prisma_migrations ' +
          'WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL ORDER BY migration_name',
      )
      .all();
  } finally {
    database.close();
  }
}

/** A whole copy of a database, with what still stands in its write-ahead log. */
function copyWhole(file, copy) {
  const database = new Database(file, { fileMustExist: true, timeout: 1000 });
  try {
    database.prepare('VACUUM INTO ?').run(copy);
  } finally {
    database.close();
  }
}

async function apply(copy, migrations, folder) {
  const migrationsList = {
    baseDir: folder,
    lockfile: { path: './migration_lock.toml', content: 'provider = "sqlite"\n' },
    shadowDbInitScript: '',
    migrationDirectories: migrations.map(({ name, script }) => ({
      path: name,
      migrationFile: { path: 'migration.sql', content: { tag: 'ok', value: script } },
    })),
  };
  try {
    await withSchemaEngine(copy, (engine) => engine.applyMigrations({ migrationsList, filters: EVERYTHING }));
  } catch (error) {
    throw new Error(`The database could not be brought up to date; it is as it was before. ${error.message ?? error}`, {
      cause: error,
    });
  }
}

/** Everything of the copy on the disk, in the one file, and every reference in it leading somewhere. */
function settle(copy) {
  const database = new Database(copy, { fileMustExist: true });
  try {
    database.pragma('synchronous = FULL');
    database.pragma('journal_mode = WAL');
    const broken = database.pragma('foreign_key_check');
    if (broken.length > 0) {
      throw new Error(`The new database would hold ${broken.length} references to nothing. The old one is as it was.`);
    }
    database.pragma('wal_checkpoint(TRUNCATE)');
  } finally {
    database.close();
  }
}

/**
 * Nobody else may be writing to the database that is about to be replaced, and nothing of it may be left in a
 * write-ahead log that the new one would inherit.
 */
function leaveAlone(file) {
  const database = new Database(file, { fileMustExist: true, timeout: 0 });
  try {
    database.pragma('journal_mode = DELETE');
  } catch (error) {
    throw new Error(`The database ${file} is in use by another process. Stop that one first, then start again.`, {
      cause: error,
    });
  } finally {
    database.close();
  }
  if (existsSync(`${file}-wal`)) throw new Error(`A write-ahead log is left beside the database in ${dirname(file)}.`);
}
