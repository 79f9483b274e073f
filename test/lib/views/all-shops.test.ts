import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { shopsHere } from '@/lib/data/shops';
import { allShops } from '@/lib/views/all-shops';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

test('every shop stands in one list with what it has to keep out of, to spray and to order', async () => {
  await smallShop();
  const sprayedLongAgo = SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' as const }));
  const other = { ...SMALL, shop: { ...SMALL.shop, name: 'Another' }, programs: [], applications: sprayedLongAgo };
  expect(
    await importShopFile({ commandId: newId(), file: other as typeof SMALL, into: { isDemo: false } }, CLOCK),
  ).toMatchObject({ ok: true });
  const shops = await allShops(await shopsHere(), CLOCK);
  expect(shops.map(({ name, keepOut, ahead }) => ({ name, keepOut, sprayToday: ahead?.sprayToday }))).toEqual([
    // Nobody knows when its spraying ended.
    { name: 'A shop', keepOut: { benches: 1, out: 1, unknown: 1 }, sprayToday: 0 },
    { name: 'Another', keepOut: { benches: 1, out: 0, unknown: 0 }, sprayToday: 0 },
  ]);
  expect(shops.map(({ clock }) => clock)).toEqual(['05:00', '05:00']);
});

test('damage in one shop keeps out of its own benches alone', async () => {
  await smallShop({ ...SMALL, programs: [], applications: [] });
  expect(
    await importShopFile(
      { commandId: newId(), file: { ...SMALL, programs: [], applications: [] }, into: { isDemo: false } },
      CLOCK,
    ),
  ).toMatchObject({ ok: true });
  const before = await allShops(await shopsHere(), CLOCK);
  expect(before.map(({ keepOut }) => keepOut?.out)).toEqual([0, 0]);
  const { file } = await database();
  const raw = new Sqlite(file);
  raw.prepare(`UPDATE "Product" SET "reiMinutes" = 1 WHERE "id" = 'p' AND "shopId" = ?`).run(before[1]?.id);
  raw.close();
  expect((await allShops(await shopsHere(), CLOCK)).map(({ keepOut }) => keepOut?.unknown)).toEqual([0, 1]);
});
