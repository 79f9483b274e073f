import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Where the migrations of this program are. */
export const MIGRATIONS = fileURLToPath(new URL('migrations', import.meta.url));

/** The script of a migration for PostgreSQL, beside `migration.sql`, which is for SQLite. */
export const POSTGRESQL_SCRIPT = 'postgresql.sql';

/** The migrations in a folder, oldest first, each with its script, the script's checksum and the schema it leads to. */
export function migrationsIn(folder = MIGRATIONS, named = 'migration.sql') {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort()
    .map((name) => {
      const script = readFileSync(join(folder, name, named), 'utf8');
      const schema = join(folder, name, 'schema.prisma');
      return {
        name,
        script,
        checksum: createHash('sha256').update(script).digest('hex'),
        schema: existsSync(schema) ? readFileSync(schema, 'utf8') : null,
      };
    });
}
