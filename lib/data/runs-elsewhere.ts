import 'server-only';
import { deserialize, serialize } from 'node:v8';
import { database } from './database';
import { postgresqlAddress } from './database-address';

/*
 * Searches that take long, as every process at one PostgreSQL database sees them: one process searches, all see how far it is
 * and what it found, and any may stop it. A shop in a file has one process, which needs none of this.
 */

/** A search as it was noted last, by the process that runs it. */
export type RunNoted = {
  seconds: number;
  /** How long ago it began, in milliseconds of the database's clock. */
  sinceMs: number;
  progress: unknown;
  plan: unknown;
  isStopped: boolean;
  hasFailed: boolean;
  /** True when the process that ran it has been silent for too long: it is gone. */
  isOrphaned: boolean;
};

/** So long a search may say nothing before another process takes it over, and so long a finished one is kept. */
const [SILENT, KEPT] = ["interval '15 seconds'", "interval '1 day'"];

/** A search by its name; null where nobody runs it in another process, and for a shop in a file. */
export async function runNoted(name: string): Promise<RunNoted | null> {
  if (postgresqlAddress() === null) return null;
  const { writer } = await database();
  const [row] = await writer.$queryRawUnsafe<Record<string, unknown>[]>(
    `SELECT seconds, progress, plan, "isStopped", "hasFailed",
       CAST(extract(epoch FROM now() - began) * 1000 AS float8) AS since,
       plan IS NULL AND NOT "hasFailed" AND noted < now() - ${SILENT} AS orphaned
     FROM kept.plan_run WHERE name = $1`,
    name,
  );
  if (!row) return null;
  return {
    ...{ seconds: Number(row.seconds), sinceMs: Number(row.since), progress: read(row.progress), plan: read(row.plan) },
    ...{ isStopped: row.isStopped === true, hasFailed: row.hasFailed === true, isOrphaned: row.orphaned === true },
  };
}

/** Note that this process begins a search, in the place of one that is over or orphaned. False: another was faster. */
export async function takeRun(name: string, seconds: number): Promise<boolean> {
  if (postgresqlAddress() === null) return true;
  const { writer } = await database();
  await writer.$executeRawUnsafe(`DELETE FROM kept.plan_run WHERE noted < now() - ${KEPT}`);
  const taken = await writer.$executeRawUnsafe(
    `INSERT INTO kept.plan_run AS run VALUES ($1, $2, now(), now(), NULL, NULL, false, false)
     ON CONFLICT (name) DO UPDATE SET seconds = $2, began = now(), noted = now(), progress = NULL, plan = NULL,
       "isStopped" = false, "hasFailed" = false
     WHERE run.plan IS NOT NULL OR run."hasFailed" OR run.noted < now() - ${SILENT}`,
    ...[name, seconds],
  );
  return taken === 1;
}

/** Note how far the search of this process is. Gives whether somebody has stopped it. */
export async function noteRun(
  name: string,
  { progress, plan, hasFailed }: Pick<RunNoted, 'progress' | 'plan' | 'hasFailed'>,
): Promise<boolean> {
  if (postgresqlAddress() === null) return false;
  const { writer } = await database();
  const [row] = await writer.$queryRawUnsafe<{ isStopped: boolean }[]>(
    `UPDATE kept.plan_run SET noted = now(), progress = $2, plan = $3, "hasFailed" = $4 WHERE name = $1
     RETURNING "isStopped"`,
    ...[name, written(progress), written(plan), hasFailed],
  );
  return row?.isStopped === true;
}

/** Have the process that runs a search stop it. */
export async function stopRun(name: string): Promise<void> {
  if (postgresqlAddress() === null) return;
  const { writer } = await database();
  await writer.$executeRawUnsafe('UPDATE kept.plan_run SET "isStopped" = true WHERE name = $1', name);
}

const written = (what: unknown): Uint8Array | null => (what === null ? null : new Uint8Array(serialize(what)));

const read = (bytes: unknown): unknown => (bytes instanceof Uint8Array ? deserialize(bytes) : null);
