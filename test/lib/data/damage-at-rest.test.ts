import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { database } from '@/lib/data/database';
import { sealAll } from '@/lib/data/row-seals';
import { numberIn } from '@/lib/data/shop-mark.js';
import { type WholeCheck, wholeCheck } from '@/lib/data/whole-check';
import { demoShop } from '@/lib/demo/demo-shop';
import { Day } from '@/shared/time/day';
import { isLong, runs } from '@/test/runs';
import { parsedOrThrow } from './any-shop-file';
import { contentOf, DAMAGES, seeded } from './damages';
import { CLOCK, closeDatabases, freshDatabase } from './fresh-database';
import { withMovements } from './many-movements';

/** The bytes of the demo shop in a closed file, sealed as `npm start` leaves it. */
let demo: Buffer;

afterAll(closeDatabases);
beforeAll(async () => {
  const file = join(await freshDatabase(), 'shop.db');
  const shop = parsedOrThrow(demoShop(Day.parse('2026-03-31')));
  const outcome = await importShopFile({ commandId: 'import', file: shop, into: { isDemo: true } }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  await (await database()).close();
  reseal(file);
  demo = readFileSync(file);
}, 60_000);

async function demoAtRest(): Promise<string> {
  const file = join(await freshDatabase(), 'shop.db');
  writeFileSync(file, demo);
  return file;
}

function reseal(file: string): void {
  const raw = new Sqlite(file);
  sealAll(raw, []);
  raw.close();
}

const isClean = ({ file, rows, records }: WholeCheck): boolean =>
  file.length + rows.length + records.reduce((sum, [, faults]) => sum + faults.length, 0) === 0;

/** Every damage is refused by the start, found by the check, or changes nothing that could be told. */
async function damageAgain(
  sound: string,
  times: number,
  seed: number,
): Promise<{ unnoticed: string[]; harmless: number }> {
  const content = contentOf(sound);
  const file = `${sound}.damaged`;
  const random = seeded(seed);
  const kinds = Object.entries(DAMAGES);
  const unnoticed: string[] = [];
  let harmless = 0;
  for (let round = 0; round < times; round += 1) {
    copyFileSync(sound, file);
    const [kind, damage] = kinds[round % kinds.length] ?? ['', () => ''];
    const what = damage(file, random);
    if (numberIn(readFileSync(file).subarray(0, 100)) === null || !isClean(await wholeCheck(file))) continue;
    if (contentOf(file) === content) harmless += 1;
    else unnoticed.push(`${kind}: ${what}`);
  }
  return { unnoticed, harmless };
}

test('what this program wrote is found whole, with a seal for each row', async () => {
  const file = await demoAtRest();
  expect(await wholeCheck(file)).toMatchObject({ file: [], rows: [], records: [[expect.any(String), []]] });
});

const TIMES = runs(70, 1_000);

test(`${TIMES} damages of a resting file are all found, or change nothing`, { timeout: 3_600_000 }, async () => {
  const { unnoticed, harmless } = await damageAgain(await demoAtRest(), TIMES, 20_261_130);
  expect(unnoticed).toEqual([]);
  // The damages must hit something, or the test says nothing.
  expect(harmless).toBeLessThan(TIMES / 3);
});

test.runIf(isLong)(
  '350 damages of a shop with 50,000 movements are all found, or change nothing',
  { timeout: 3_600_000 },
  async () => {
    const file = await demoAtRest();
    withMovements(file, 50_000);
    expect(isClean(await wholeCheck(file))).toBe(true);
    expect((await damageAgain(file, 350, 4)).unnoticed).toEqual([]);
  },
);

test.each([
  ['an interval', 'UPDATE "Product" SET "reiMinutes" = "reiMinutes" + 60 WHERE "reiMinutes" > 0', 'Product'],
  ['a price', 'UPDATE "Price" SET "price" = "price" + 1000000', 'Price'],
  ['an offer', 'UPDATE "Offer" SET "leadDays" = 9', 'Offer'],
  ['a bench', 'UPDATE "Bench" SET "customers" = 0 WHERE "customers" = 1', 'Bench'],
  ['a recipe', `UPDATE "Ingredient" SET "dose" = '99 mL/gal'`, 'Ingredient'],
  ['a program', 'UPDATE "Program" SET "startMinute" = 5', 'Program'],
  ['the settings', `UPDATE "Shop" SET "timeZone" = 'Europe/Berlin'`, 'Shop'],
  ['a movement', 'UPDATE "Movement" SET "amount" = "amount" + 1', 'Movement'],
  ['a lot', 'UPDATE "Lot" SET "count" = "count" + 1', 'Lot'],
  [
    'a row too many',
    `INSERT INTO "Supplier" ("shopId", "id", "position", "name", "workingDays") SELECT "shopId", 'other', 99, "name", "workingDays" FROM "Supplier" LIMIT 1`,
    'Supplier',
  ],
  ['a row too few', 'DELETE FROM "Rate" WHERE rowid = (SELECT min(rowid) FROM "Rate")', 'Rate'],
  ['a guard too few', 'DROP TRIGGER "Movement_no_delete"', 'sqlite_schema'],
])('raw SQL that changes %s is found, with its table and row', async (_, statement, table) => {
  const file = await demoAtRest();
  const raw = new Sqlite(file);
  raw.pragma('foreign_keys = OFF');
  const guards = raw
    .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = ?")
    .all(table) as { name: string; sql: string }[];
  for (const { name } of guards) raw.exec(`DROP TRIGGER "${name}"`);
  raw.exec(statement);
  for (const { sql } of guards) raw.exec(sql);
  raw.close();
  const { file: lines, rows } = await wholeCheck(file);
  expect(lines).toEqual([]);
  expect(rows).toContainEqual(expect.objectContaining({ table, row: expect.any(String) }));
});
