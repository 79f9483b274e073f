import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { onPostgresql } from './run/on-postgresql.js';
import { testsUnder } from './run/tests-under.js';

const root = fileURLToPath(new URL('..', import.meta.url));

const PURE = ['test/shared', 'test/lib/engine', 'test/outside', 'test/worked', 'test/witness'];
const within = (folder: string) => `${folder}/**/*.test.{ts,tsx}`;

/** Tests of commands, views and rows have a database each, and leave nothing behind but what is kept for it. */
const BOOKS = ['test/lib/commands', 'test/lib/views', 'test/lib/data']
  .flatMap(testsUnder)
  // What puts something else in the place of a module would do so for the next file as well.
  .filter((path) => !/\bvi\.(mock|hoisted)\(/.test(readFileSync(join(root, path), 'utf8')));

export default defineConfig({
  root,
  resolve: {
    alias: { '@': root, 'server-only': fileURLToPath(new URL('./server-only.ts', import.meta.url)) },
  },
  test: {
    // A failure is told whole: the test command shows these messages and nothing else.
    chaiConfig: { truncateThreshold: 0 },
    testTimeout: process.env.TEST_LONG === '1' ? 3_600_000 : 60_000,
    // Left to itself, vitest keeps one processor for itself, and it hardly needs it.
    maxWorkers: '100%',
    projects: [
      // Nothing pure leaves a trace, so these files may share what one of them has already read in.
      { extends: true, test: { name: 'pure', include: PURE.map(within), isolate: false } },
      // To read in what opens a database takes longer than most of these files.
      { extends: true, test: { name: 'books', include: BOOKS, isolate: false } },
      {
        extends: true,
        test: {
          name: 'rest',
          include: [within('test')],
          exclude: ['test/e2e/**', 'test/promises/**', 'test/postgresql/**', ...PURE.map(within), ...BOOKS],
        },
      },
      ...onPostgresql().map((include) => ({
        extends: true as const,
        test: { name: 'postgresql', include, globalSetup: ['test/run/postgresql-here.ts'] },
      })),
    ],
  },
});
