import { expect, type MockInstance, test, vi } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { drawStock } from '@/lib/commands/draw-stock';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { makeSharedLink } from '@/lib/commands/make-shared-link';
import { recordApplication } from '@/lib/commands/record-application';
import { chainOf } from '@/lib/data/chain-kept';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { planKept } from '@/lib/data/plan-kept';
import { recordVersions } from '@/lib/data/record-versions';
import { recordsOfShop } from '@/lib/data/records-of-file';
import { askThrough } from '@/lib/data/seal-records';
import { workingLinks } from '@/lib/data/shared-links';
import { shopFromRows } from '@/lib/data/shop-rows';
import { shopOf, shopSoon, snapshotOf } from '@/lib/data/snapshot';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { WEEKS_AHEAD } from '@/lib/engine/ahead/weeks-ahead';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { floorBoard } from '@/lib/views/keep-out-board';
import { stock } from '@/shared/quantity/amounts';
import { instantOf } from '@/shared/time/instant';
import { shopWithRecords } from '../../bench/long-history';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK, changedElsewhere, freshDatabase } from '../data/fresh-database';

/*
 * A shop with many records is read, checked and planned in parts: others are answered in between, and the board keeps people
 * out until it is read. What comes of it is the same as at once.
 */

const RECORDS = 90;
const FILE = parsedOrThrow(shopWithRecords({ products: 101, programs: 6, benches: 4 }, RECORDS));

async function largeShop(): Promise<string> {
  await freshDatabase();
  const outcome = await importShopFile({ commandId: newId(), file: FILE, into: { isDemo: false } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value.shopId;
}

/** How many turns others got until some work was done. */
async function turnsDuring(work: Promise<unknown>): Promise<number> {
  let [turns, isOver] = [0, false];
  const over = work.finally(() => {
    isOver = true;
  });
  while (!isOver) {
    turns += 1;
    await new Promise((resume) => setImmediate(resume));
  }
  await over;
  return turns;
}

const at = (minute: number) => instantOf(Date.UTC(2026, 2, 31, 7, minute));

async function record(shopId: string): Promise<void> {
  const spraying = { recipe: 'r0', benches: ['b0'], startedAt: at(0), endedAt: at(30) };
  expect(await recordApplication({ commandId: newId(), shopId, ...spraying }, CLOCK)).toMatchObject({ ok: true });
}

async function draw(shopId: string): Promise<void> {
  const drawing = { commandId: newId(), shopId, lot: 'l0', place: 0, amount: stock(1_000), drawnAt: null };
  expect(await drawStock(drawing, CLOCK)).toMatchObject({ ok: true });
}

/** A record that was amended, and the amendment confirmed: two more lines of the chain. */
async function withdraw(shopId: string, application: string): Promise<void> {
  const amended = { shopId, application, change: { withdrawn: true }, reason: 'entered in error' };
  expect(await amendApplication({ commandId: newId(), ...amended }, CLOCK)).toMatchObject({ ok: true });
  const confirmed = { shopId, application, version: 2, reason: 'asked' };
  expect(await confirmAmendment({ commandId: newId(), ...confirmed }, CLOCK)).toMatchObject({ ok: true });
}

test('it is read and checked in parts, and others go on in between', async () => {
  const shopId = await largeShop();
  // Of each part of 40 records there are several turns.
  expect(await turnsDuring(snapshotOf(shopId))).toBeGreaterThan(RECORDS / 10);
  expect(await turnsDuring(chainOf(shopId))).toBeGreaterThan(RECORDS / 10);
  const shop = await shopOf(shopId);
  const today = CLOCK.today(shop.zone);
  // Every rule has a turn of its own.
  expect(await turnsDuring(planKept(shop, today))).toBeGreaterThan(18);
});

test('what is read in parts is what is read at once', async () => {
  const shopId = await largeShop();
  // One that still keeps people out.
  await record(shopId);
  const { applications } = await shopOf(shopId);
  await withdraw(shopId, applications.at(-1)?.id ?? '');
  // Nothing that is kept counts after a change by somebody else.
  await changedElsewhere(`UPDATE "Shop" SET "revision" = "revision" + 1`);
  const { file, shop, versions } = await snapshotOf(shopId);
  const { reader } = await database();
  const [whole, checked] = await reader.$transaction(async (rows) => [
    await shopFromRows(rows, shopId),
    await recordsOfShop(askThrough(rows), shopId),
  ]);
  expect(file).toEqual(whole);
  expect(shop).toEqual(shopOfFile(file));
  expect(versions).toEqual(await recordVersions(shopId));
  const today = CLOCK.today(shop.zone);
  expect((await planKept(shop, today)).flags).toEqual(planAhead(shop, today, WEEKS_AHEAD).flags);
  expect(await chainOf(shopId)).toMatchObject({ seals: checked.seals, faults: [] });
});

/** Have something done around the next reading in parts. */
async function aroundReading(work: (read: () => Promise<unknown>) => Promise<unknown>): Promise<void> {
  const reader = await (await database()).longReader();
  const original = reader.$transaction.bind(reader) as (...given: unknown[]) => Promise<unknown>;
  const spied = vi.spyOn(reader, '$transaction') as unknown as MockInstance<typeof original>;
  spied.mockImplementationOnce((...given) => work(() => original(...given)));
}

test('while it is read for the first time, every bench is kept out of, by its name', async () => {
  const shopId = await largeShop();
  await makeSharedLink({ commandId: newId(), shopId, kind: 'board' }, CLOCK);
  const [link] = await workingLinks(shopId);
  const board = () => floorBoard(CLOCK, link?.token ?? '');
  let go: (value?: unknown) => void = () => {};
  const shown = new Promise((resolve) => {
    go = resolve;
  });
  await aroundReading(async (read) => {
    await shown;
    return read();
  });
  const first = await board();
  go();
  expect(first).toMatchObject({ doubt: 'reading', shop: FILE.shop.name });
  const known = first?.benches.map(({ name, state }) => [name, state]);
  expect(known).toEqual(FILE.benches.map(({ name }) => [name, 'unknown']));
  await snapshotOf(shopId);
  expect(await board()).toMatchObject({ doubt: null, shop: FILE.shop.name });
});

test('whoever asks while it is read is told of what was recorded meanwhile', async () => {
  const shopId = await largeShop();
  await snapshotOf(shopId);
  await draw(shopId);
  await aroundReading(async (read) => {
    const before = await read();
    await record(shopId);
    return before;
  });
  const shop = await shopSoon(shopId);
  // A machine that is too busy to read it again in time gives nothing.
  if (shop !== null) expect(shop.applications.length).toBe(RECORDS + 1);
  expect((await shopOf(shopId)).applications.length).toBe(RECORDS + 1);
});
