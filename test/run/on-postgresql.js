import { postgresqlPrograms } from './postgresql.js';

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
  return [[ITS_OWN, ...folders.map((folder) => `test/lib/${folder}/**/*.test.ts`)]];
}
