import type pg from 'pg';
import type { Marks } from '../marks';

/** What was counted of the changes of others: as it was last asked for, and up to where all of it is known to have been checked. */
export type Seen = { changes: string; accepted: string };

/**
 * What shows whether a shop has changed, asked of the database each time, so that a command of another process is seen at
 * once. What others than this program change is counted by the guards, in the transaction that changes it.
 */
export function marksHere(pool: pg.Pool, writes: pg.Pool, seen: Seen): Marks {
  const ask = async (sql: string, values: string[] = []): Promise<Record<string, unknown> | undefined> => {
    const { rows } = await pool.query<Record<string, unknown>>(sql, values);
    if (rows[0] && 'changes' in rows[0]) seen.changes = String(rows[0].changes);
    return rows[0];
  };
  const stateOfAll = async () => {
    const row = await ask(ALL);
    return `${row?.changes} ${row?.revisions}`;
  };
  return {
    async stateOf(shopId) {
      const row = await ask(ONE, [shopId]);
      return row?.revision == null ? null : `${row.revision} ${row.changes}`;
    },
    stateOfAll,
    version: stateOfAll,
    value: async (sql) => Object.values((await ask(sql)) ?? {})[0],
    look: async () => void (await ask('SELECT changes FROM kept.outside')),
    async tell(found) {
      const { rows } = await writes.query<{ changes: string }>(TELL, [found]);
      // Nobody else has changed anything meanwhile, so what was checked is still all that there is.
      if (Number(rows[0]?.changes) !== Number(seen.accepted) + 1) return;
      seen.changes = seen.accepted = rows[0]?.changes ?? seen.changes;
    },
    foreign: () => Number(seen.changes),
    ownWrite: (work) => work(),
    close: () => {},
  };
}

const ONE = 'SELECT changes, (SELECT "revision" FROM "Shop" WHERE "id" = $1) AS revision FROM kept.outside';
/** What was found counts like a change, so that every process checks for itself; the same found twice is no news. */
const TELL = 'UPDATE kept.outside SET found = $1, changes = changes + 1 WHERE found <> $1 RETURNING changes';
const ALL = `SELECT changes, (SELECT string_agg("id" || ' ' || "revision", ',' ORDER BY "id") FROM "Shop") AS revisions
  FROM kept.outside`;
