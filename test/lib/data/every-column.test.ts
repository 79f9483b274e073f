import Sqlite from 'better-sqlite3';
import { expect, test, vi } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { demoShop } from '@/lib/demo/demo-shop';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { doubtNow } from '@/lib/views/bench-states';
import { unreadIn } from '@/shared/shop-file/unread';
import { Day } from '@/shared/time/day';
import { runs } from '@/test/runs';
import { parsedOrThrow } from './any-shop-file';
import { CLOCK, freshDatabase } from './fresh-database';

/*
 * Garbage in each column of each table, one at a time: the shop is read all the same, what was lost is told, and no bench
 * opens.
 */

type Column = { table: string; name: string; type: string; pk: number };

/** What each kind of column cannot hold; and nothing at all. */
const garbageFor = ({ type }: Column): unknown[] => [
  type === 'TEXT' || type === 'BLOB' ? Buffer.from([0x7a, 0x00, 0xff]) : 'garbage',
  type === 'BLOB' ? 'garbage' : type === 'TEXT' ? '\u0007' : type === 'JSONB' ? '[1,' : 0.5,
  null,
];

async function stored() {
  await freshDatabase();
  const outcome = await importShopFile(
    { commandId: newId(), file: parsedOrThrow(demoShop(Day.parse('2026-03-31'))), into: { isDemo: false } },
    CLOCK,
  );
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  const raw = new Sqlite((await database()).file);
  const triggers = raw.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all();
  for (const name of triggers) raw.exec(`DROP TRIGGER "${name}"`);
  raw.pragma('ignore_check_constraints = ON');
  raw.pragma('foreign_keys = OFF');
  raw.unsafeMode();
  return { shopId: outcome.value.shopId, raw };
}

function columnsOf(raw: Sqlite.Database): Column[] {
  const tables = raw
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE '\\_%' ESCAPE '\\' AND name <> 'RowSeal'",
    )
    .pluck()
    .all() as string[];
  return tables.flatMap((table) => {
    const columns = raw.prepare('SELECT name, type, pk FROM pragma_table_info(?)').all(table) as Omit<
      Column,
      'table'
    >[];
    return columns.map((column) => ({ table, ...column }));
  });
}

const statesIn = async (shopId: string) => keepOut(shopOfFile(await shopFileOf(shopId)), CLOCK.now());

test('garbage in any column of any table costs one thing, is told, and opens no bench', {
  timeout: 900_000,
}, async () => {
  const silent = vi.spyOn(console, 'error').mockImplementation(() => {});
  const { shopId, raw } = await stored();
  const sound = JSON.stringify(await shopFileOf(shopId));
  const before = await statesIn(shopId);
  // From now on a column that must hold something may hold nothing.
  raw.exec(
    `PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, ' NOT NULL', ''); PRAGMA writable_schema = RESET`,
  );
  const [step, wrong] = [runs(120, 1), [] as string[]];
  let tried = 0;
  for (const [number, column] of columnsOf(raw).entries()) {
    const { table, name, pk } = column;
    const row = raw.prepare(`SELECT rowid AS "the row", * FROM "${table}" LIMIT 1`).get() as Record<string, unknown>;
    if (!row || (table === 'Shop' && name === 'id')) continue;
    for (const [kind, garbage] of garbageFor(column).entries()) {
      if ((number + kind) % step !== 0) continue;
      const set = raw.prepare(`UPDATE OR IGNORE "${table}" SET "${name}" = ? WHERE rowid = ?`);
      try {
        set.run(garbage, row['the row']);
      } catch {
        // A column that must hold something refuses nothing at all.
        continue;
      }
      tried += 1;
      const what = `${table}.${name}: ${String(garbage)}`;
      try {
        const file = await shopFileOf(shopId);
        const isTold =
          JSON.stringify(file) === sound || unreadIn(file).length > 0 || (await doubtNow(CLOCK, shopId)) !== null;
        if (!isTold) wrong.push(`${what}: not told`);
        // What belongs to another shop, or to another thing, is found by its seal alone.
        const states = pk > 0 ? [] : await statesIn(shopId);
        for (const { bench, state } of states) {
          const was = before.find((one) => one.bench.id === bench.id);
          if (state === 'open' && was?.state !== 'open') wrong.push(`${what}: ${bench.id} opens`);
        }
      } catch (error) {
        wrong.push(`${what}: ${(error as Error).message.split('\n').at(-1)?.slice(0, 200)}`);
      }
      set.run(row[name], row['the row']);
    }
  }
  raw.close();
  silent.mockRestore();
  expect(wrong).toEqual([]);
  expect(tried).toBeGreaterThan(runs(4, 600));
});
