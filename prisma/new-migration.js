/*
 * Writes the migration from the schema of the newest migration to prisma/schema.prisma:
 *
 *   node prisma/new-migration.js NAME        for example  node prisma/new-migration.js people
 *
 * It writes one script for SQLite and one for PostgreSQL. Each migration folder keeps the schema it leads to, which is what the next one is measured from. What Prisma's schema
 * cannot say is added here: CHECKs on every amount, count, instant and day, and the triggers of tables that only grow.
 * Read the script before committing it. Once committed it never changes.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { guarded } from './guards.js';
import { MIGRATIONS, migrationsIn, POSTGRESQL_SCRIPT } from './migration-folders.js';
import { guardedPostgresql } from './postgresql-guards.js';
import { postgresqlSchema } from './postgresql-schema.js';
import { EVERYTHING, withPostgresqlEngine, withSchemaEngine } from './schema-engine.js';

const schema = readFileSync(fileURLToPath(new URL('schema.prisma', import.meta.url)), 'utf8');
const datamodel = (content) => ({ tag: 'schemaDatamodel', files: [{ path: 'schema.prisma', content }] });

const name = process.argv[2];
if (!name || !/^[a-z][a-z0-9-]*$/.test(name)) {
  process.stderr.write(
    'Give the migration a name in small letters, for example: node prisma/new-migration.js people\n',
  );
  process.exit(1);
}

const last = migrationsIn().at(-1);
const changeOf = (dialect) => ({
  from: last?.schema ? datamodel(dialect(last.schema)) : { tag: 'empty' },
  to: datamodel(dialect(schema)),
  script: true,
  exitCode: null,
  filters: EVERYTHING,
});
const sqlite = await withSchemaEngine(':memory:', (engine) => engine.diff(changeOf((text) => text)));
const postgresql = await withPostgresqlEngine((engine) => engine.diff(changeOf(postgresqlSchema)));

const number = String(migrationsIn().length + 1).padStart(4, '0');
const folder = join(MIGRATIONS, `${number}_${name}`);
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'migration.sql'), guarded(sqlite.stdout ?? ''));
writeFileSync(join(folder, POSTGRESQL_SCRIPT), guardedPostgresql(postgresql.stdout ?? '', last === undefined));
writeFileSync(join(folder, 'schema.prisma'), schema);
writeFileSync(
  join(MIGRATIONS, 'migration_lock.toml'),
  '# Which kind of database these migrations are written for.\nprovider = "sqlite"\n',
);
process.stdout.write(`${folder}\n`);
