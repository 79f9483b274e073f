import SQLite from 'better-sqlite3';
import { beforeEach, expect, test, vi } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { recordApplication } from '@/lib/commands/record-application';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { versionsIn } from '@/lib/data/record-versions';
import { shopFromRows } from '@/lib/data/shop-rows';
import { shopFileOf } from '@/lib/data/snapshot';
import { instantOf } from '@/shared/time/instant';
import { smallShop } from '../commands/small-shop';
import { CLOCK } from './fresh-database';

/* Records that were read once and have not changed since are not read again. */

vi.mock('@/lib/data/record-versions', async (original) => {
  const module = await original<typeof import('@/lib/data/record-versions')>();
  return { ...module, versionsIn: vi.fn(module.versionsIn) };
});

const reading = vi.mocked(versionsIn);
beforeEach(() => {
  reading.mockClear();
});

/** Of which records versions were read since the last look: null for all. */
function read() {
  const asked = reading.mock.calls.map(([, , only]) => only ?? null);
  reading.mockClear();
  return asked;
}

/** The shop as its rows tell it, with nothing kept. */
async function fromRows(shopId: string) {
  const { reader } = await database();
  const file = await reader.$transaction((rows) => shopFromRows(rows, shopId));
  reading.mockClear();
  return file;
}

async function record(shopId: string, hour: number): Promise<string> {
  const at = (minute: number) => instantOf(Date.UTC(2026, 2, 30, hour, minute));
  const spraying = { recipe: 'r', benches: ['b'], startedAt: at(0), endedAt: at(30) };
  const outcome = await recordApplication({ commandId: newId(), shopId, ...spraying }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  reading.mockClear();
  return outcome.value.application;
}

test('of records that are kept, only those are read that somebody has added or amended', async () => {
  const shopId = await smallShop();
  reading.mockClear();
  await shopFileOf(shopId);
  expect(read()).toEqual([null]);
  const added = await record(shopId, 8);
  expect(await shopFileOf(shopId)).toEqual(await fromRows(shopId));
  await record(shopId, 9);
  const file = await shopFileOf(shopId);
  expect(read()).toEqual([[file.applications.at(-1)?.id]]);
  const change = { by: 'Sam' };
  const amendment = { commandId: newId(), shopId, application: added, change, reason: 'who it was' };
  expect(await amendApplication(amendment, CLOCK)).toMatchObject({ ok: true });
  reading.mockClear();
  expect((await shopFileOf(shopId)).applications.find(({ id }) => id === added)?.by).toBe('Sam');
  expect(read()).toEqual([[added]]);
  expect(await shopFileOf(shopId)).toEqual(await fromRows(shopId));
});

test('all are read anew once something else has changed the file', async () => {
  const shopId = await smallShop();
  await shopFileOf(shopId);
  reading.mockClear();
  const other = new SQLite((await database()).file);
  other.exec(`DROP TRIGGER "ApplicationVersion_no_update"; UPDATE ApplicationVersion SET sprayedBy = 'Nobody'`);
  other.close();
  expect((await shopFileOf(shopId)).applications[0]?.by).toBe('Nobody');
  expect(read()).toEqual([null]);
});
