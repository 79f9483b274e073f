import { copyFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { type Clock, clockAt } from '@/lib/clock';
import { confirmClock } from '@/lib/commands/confirm-clock';
import { recordApplication } from '@/lib/commands/record-application';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { keptUntil, startWatch } from '@/lib/data/clock-mark';
import { database } from '@/lib/data/database';
import { makeBackup } from '@/lib/data/make-backup';
import { newId } from '@/lib/data/new-id';
import { openOrStop } from '@/lib/data/open-or-stop';
import { bringBack, candidate } from '@/lib/data/restore-backup';
import { markFile } from '@/lib/data/shop-mark.js';
import { shopFileOf } from '@/lib/data/snapshot';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates, certaintyNow } from '@/lib/views/bench-states';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from './fresh-database';

const NOW = CLOCK.now();
const HOUR = 3_600_000;

/** A clock that runs on steadily, on a machine that is never switched off. */
const at = (ms: number): Clock =>
  clockAt(
    () => new Date(NOW + ms),
    () => ms,
    'a machine',
  );

/** What a start of the server does: open, look at everything, take over, look at the clock. */
async function start(clock: Clock) {
  await openOrStop();
  await startWatch();
  return lookAtClock(clock, true);
}

async function stateNow(shopId: string, clock: Clock) {
  const shop = shopOfFile(await shopFileOf(shopId));
  const [bench] = benchStates(shop, clock.now(), await certaintyNow(clock, shopId));
  return [bench?.state, bench?.doubt];
}

/** A shop whose bench is open, backed up while it runs; then its bench is sprayed, and the shop stops. */
async function backedUpThenSprayed() {
  const shopId = await smallShop({
    ...SMALL,
    programs: [],
    applications: SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' })),
  });
  const { file } = await database();
  expect(await start(at(0))).toBeNull();
  expect(await stateNow(shopId, at(0))).toEqual(['open', null]);
  const { file: copy } = await makeBackup(file, join(dirname(file), 'backups'), NOW);
  const [startedAt, endedAt] = [at(HOUR / 2).now(), at(HOUR).now()];
  const sprayed = { recipe: 'r', benches: ['b'], startedAt, endedAt };
  expect(await recordApplication({ commandId: newId(), shopId, ...sprayed }, at(HOUR))).toMatchObject({ ok: true });
  expect(await stateNow(shopId, at(2 * HOUR))).toEqual(['closed', null]);
  await (await database()).close();
  return { shopId, file, copy };
}

const confirm = (shopId: string, clock: Clock) =>
  confirmClock({ commandId: newId(), shopId, actor: 'Ada', shownAt: clock.now() }, clock);

test.each<[how: string, putBack: (copy: string, file: string) => unknown]>([
  ['by the command', async (copy, file) => bringBack(await candidate(copy), file, NOW + 2 * HOUR)],
  ['by hand', (copy, file) => copyFileSync(copy, file)],
  [
    'by hand into a folder without a mark',
    (copy, file) => {
      rmSync(markFile(file));
      copyFileSync(copy, file);
    },
  ],
])('a backup put back %s opens no bench until somebody has confirmed what was sprayed since', async (_, putBack) => {
  const { shopId, file, copy } = await backedUpThenSprayed();
  await putBack(copy, file);
  // Nothing of the clock speaks against it: it ran on, and nobody watched it for minutes only.
  const later = at(2 * HOUR);
  expect(await start(later)).toBe('restored');
  expect(await stateNow(shopId, later)).toEqual(['unknown', 'restored']);
  expect(await keptUntil()).toBe(NOW);

  // Starting anew settles nothing, and neither does the night.
  await (await database()).close();
  expect(await start(at(3 * HOUR))).toBe('restored');
  expect(await lookAtClock(at(30 * HOUR))).toBe('restored');
  expect(await stateNow(shopId, at(30 * HOUR))).toEqual(['unknown', 'restored']);
  expect(await keptUntil()).toBe(NOW);

  expect(await confirm(shopId, at(30 * HOUR))).toMatchObject({ ok: true });
  expect(await stateNow(shopId, at(30 * HOUR))).toEqual(['open', null]);
  expect(await keptUntil()).toBeNull();
  await (await database()).close();
  expect(await start(at(30 * HOUR))).toBeNull();
});

test.each([
  `UPDATE "ClockMark" SET "at" = 'soon' WHERE "id" = 'latest'`,
  `UPDATE "ClockMark" SET "at" = 'soon'`,
  `DELETE FROM "ClockMark" WHERE "id" IN ('doubted restored', 'kept until')`,
  `UPDATE "ClockMark" SET "id" = 'garbage' WHERE "id" = 'doubted restored'`,
  `DELETE FROM "ClockMark"`,
])('a confirmed time does not settle what was sprayed after a backup where the marks are damaged: %s', async (sql) => {
  const { shopId, file, copy } = await backedUpThenSprayed();
  copyFileSync(copy, file);
  const later = at(2 * HOUR);
  expect(await start(later)).toBe('restored');
  await (await database()).close();
  const raw = new Sqlite(file);
  raw.pragma('ignore_check_constraints = ON');
  raw.exec(sql);
  raw.close();
  await start(later).catch(() => null);
  expect(await confirm(shopId, later)).toMatchObject({ ok: true });
  expect(await stateNow(shopId, later)).toEqual(['unknown', 'restored']);
  await (await database()).close();
  expect(await start(at(2 * HOUR + 60_000))).toBe('restored');
  expect(await confirm(shopId, at(2 * HOUR + 60_000))).toMatchObject({ ok: true });
  expect(await stateNow(shopId, at(2 * HOUR + 60_000))).toEqual(['open', null]);
});

test('a shop that stops and starts again was not restored', async () => {
  const { shopId } = await backedUpThenSprayed();
  expect(await start(at(2 * HOUR))).toBeNull();
  expect(await stateNow(shopId, at(2 * HOUR))).toEqual(['closed', null]);
});
