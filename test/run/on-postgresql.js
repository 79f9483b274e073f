import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { postgresqlPrograms } from './postgresql.js';
import { testsUnder } from './tests-under.js';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** What runs on PostgreSQL alone. */
const ITS_OWN = 'test/postgresql/**/*.test.ts';

/** What runs on it once more in the ordinary run: a part in which every kind of statement occurs. */
const ORDINARY = ['data/snapshot', 'commands/round-trip'];

/** The list of test files to run on PostgreSQL, in a list; an empty one where it is not installed. */
export function onPostgresql() {
  if (postgresqlPrograms() === null) return [];
  if (process.env.ON_POSTGRESQL) return [process.env.ON_POSTGRESQL.split(',')];
  if (process.env.TEST_LONG !== '1') return [[ITS_OWN, ...ORDINARY.map((name) => `test/lib/${name}.test.ts`)]];
  const folders = ['data', 'commands', 'access', 'door', 'views', 'alerts'];
  const all = folders.flatMap((folder) => testsUnder(`test/lib/${folder}`));
  return [[ITS_OWN, ...all.filter((path) => !isOfTheFile(path))]];
}

/** What is tried on SQLite's own file: damage on the disk, its log, its catalogue. */
const isOfTheFile = (path) =>
  /'shop\.db|shop\.db`|better-sqlite3|sqlite_master|PRAGMA/.test(readFileSync(join(root, path), 'utf8'));
