/*
 * Writes the database clients into prisma/generated: the one for SQLite, and below it the same for PostgreSQL. Prisma would
 * download a native schema engine here although it does not use one; naming any existing file as that engine stops it, so
 * this works with nothing but the package registry.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { postgresqlSchema } from './postgresql-schema.js';

const here = (file) => fileURLToPath(new URL(file, import.meta.url));
const prisma = createRequire(import.meta.url).resolve('prisma/build/index.js');

function generate(schema) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [prisma, 'generate', '--schema', schema, '--config', here('config.ts'), '--no-hints'],
    {
      encoding: 'utf8',
      env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1' },
    },
  );
  if (status === 0) return;
  process.stderr.write(`The database client could not be generated.\n${stdout}${stderr}`);
  process.exit(status ?? 1);
}

// A client is never written over another one that lies below it.
rmSync(here('generated'), { recursive: true, force: true });
generate(here('schema.prisma'));
const forPostgresql = here('generated/postgresql.prisma');
writeFileSync(forPostgresql, postgresqlSchema(readFileSync(here('schema.prisma'), 'utf8')));
generate(forPostgresql);
