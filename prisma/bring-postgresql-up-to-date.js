import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { MIGRATIONS, migrationsIn, POSTGRESQL_SCRIPT } from './migration-folders.js';

/** The table of migrations as Prisma keeps it, so that its own tools understand it. */
const TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" VARCHAR(36) PRIMARY KEY NOT NULL,
  "checksum" VARCHAR(64) NOT NULL,
  "finished_at" TIMESTAMPTZ,
  "migration_name" VARCHAR(255) NOT NULL,
  "logs" TEXT,
  "rolled_back_at" TIMESTAMPTZ,
  "started_at" TIMESTAMPTZ NOT NULL DEFAULT now(),
  "applied_steps_count" INTEGER NOT NULL DEFAULT 0
)`;

/** Two programs that start at once wait for each other by this number. */
const LOCK = 7_204_115;

/**
 * Bring a PostgreSQL database of shops up to this program, or fill an empty one. Everything happens in one transaction, so
 * a start that is halted, or a migration that fails, leaves the database as it was. Prisma's own engine would split each
 * script at its semicolons and leave half of it.
 *
 * Takes    the address of the database, where the migrations are, and what is done in the same transaction around them: it is
 *          given the connection and the number of migrations that are to come
 * Gives    the names of the migrations that were applied; none when the database was up to date
 * Throws   Error with a sentence when the database belongs to another program, was made by a newer one, or cannot be reached
 */
export async function migratePostgresql(url, folder = MIGRATIONS, around = apart) {
  // What is written here is neither counted as a change of somebody else nor sealed row by row.
  const client = new pg.Client({ connectionString: url, options: '-c kept.program=copies' });
  await client.connect();
  try {
    await client.query('BEGIN');
    await client.query('SELECT pg_advisory_xact_lock($1)', [LOCK]);
    const pending = await pendingIn(client, migrationsIn(folder, POSTGRESQL_SCRIPT));
    await around(client, pending.length, async () => {
      for (const migration of pending) await apply(client, migration);
    });
    await client.query('COMMIT');
    return pending.map(({ name }) => name);
  } catch (error) {
    await client.query('ROLLBACK').catch(() => {});
    throw error;
  } finally {
    await client.end();
  }
}

const apart = (_client, _count, migrate) => migrate();

async function apply(client, { name, script, checksum }) {
  try {
    await client.query(script);
  } catch (error) {
    throw new Error(
      `The database could not be brought up to date ("${name}"); it is as it was before. ${error.message}`,
      {
        cause: error,
      },
    );
  }
  await client.query(
    'INSERT INTO "_prisma_migrations" ("id", "checksum", "finished_at", "migration_name", "applied_steps_count") VALUES ($1, $2, now(), $3, 1)',
    [randomUUID(), checksum, name],
  );
}

/** The migrations that a database still lacks. Throws when its history is not a beginning of ours. */
async function pendingIn(client, migrations) {
  const { rows } = await client.query('SELECT tablename FROM pg_tables WHERE schemaname = current_schema()');
  if (rows.length > 0 && !rows.some(({ tablename }) => tablename === '_prisma_migrations')) {
    throw new Error('The database that DATABASE_URL names holds tables of another program. Name an empty database.');
  }
  await client.query(TABLE);
  const known = new Map(migrations.map((migration) => [migration.name, migration]));
  const done = await client.query(
    'SELECT "migration_name", "checksum" FROM "_prisma_migrations" WHERE "finished_at" IS NOT NULL AND "rolled_back_at" IS NULL',
  );
  for (const { migration_name, checksum } of done.rows) {
    const ours = known.get(migration_name);
    if (!ours) {
      throw new Error(
        `The database was last used by a newer version of this program (it has the change "${migration_name}"). Start that version.`,
      );
    }
    if (ours.checksum !== checksum)
      throw new Error(`The migration "${migration_name}" was edited after it was applied.`);
  }
  const names = new Set(done.rows.map(({ migration_name }) => migration_name));
  return migrations.filter(({ name }) => !names.has(name));
}
