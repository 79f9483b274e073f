import pg from 'pg';
import { POSTGRESQL } from '../dialect';
import type { Ask } from '../sealed-rows';

/** What connections of this program are called among those of the server. */
export const APP = 'bench-and-bottle';

/** A server that does not answer is told of after so long. */
export const CONNECT_MS = 5_000;

/** Readers see one moment for as long as they read, and can write nothing. */
export const READS = '-c default_transaction_isolation=repeatable\\ read -c default_transaction_read_only=on';

/** Asks a connection of the driver's own. Every value that it is asked for comes as text, or as a real number. */
export function askClient(client: pg.Client | pg.Pool): Ask {
  const ask = async (sql: string, ...values: string[]): Promise<Record<string, unknown>[]> =>
    (await client.query(POSTGRESQL.withPlaces(sql), values)).rows;
  return Object.assign(ask, { dialect: POSTGRESQL });
}

/** Do a piece of work in one transaction that sees one moment and writes nothing. */
export const atOneMoment = <T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> =>
  onConnection({ connectionString: url, options: READS }, async (client) => {
    await client.query('BEGIN');
    return work(client);
  });

/** Do a piece of work while this program holds a lock. Gives false, and does nothing, where another process holds it. */
export const whileLocked = (url: string, lock: number, work: () => Promise<void>): Promise<boolean> =>
  onConnection({ connectionString: url }, async (client) => {
    const { rows } = await client.query<{ taken: boolean }>('SELECT pg_try_advisory_lock($1) AS taken', [lock]);
    if (!rows[0]?.taken) return false;
    await work();
    return true;
  });

/** Do a piece of work on a connection of its own, which ends with it. */
async function onConnection<T>(config: pg.ClientConfig, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ ...config, connectionTimeoutMillis: CONNECT_MS, application_name: APP });
  // What breaks the connection is thrown by the question that is under way.
  client.on('error', () => {});
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end().catch(() => {});
  }
}
