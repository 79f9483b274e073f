import 'server-only';
import pg from 'pg';
import type { PrismaClient } from '@/prisma/generated/client';
import { APP, CONNECT_MS, READS } from './ask-client';
import { clientOn } from './client-on.js';
import { PROGRAM } from './guard-rows';

/** A server that gives no answer is told of after so long; whoever waits for another command waits longer. */
const [READ_MS, WRITE_MS] = [60_000, 150_000];

/** So many connections read at once, and so many write: one command after another, and one beside it on a thread. */
const [READERS, WRITERS] = [4, 2];

/** The client of one use and the connections below it. */
export type Connected = { client: PrismaClient; pool: pg.Pool };

/** Connections that only read. */
export const connectReader = (url: string): Connected =>
  connected({ connectionString: url, max: READERS, query_timeout: READ_MS, options: READS });

/** Connections that write, and seal every row they write. */
export const connectWriter = (url: string): Connected =>
  connected({ connectionString: url, max: WRITERS, query_timeout: WRITE_MS, options: PROGRAM.writes });

function connected(config: pg.PoolConfig): Connected {
  const pool = new pg.Pool({ ...config, connectionTimeoutMillis: CONNECT_MS, keepAlive: true, application_name: APP });
  // A connection that breaks while nobody uses it is replaced by the next question.
  pool.on('error', () => {});
  return { client: clientOn(pool), pool };
}
