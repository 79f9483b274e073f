import { expect, test } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database, type Rows } from '@/lib/data/database';
import { demoShop } from '@/lib/demo/demo-shop';
import { APPEND_ONLY } from '@/prisma/guards.js';
import { Day } from '@/shared/time/day';
import { figure } from '@/test/promises/figure';
import { parsedOrThrow } from './any-shop-file';
import { CLOCK, freshDatabase } from './fresh-database';

async function demoRows(): Promise<{ shopId: string; writer: Rows }> {
  await freshDatabase();
  const file = parsedOrThrow(demoShop(Day.parse('2026-03-31')));
  const outcome = await importShopFile({ commandId: 'import', file, into: { isDemo: true } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return { shopId: outcome.value.shopId, writer: (await database()).writer };
}

test('what only grows is neither changed nor removed, by whichever statement', async () => {
  const { writer } = await demoRows();
  const untouched: string[] = [];
  for (const table of APPEND_ONLY) {
    const [row] = await writer.$queryRawUnsafe<object[]>(`SELECT * FROM "${table}" LIMIT 1`);
    if (!row) untouched.push(table);
    const column = Object.keys(row ?? { shopId: '' })[0];
    if (!row) continue;
    await expect(writer.$executeRawUnsafe(`UPDATE "${table}" SET "${column}" = "${column}"`)).rejects.toThrow();
    await expect(writer.$executeRawUnsafe(`DELETE FROM "${table}"`)).rejects.toThrow();
    const replace = `INSERT OR REPLACE INTO "${table}" SELECT * FROM "${table}" LIMIT 1`;
    await expect(writer.$executeRawUnsafe(replace)).rejects.toThrow();
  }
  // What the demo has none of is guarded all the same, as the next test but one holds.
  expect(untouched).toEqual([
    ...['AmendmentConfirmation', 'EarlierOpening', 'UnderWay'],
    ...['SafetySheet', 'SafetySheetChange', 'AlertSent', 'ClockConfirmation', 'AccessNote'],
  ]);
});

test('the client is refused as raw statements are', async () => {
  const { writer, shopId } = await demoRows();
  await expect(writer.movement.updateMany({ data: { amount: 1n } })).rejects.toThrow();
  await expect(writer.movement.deleteMany({ where: { shopId } })).rejects.toThrow();
  await expect(writer.applicationVersion.updateMany({ data: { endedAt: 1n } })).rejects.toThrow();
  await expect(writer.price.updateMany({ data: { price: 1n } })).rejects.toThrow();
  await expect(writer.command.deleteMany()).rejects.toThrow();
});

test('every table that only grows has both its triggers, and every amount, instant and day its check', async () => {
  await freshDatabase();
  const { reader } = await database();
  const triggers = await reader.$queryRawUnsafe<{ name: string }[]>(
    `SELECT name FROM sqlite_master WHERE type = 'trigger' ORDER BY name`,
  );
  const wanted = APPEND_ONLY.flatMap((table) => [`${table}_no_delete`, `${table}_no_update`]).sort();
  expect(triggers.map(({ name }) => name)).toEqual(wanted);

  const tables = await reader.$queryRawUnsafe<{ name: string; sql: string }[]>(
    `SELECT name, sql FROM sqlite_master WHERE type = 'table' AND name NOT LIKE '\\_%' ESCAPE '\\'`,
  );
  const columns = tables.flatMap(({ name, sql }) => sql.split('\n').map((line) => ({ name, line: line.trim() })));
  const needing = columns.filter(({ line }) => /^"\w+" (BIGINT|INTEGER)|^"\w+On" TEXT/.test(line));
  expect(needing.length).toBeGreaterThan(60);
  expect(needing.filter(({ line }) => !line.includes('CHECK ('))).toEqual([]);
});

test('an amount that is not whole, below nought, or a day that is none is refused by the database itself', async () => {
  const { writer } = await demoRows();
  for (const value of ['-1', '1.5', "'many'"]) {
    await expect(writer.$executeRawUnsafe(`UPDATE "Container" SET "paid" = ${value}`)).rejects.toThrow(/CHECK/);
    await expect(writer.$executeRawUnsafe(`UPDATE "Lot" SET "pack" = ${value}`)).rejects.toThrow(/CHECK/);
    await expect(writer.$executeRawUnsafe(`UPDATE "Program" SET "minutes" = ${value}`)).rejects.toThrow(/CHECK/);
  }
  await expect(writer.$executeRawUnsafe(`UPDATE "Lot" SET "pack" = 0`)).rejects.toThrow(/CHECK/);
  await expect(writer.$executeRawUnsafe(`UPDATE "Lot" SET "receivedOn" = '3/31/26'`)).rejects.toThrow(/CHECK/);
  expect(await writer.$executeRawUnsafe(`UPDATE "Container" SET "paid" = 9007199254740993`)).toBeGreaterThan(0);
});

test('a record that is amended again and again keeps every version, and only the last one counts', async () => {
  const { shopId, writer } = await demoRows();
  const record = await writer.applicationVersion.findFirstOrThrow({ where: { shopId } });
  for (const round of [1, 2, 3, 4, 5]) {
    const outcome = await amendApplication(
      {
        ...{ commandId: `amend${round}`, shopId, application: record.applicationId },
        ...{ change: { conditions: `round ${round}` }, reason: `reason ${round}` },
      },
      CLOCK,
    );
    expect(outcome).toEqual({ ok: true, value: { version: round + 1, closedUntil: null } });
  }
  const versions = await writer.applicationVersion.findMany({
    where: { shopId, applicationId: record.applicationId },
    orderBy: { number: 'asc' },
  });
  expect(versions.map(({ reason }) => reason)).toEqual([
    null,
    'reason 1',
    'reason 2',
    'reason 3',
    'reason 4',
    'reason 5',
  ]);
  expect(versions[0]).toMatchObject({ conditions: null, actor: 'owner' });
  figure(36, `${versions.length} of 6 versions of a record kept, none changed`);
});
