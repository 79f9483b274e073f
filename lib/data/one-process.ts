import 'server-only';
import type { Rows } from './database';
import { postgresqlAddress } from './database-address';

/** What only one of several processes at a database does at a time, by the number of its lock. */
const LOCKS = { alerts: 7_204_116, clock: 7_204_117, people: 7_204_118 } as const;

/**
 * Do a round of work unless another process at the same database is doing it. A shop in a file has one process.
 *
 * Gives    whether it was done here
 */
export async function unlessElsewhere(what: keyof typeof LOCKS, work: () => Promise<void>): Promise<boolean> {
  const address = postgresqlAddress();
  if (address !== null) {
    const { whileLocked } = await import('./postgresql/ask-client');
    return whileLocked(address, LOCKS[what], work);
  }
  await work();
  return true;
}

/** Let no other process do the same until the transaction ends. A shop in a file has one process. */
export async function alone(rows: Rows, what: keyof typeof LOCKS): Promise<void> {
  if (postgresqlAddress() === null) return;
  await rows.$executeRawUnsafe(`SELECT pg_advisory_xact_lock(${LOCKS[what]})`);
}
