import { expect, test } from 'vitest';
import { drawStock } from '@/lib/commands/draw-stock';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { damageOfShop } from '@/lib/data/check-records';
import { database } from '@/lib/data/database';
import { checkWhole } from '@/lib/data/found-damage';
import { newId } from '@/lib/data/new-id';
import { openPostgresql } from '@/lib/data/postgresql/open-postgresql';
import { rowSeal } from '@/lib/data/row-seals';
import { shopFileOf } from '@/lib/data/snapshot';
import { loadDemo } from '@/prisma/load-demo';
import { moveFromPostgresql } from '@/prisma/move';
import { stock } from '@/shared/quantity/amounts';
import { SMALL, smallShop } from '../lib/commands/small-shop';
import { CLOCK, changedElsewhere, freshDatabase, otherProgram } from '../lib/data/fresh-database';
import { askOnce } from '../run/postgresql-databases';

/* What a shop is on PostgreSQL and not on SQLite: seals, guards, other processes, and a server that goes away. */

const ask = (sql: string) => askOnce(process.env.DATABASE_URL ?? '', sql);

test('a new database is sound, and what it holds has the same seals as on SQLite', async () => {
  const folder = await freshDatabase();
  await loadDemo(CLOCK);
  expect(await checkWhole(await database())).toMatchObject({ file: [], rows: [], commands: 1 });
  // Coming into a file, every row is held against its seal by the other program text.
  const digests = await moveFromPostgresql(process.env.DATABASE_URL ?? '', `${folder}/back.db`);
  expect(digests.RowSeal?.rows).toBeGreaterThan(300);
});

test('numbers and texts are sealed as the program writes them', async () => {
  await freshDatabase();
  const sealOf = async (name: string, sql: string, value: string) => {
    const text = `'T' || chr(10) || 'a ${name} ' || ${sql} || chr(10)`;
    const address = process.env.DATABASE_URL ?? '';
    const [row] = await askOnce(address, `SELECT kept.seal(${text}) AS seal FROM (SELECT CAST($1 AS text) AS v) AS x`, [
      value,
    ]);
    return row?.seal;
  };
  for (const number of [0.1, 0.000001, 1.5e-7, 123456789012345680000, 1e21, 0, 1 / 3, 5, 1e300, 5e-324]) {
    expect(await sealOf('real', 'kept.decimals(CAST(v AS float8))', String(number))).toBe(
      rowSeal('T', ['a'], [number]),
    );
  }
  for (const text of ['', 'plain', 'Grünlilie', '🌱 two 🌿 signs', 'a\nb', '‱']) {
    expect(await sealOf('text', `kept.signs(v) || ' ' || v`, text)).toBe(rowSeal('T', ['a'], [text]));
  }
});

test('what another program changes is found at once, and until it is put right people keep out', async () => {
  const shopId = await smallShop();
  await checkWhole(await database());
  expect(await damageOfShop(shopId)).toBeNull();
  await changedElsewhere(`UPDATE "Product" SET "reiMinutes" = 60 WHERE "id" = 'p'`);
  expect(await damageOfShop(shopId)).not.toBeNull();
  await checkWhole(await database());
  expect(await damageOfShop(shopId)).toMatch(/Row "p" of Product was changed outside/);
  await changedElsewhere(`UPDATE "Product" SET "reiMinutes" = 750 WHERE "id" = 'p'`);
  await checkWhole(await database());
  expect(await damageOfShop(shopId)).toBeNull();
});

test.each([
  ['a record that was changed', `UPDATE "ApplicationVersion" SET "startedAt" = "startedAt" + 1`, /record/i],
  ['a row that is gone', 'DELETE FROM "PlantGroup"', /gone/],
  [
    'a row that came from elsewhere',
    `INSERT INTO "Supplier" SELECT * FROM (SELECT * FROM "Supplier" LIMIT 1) s`,
    /not written by this program/,
  ],
])('%s is found', async (_, sql, said) => {
  const shopId = await smallShop();
  const other = await otherProgram();
  await other.exec('SET session_replication_role = replica; SET "x.y" = \'\'');
  await other.exec(
    sql.replace(
      'SELECT * FROM "Supplier" LIMIT 1',
      `SELECT "shopId", 'other' AS id, 9 AS position, "name", "freightPerOrder", "freeFreightOver", "minimumOrder", "workingDays", "archivedAt", "closedOn" FROM "Supplier" LIMIT 1`,
    ),
  );
  await other.close();
  await checkWhole(await database());
  expect(await damageOfShop(shopId)).toMatch(said);
});

test('guards that were switched off are found', async () => {
  const shopId = await smallShop();
  await changedElsewhere('ALTER TABLE "Bench" DISABLE TRIGGER USER');
  await checkWhole(await database());
  expect(await damageOfShop(shopId)).toBe('The guards of Bench are missing or switched off.');
});

test('a command of another process is seen at once, and draws never take more than there is', async () => {
  const shopId = await smallShop();
  const other = await openPostgresql(process.env.DATABASE_URL ?? '');
  await checkWhole(await database());
  await shopFileOf(shopId);
  await other.writer.$transaction(async (rows) => {
    await rows.shop.update({ where: { id: shopId }, data: { revision: { increment: 1 }, name: 'Renamed there' } });
  });
  expect((await shopFileOf(shopId)).shop.name).toBe('Renamed there');
  expect(await damageOfShop(shopId)).toBeNull();
  await Promise.all([other.writer, other.reader].map((client) => client.$disconnect()));
});

test('while the server does not answer every bench is kept out of, and afterwards it goes on by itself', async () => {
  const shopId = await smallShop();
  expect((await shopFileOf(shopId)).benches).toHaveLength(1);
  const { pathname } = new URL(process.env.DATABASE_URL ?? '');
  const admin = (process.env.DATABASE_URL ?? '').replace(pathname, '/postgres');
  await askOnce(admin, `ALTER DATABASE "${pathname.slice(1)}" ALLOW_CONNECTIONS false`);
  await askOnce(admin, `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '${pathname.slice(1)}'`);
  const drawing = { commandId: newId(), shopId, lot: 'l', place: 0, amount: stock(1_000), drawnAt: null };
  const refused = await drawStock(drawing, CLOCK);
  expect(refused).toMatchObject({ ok: false, refusal: { code: 'not-writable' } });
  expect(JSON.stringify(refused)).toMatch(/does not answer.*keep out of every bench/);
  await expect(shopFileOf(shopId)).rejects.toThrow();
  await askOnce(admin, `ALTER DATABASE "${pathname.slice(1)}" ALLOW_CONNECTIONS true`);
  expect(await drawStock(drawing, CLOCK)).toMatchObject({ ok: true });
  expect(await drawStock(drawing, CLOCK)).toMatchObject({ ok: true });
  expect((await shopFileOf(shopId)).lots.find(({ id }) => id === 'l')?.remaining).toBe('499 mL');
});

test('an id of a command is good for one command, however many processes are asked at once', async () => {
  await freshDatabase();
  const commandId = newId();
  const bring = () => importShopFile({ commandId, file: SMALL, into: { isDemo: false } }, CLOCK);
  const outcomes = await Promise.all([bring(), bring(), bring()]);
  expect(new Set(outcomes.map((outcome) => outcome.ok && outcome.value.shopId)).size).toBe(1);
  expect(await ask('SELECT count(*)::int AS shops FROM "Shop"')).toEqual([{ shops: 1 }]);
});
