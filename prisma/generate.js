/*
 * Writes the database client into prisma/generated. Prisma would download a native schema engine here although it does
 * not use one; naming any existing file as that engine stops it, so this works with nothing but the package registry.
 */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const here = (file) => fileURLToPath(new URL(file, import.meta.url));
const prisma = createRequire(import.meta.url).resolve('prisma/build/index.js');

const { status, stdout, stderr } = spawnSync(
  process.execPath,
  [prisma, 'generate', '--schema', here('schema.prisma'), '--config', here('config.ts'), '--no-hints'],
  {
    encoding: 'utf8',
    env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1' },
  },
);
if (status !== 0) process.stderr.write(`The database client could not be generated.\n${stdout}${stderr}`);
process.exit(status ?? 1);
