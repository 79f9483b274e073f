import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { changeShop } from '@/lib/commands/change-shop';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { knowSeals, rowFaults, rowSeal, sealAll } from '@/lib/data/row-seals';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from './fresh-database';

const fileHere = () => join(process.env.DATA_DIR ?? '', 'shop.db');

/** What somebody else's connection finds of the rows and their seals. */
function faultsHere() {
  const raw = new Sqlite(fileHere(), { readonly: true });
  knowSeals(raw);
  try {
    return rowFaults(raw);
  } finally {
    raw.close();
  }
}

function raw(statement: string): void {
  const other = new Sqlite(fileHere());
  other.exec(statement);
  other.close();
}

const priceOf = (price: string) => ({
  offers: [{ ...SMALL.offers[0], id: 'o', supplier: 's', product: 'p', pack: '500 mL', price }],
});

test('every command leaves each row with its seal: new ones, changed ones, and none for what is gone', async () => {
  const shopId = await smallShop();
  expect(faultsHere()).toEqual([]);
  const change = (part: object) => changeShop({ commandId: newId(), shopId, part }, CLOCK);
  expect(await change(priceOf('41.00'))).toMatchObject({ ok: true });
  expect(await change({ products: [{ ...SMALL.products[0], label: { reiHours: 4 } }] })).toMatchObject({ ok: true });
  expect(await change({ benches: [{ ...SMALL.benches[0], plants: [] }] })).toMatchObject({ ok: true });
  expect(faultsHere()).toEqual([]);
});

test('a change of a damaged row does not make the damage good; entering again what it said before does', async () => {
  const shopId = await smallShop();
  raw('UPDATE "Product" SET "reiMinutes" = 60, "reiHours" = 1 WHERE "id" = \'p\'');
  const faults = [{ wrong: 'changed', shop: shopId, table: 'Product', row: 'p' }];
  expect(faultsHere()).toEqual(faults);
  const { writer } = await database();
  const where = { shopId_id: { shopId, id: 'p' } };
  await writer.product.update({ where, data: { storage: 'in the shed' } });
  expect(faultsHere()).toEqual(faults);
  await writer.product.update({ where, data: { storage: null, reiMinutes: 750, reiHours: 12.5 } });
  expect(faultsHere()).toEqual([]);
});

test('a migration seals every row anew, but for those that were damaged before it', async () => {
  const shopId = await smallShop();
  await (await database()).close();
  raw(`UPDATE "Bench" SET "coverage" = 0.5; ALTER TABLE "Bench" ADD COLUMN "later" TEXT DEFAULT 'x'`);
  const before = [{ wrong: 'changed' as const, shop: shopId, table: 'Bench', row: 'b' }];
  const other = new Sqlite(fileHere());
  sealAll(other, before);
  other.close();
  expect(faultsHere()).toEqual(before);
});

test('a seal tells apart kinds, columns and tables, and a column that holds nothing counts for nothing', () => {
  const seals = [
    rowSeal('Bench', ['a', 'b'], [1n, null]),
    rowSeal('Bench', ['a', 'b'], [null, 1n]),
    rowSeal('Bench', ['a', 'b'], ['1', null]),
    rowSeal('Bench', ['a', 'b'], [1.5, null]),
    rowSeal('Other', ['a', 'b'], [1n, null]),
    rowSeal('Bench', ['a', 'b'], ['x\nb integer 1', null]),
    rowSeal('Bench', ['a', 'b'], ['x', 1n]),
    rowSeal('Bench', ['a', 'b'], [Buffer.from('1'), null]),
  ];
  expect(new Set(seals).size).toBe(seals.length);
  expect(rowSeal('Bench', ['a', 'b', 'later'], [1n, null, null])).toBe(seals[0]);
});
