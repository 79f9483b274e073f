import { expect, test } from 'vitest';
import { drawStock } from '@/lib/commands/draw-stock';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database } from '@/lib/data/database';
import { fingerprint } from '@/lib/data/fingerprint';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { stock } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK, freshDatabase } from '../data/fresh-database';
import { lotOf, SMALL, smallShop, today } from './small-shop';

const importInto = async (shopId: string, file: ShopFile, commandId = newId(), seen?: string) =>
  importShopFile(
    { commandId, file, into: { shopId, fingerprint: seen ?? fingerprint(await shopFileOf(shopId)) } },
    CLOCK,
  );

const changed = (file: ShopFile, change: (file: ShopFile) => void): ShopFile => {
  const copy = structuredClone(file);
  change(copy);
  return parsedOrThrow(copy);
};

/** Every row of every table, to see that nothing moved. */
async function everything(): Promise<string> {
  const { reader } = await database();
  const tables = await reader.$queryRawUnsafe<{ name: string }[]>(
    `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE '\\_%' ESCAPE '\\' ORDER BY name`,
  );
  const rows = await Promise.all(tables.map(({ name }) => reader.$queryRawUnsafe(`SELECT * FROM "${name}"`)));
  return JSON.stringify(rows, (_, value) => (typeof value === 'bigint' ? String(value) : value));
}

test('importing what was just exported changes nothing but the list of commands', async () => {
  const shopId = await smallShop();
  const before = await shopFileOf(shopId);
  const outcome = await importInto(shopId, before);
  expect(outcome).toEqual({ ok: true, value: { shopId, added: 0, changed: 0 } });
  expect(await shopFileOf(shopId)).toEqual(before);
});

test('what a file changes is changed, what it adds comes after, and what it leaves out stays', async () => {
  const shopId = await smallShop();
  const file = changed(await shopFileOf(shopId), (shop) => {
    shop.shop.safetyDays = 9;
    Object.assign(shop.products[0] ?? {}, {
      name: 'Soft soap',
      contents: [{ substance: 'x', amount: 1, basis: 'g/L' }],
    });
    Object.assign(shop.benches[0] ?? {}, { plants: [{ name: 'Palms', pot: null, count: 1, mlPerPlant: null }] });
    Object.assign(shop.programs[0] ?? {}, { repeat: 'FREQ=DAILY' });
    shop.suppliers.unshift({ ...(shop.suppliers[0] ?? never()), id: 'new' });
    shop.applications = [];
  });
  const outcome = await importInto(shopId, file);
  expect(outcome).toEqual({ ok: true, value: { shopId, added: 1, changed: 3 } });
  const now = await shopFileOf(shopId);
  expect(now.suppliers.map(({ id }) => id)).toEqual(['s', 'new']);
  expect({ ...now, suppliers: [], applications: [] }).toEqual({ ...file, suppliers: [], applications: [] });
  expect(now.applications).toEqual((await shopFileOf(shopId)).applications);
  expect(now.applications).toHaveLength(1);
});

test('a new price is a new line of the history, and a changed recipe a new version', async () => {
  const shopId = await smallShop();
  const file = changed(await shopFileOf(shopId), (shop) => {
    Object.assign(shop.offers[0] ?? {}, { price: '45.00', breaks: [{ atLeast: 4, price: '41.00' }] });
    Object.assign(shop.recipes[0] ?? {}, { name: 'Stronger' });
  });
  await importInto(shopId, file);
  await importInto(
    shopId,
    changed(file, (shop) => Object.assign(shop.offers[0] ?? {}, { leadDays: 4 })),
  );
  const { reader } = await database();
  const prices = await reader.price.findMany({ where: { shopId }, orderBy: { number: 'asc' } });
  expect(prices.map(({ number, price }) => [number, price])).toEqual([
    [1, 40_000_000n],
    [2, 45_000_000n],
  ]);
  const versions = await reader.recipeVersion.findMany({ where: { shopId }, orderBy: { number: 'asc' } });
  expect(versions.map(({ name }) => name)).toEqual(['Recipe', 'Stronger']);
  const record = await reader.applicationVersion.findFirstOrThrow({ where: { shopId } });
  expect(record.recipeNumber).toBe(1);
});

test('what a file says is left becomes a count, also for a container that stands apart', async () => {
  const shopId = await smallShop();
  await drawStock({ commandId: '1', shopId, lot: 'm', place: 0, amount: stock(1_000), drawnAt: today(8) }, CLOCK);
  const file = changed(await shopFileOf(shopId), ({ lots }) => {
    for (const lot of lots) if (lot.count === 1) Object.assign(lot, { remaining: '250 mL', expiresOn: '2027-01-01' });
  });
  expect(await importInto(shopId, file)).toMatchObject({ ok: true, value: { added: 0, changed: 2 } });
  expect(await lotOf(shopId, 'm~1')).toMatchObject({ remaining: '250 mL', expiresOn: '2027-01-01' });
  expect(await lotOf(shopId, 'm')).toMatchObject({ count: 2, expiresOn: null });
  const { reader } = await database();
  const counts = await reader.movement.findMany({ where: { shopId, kind: 'counted' }, orderBy: { number: 'asc' } });
  expect(counts.map(({ lotId, amount, reason }) => [lotId, amount, reason])).toEqual([
    ['l', 250_000n, 'counted by an import'],
    ['m', 249_000n, 'counted by an import'],
  ]);
});

test('a file that would rewrite the books is refused with every fault, and nothing changes', async () => {
  const shopId = await smallShop();
  const file = changed(await shopFileOf(shopId), (shop) => {
    shop.shop.name = 'Another name';
    Object.assign(shop.lots[0] ?? {}, { paid: '1.00' });
    Object.assign(shop.applications[0] ?? {}, { endedAt: '2026-02-24T23:00:00Z' });
  });
  const before = await everything();
  const outcome = await importInto(shopId, file);
  expect(outcome.ok).toBe(false);
  if (outcome.ok || outcome.refusal.code !== 'faults') throw new Error('the file was not refused');
  expect(outcome.refusal.faults.map(({ path }) => path)).toEqual(['lots[0].paid', 'applications[0].endedAt']);
  expect(await everything()).toBe(before);
});

test('a shop that changed since the preview is not imported into', async () => {
  const shopId = await smallShop();
  const file = await shopFileOf(shopId);
  const seen = fingerprint(file);
  await drawStock({ commandId: '1', shopId, lot: 'l', place: 0, amount: stock(1), drawnAt: today(8) }, CLOCK);
  const before = await everything();
  expect(await importInto(shopId, file, 'x', seen)).toEqual({
    ok: false,
    refusal: { code: 'shop-changed-since-preview' },
  });
  expect(await everything()).toBe(before);
  expect(await importInto('nowhere', file, 'y', seen)).toMatchObject({ ok: false, refusal: { code: 'not-found' } });
});

test('an import that breaks on its very last row leaves nothing of itself', async () => {
  await freshDatabase();
  const { writer } = await database();
  await writer.$executeRawUnsafe(`CREATE TRIGGER "planted" BEFORE INSERT ON "ApplicationProduct"
    BEGIN SELECT RAISE(ABORT, 'planted'); END`);
  const before = await everything();
  const sent = importShopFile({ commandId: 'x', file: SMALL, into: { isDemo: false } }, CLOCK);
  await expect(sent).rejects.toThrow();
  expect(await everything()).toBe(before);
  await writer.$executeRawUnsafe(`DROP TRIGGER "planted"`);
  const again = await importShopFile({ commandId: 'x', file: SMALL, into: { isDemo: false } }, CLOCK);
  expect(again).toMatchObject({ ok: true, value: { added: 10, changed: 0 } });
  expect(await importShopFile({ commandId: 'x', file: SMALL, into: { isDemo: false } }, CLOCK)).toEqual(again);
});

test('two shops in one database with the same ids in them stay apart', async () => {
  const one = await smallShop();
  const second = await importShopFile({ commandId: 'two', file: SMALL, into: { isDemo: true } }, CLOCK);
  if (!second.ok) throw new Error('a second shop was refused');
  const two = second.value.shopId;
  await drawStock({ commandId: '1', shopId: two, lot: 'l', place: 0, amount: stock(1_000), drawnAt: today(8) }, CLOCK);
  expect((await lotOf(one, 'l')).remaining).toBe(null);
  expect((await lotOf(two, 'l')).remaining).toBe('499 mL');
});

function never(): never {
  throw new Error('nothing there');
}
