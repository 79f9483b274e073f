import SQLite from 'better-sqlite3';
import { beforeEach, expect, test, vi } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { recordApplication } from '@/lib/commands/record-application';
import { chainOf } from '@/lib/data/chain-kept';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { recordsOfFile } from '@/lib/data/records-of-file';
import { sealableIn } from '@/lib/data/sealed-rows';
import { instantOf } from '@/shared/time/instant';
import { smallShop } from '../commands/small-shop';
import { CLOCK } from './fresh-database';

/* Of a chain that was sound, only the lines are checked that were added since. */

vi.mock('@/lib/data/sealed-rows', async (original) => {
  const module = await original<typeof import('@/lib/data/sealed-rows')>();
  return { ...module, sealableIn: vi.fn(module.sealableIn) };
});

const reading = vi.mocked(sealableIn);
beforeEach(() => {
  reading.mockClear();
});

const at = (hour: number, minute = 0) => instantOf(Date.UTC(2026, 2, 30, hour, minute));

async function record(shopId: string, hour: number): Promise<string> {
  const spraying = { recipe: 'r', benches: ['b'], startedAt: at(hour), endedAt: at(hour, 30) };
  const outcome = await recordApplication({ commandId: newId(), shopId, ...spraying }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value.application;
}

/** What a look at the whole file says, and which records `chainOf` read: null for all. */
async function looked(shopId: string) {
  reading.mockClear();
  const { seals, faults } = await chainOf(shopId);
  const read = reading.mock.calls.map(([, { applications }]) => applications);
  const whole = (await recordsOfFile((await database()).file)).find(({ shop }) => shop === shopId);
  expect({ seals, faults }).toEqual({ seals: whole?.seals, faults: whole?.faults });
  return { read, lines: seals.length, faults };
}

test('only what was added is checked, and the answer is that of a look at everything', async () => {
  const shopId = await smallShop();
  const first = await looked(shopId);
  expect(first).toMatchObject({ read: [null], faults: [] });
  expect(await looked(shopId)).toEqual({ ...first, read: [] });
  const added = await record(shopId, 8);
  expect(await looked(shopId)).toEqual({ read: [[added]], lines: first.lines + 1, faults: [] });
  const amended = { shopId, application: added, change: { withdrawn: true }, reason: 'entered in error' };
  expect(await amendApplication({ commandId: newId(), ...amended }, CLOCK)).toMatchObject({ ok: true });
  const other = await record(shopId, 9);
  expect(await looked(shopId)).toEqual({ read: [[added, other]], lines: first.lines + 3, faults: [] });
  const confirmed = { shopId, application: added, version: 2, reason: 'asked' };
  expect(await confirmAmendment({ commandId: newId(), ...confirmed }, CLOCK)).toMatchObject({ ok: true });
  expect(await looked(shopId)).toEqual({ read: [[added]], lines: first.lines + 4, faults: [] });
});

test('everything is checked anew once something else has changed the file, and a fault stays found', async () => {
  const shopId = await smallShop();
  await looked(shopId);
  const other = new SQLite((await database()).file);
  other.exec(`DROP TRIGGER "ApplicationVersion_no_update"; UPDATE ApplicationVersion SET sprayedBy = 'Nobody'`);
  other.close();
  const found = await looked(shopId);
  expect(found.read).toEqual([null]);
  expect(found.faults).toMatchObject([{ wrong: 'changed' }]);
  expect((await looked(shopId)).faults).toEqual(found.faults);
});
