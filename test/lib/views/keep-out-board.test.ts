import { closeSync, openSync, readFileSync, rmSync, truncateSync, writeFileSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { beforeEach, expect, test, vi } from 'vitest';
import { type Clock, clockPinnedTo } from '@/lib/clock';
import { makeSharedLink } from '@/lib/commands/make-shared-link';
import { revokeSharedLink } from '@/lib/commands/revoke-shared-link';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { checkRecords } from '@/lib/data/check-records';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { workingLinks } from '@/lib/data/shared-links';
import { floorBoard } from '@/lib/views/keep-out-board';
import { Day } from '@/shared/time/day';
import { runs } from '@/test/runs';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

/** Sprayed at 8 on the morning of the tests' clock, which shows 9 o'clock UTC: closed until half past eight in the evening. */
const SPRAYED = { startedAt: '2026-03-31T07:30:00Z', endedAt: '2026-03-31T08:00:00Z' };

beforeEach(() => {
  // What cannot be read is told to the owner's log, and that is expected here.
  const silent = vi.spyOn(console, 'error').mockImplementation(() => {});
  return () => silent.mockRestore();
});

/** A shop with a link to its board. */
async function shopWithBoard(application: object = SPRAYED, planned = '2026-03-03') {
  const shopId = await smallShop({
    ...SMALL,
    programs: SMALL.programs.map((one) => ({ ...one, startsOn: Day.parse(planned) })),
    applications: SMALL.applications.map((one) => ({ ...one, ...application })),
  });
  await makeSharedLink({ commandId: newId(), shopId, kind: 'board' }, CLOCK);
  const [link] = await workingLinks(shopId);
  if (!link) throw new Error('there is no link');
  return { shopId, link, file: (await database()).file, board: (at: Clock = CLOCK) => floorBoard(at, link.token) };
}

/** The state of the one bench; or why there is none: the link is off, or everything is doubted. */
async function shown(board: () => ReturnType<typeof floorBoard>): Promise<string> {
  const seen = await board();
  if (seen === null) return 'no such board';
  if (seen.doubt !== null) return seen.doubt;
  return seen.benches.map(({ state }) => state).join() || 'no bench';
}

test('a bench reads keep out until when with weekday and date, and later that its interval elapsed, as recorded', async () => {
  const { board } = await shopWithBoard();
  expect((await board())?.benches).toMatchObject([
    { name: 'Bench', state: 'closed', word: 'KEEP OUT', when: 'until Tue 31 March 16:30', left: '11 h 30 min left' },
  ]);
  const last = await board(clockPinnedTo('2026-03-31T20:29:59.999Z'));
  expect(last?.benches).toMatchObject([{ state: 'closed', left: '1 min left' }]);
  const after = await board(clockPinnedTo('2026-03-31T20:30:00Z'));
  expect(after?.benches).toMatchObject([
    { state: 'open', word: 'Interval elapsed', when: 'Tue 31 March 16:30, as recorded', left: null },
  ]);
  expect(JSON.stringify(after)).not.toMatch(/\bsafe\b/i);
});

test('a running application, and a planned one whose time has come, keep people out from their start', async () => {
  const running = await shopWithBoard({ startedAt: '2026-03-31T08:59:00Z', endedAt: null });
  expect((await running.board())?.benches).toMatchObject([{ word: 'KEEP OUT (not known)', when: null, left: null }]);
  const { board } = await shopWithBoard(
    { startedAt: '2026-02-24T22:30:00Z', endedAt: '2026-02-24T23:00:00Z' },
    '2026-04-07',
  );
  const planned = (time: string) => shown(() => board(clockPinnedTo(time)));
  // The only turn of the shop's program is at 17:30 in New York.
  expect(await planned('2026-04-07T21:29:59Z')).toBe('open');
  expect(await planned('2026-04-07T21:30:00Z')).toBe('unknown');
});

test('in the night of a clock change the offset stands beside the time', async () => {
  const { board } = await shopWithBoard({ startedAt: '2026-10-31T17:00:00Z', endedAt: '2026-10-31T17:31:00Z' });
  const night = await board(clockPinnedTo('2026-11-01T04:00:00Z'));
  expect(night?.benches[0]?.when).toBe('until Sun 1 November 01:01 (UTC-05:00)');
});

test('the board of a link tells states and nothing else, and none once it is revoked', async () => {
  const { board, shopId, link } = await shopWithBoard();
  const told = JSON.stringify(await board());
  for (const secret of ['Soap', 'Sulfur', 'Recipe', 'Ferns', '74.00', '12 mL', link.token])
    expect(told).not.toContain(secret);
  await revokeSharedLink({ commandId: newId(), shopId, link: link.id }, CLOCK);
  expect(await board()).toBeNull();
});

/** What the board reads. Every column of these is broken in turn. */
const TABLES = [
  ...['Shop', 'Bench', 'Product', 'Recipe', 'RecipeVersion', 'Ingredient', 'Program', 'ClockMark', 'SharedLink'],
  ...['Application', 'ApplicationVersion', 'ApplicationBench', 'ApplicationProduct'],
];
const GARBAGE = [null, 'garbage', -1, 1.5, 1e300];

/** A raw connection to a database whose guards are taken away, as only somebody who breaks it on purpose would. */
async function unguarded(file: string) {
  await (await database()).close();
  const raw = new Sqlite(file);
  for (const { name } of raw.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").all() as {
    name: string;
  }[]) {
    raw.exec(`DROP TRIGGER "${name}"`);
  }
  raw.unsafeMode(true);
  raw.exec(
    "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, 'NOT NULL', '') WHERE type = 'table'",
  );
  raw.close();
  const broken = new Sqlite(file);
  broken.exec('PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON');
  return broken;
}

test.each(TABLES)('null or garbage in any column of %s never shows a closed bench as open', async (table) => {
  const { board, file } = await shopWithBoard();
  await lookAtClock(CLOCK, true);
  // Found whole when the program started: what breaks afterwards must be noticed all the same.
  await checkRecords();
  const raw = await unguarded(file);
  const columns = raw.prepare(`SELECT name FROM pragma_table_info('${table}')`).pluck().all() as string[];
  expect(columns.length).toBeGreaterThan(1);
  const rows = raw.prepare(`SELECT rowid AS line, * FROM "${table}"`).all() as Record<string, unknown>[];
  expect(rows.length).toBeGreaterThan(0);
  const opened: string[] = [];
  for (const [at, column] of columns.entries()) {
    // In an ordinary run each column meets every second kind of garbage, and its neighbour the others.
    for (const garbage of GARBAGE.filter((_, kind) => (at + kind) % runs(2, 1) === 0)) {
      raw.prepare(`UPDATE OR REPLACE "${table}" SET "${column}" = ? WHERE rowid = ?`).run(garbage, rows[0]?.line);
      // What went wrong on the disk itself changes no date of the file, so its seals are not looked at before a day is over.
      (await database()).watch.accept();
      const state = await shown(board);
      if (!/^(closed|unknown|unreadable|records|clock|no such board)$/.test(state)) {
        opened.push(`${table}.${column} = ${garbage}: ${state}`);
      }
      raw.prepare(`UPDATE "${table}" SET "${column}" = ? WHERE rowid = ?`).run(rows[0]?.[column], rows[0]?.line);
    }
  }
  expect(await shown(board)).toBe('closed');
  raw.close();
  expect(opened).toEqual([]);
});

test('a database that another program holds keeps people out', async () => {
  const { board, file } = await shopWithBoard();
  await (await database()).close();
  const holder = new Sqlite(file);
  holder.exec('PRAGMA locking_mode = EXCLUSIVE; BEGIN EXCLUSIVE; UPDATE "Shop" SET "revision" = "revision" + 1');
  expect(await shown(board)).toBe('unreadable');
  holder.exec('ROLLBACK');
  holder.close();
  expect(await shown(board)).toBe('closed');
});

test.each([
  { name: 'empty', damage: (file: string) => truncateSync(file, 0) },
  { name: 'cut in half', damage: (file: string) => truncateSync(file, readFileSync(file).length / 2) },
  { name: 'of another kind', damage: (file: string) => writeFileSync(file, 'not a database') },
  { name: 'with its first page overwritten', damage: (file: string) => overwrite(file, 0, 4096) },
  { name: 'with everything after its first page overwritten', damage: (file: string) => overwrite(file, 4096, 1e9) },
])('a database that is $name keeps people out', async ({ damage }) => {
  const { board, file } = await shopWithBoard();
  await (await database()).close();
  damage(file);
  expect(await shown(board)).toBe('unreadable');
});

function overwrite(file: string, from: number, most: number): void {
  const length = Math.min(most, readFileSync(file).length - from);
  const handle = openSync(file, 'r+');
  writeSync(handle, Buffer.alloc(length, 0x5a), 0, length, from);
  closeSync(handle);
}

test('a database that is taken away keeps people out, while it is open and afterwards', async () => {
  const { board, file } = await shopWithBoard();
  expect(await shown(board)).toBe('closed');
  const opened = await database();
  rmSync(file);
  expect(await shown(board)).toBe('unreadable');
  await opened.close();
  expect(await shown(board)).toBe('unreadable');
  process.env.DATA_DIR = join(file, '..', 'nowhere');
  expect(await shown(board)).toBe('unreadable');
});
