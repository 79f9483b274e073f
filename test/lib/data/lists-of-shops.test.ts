import SQLite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { database } from '@/lib/data/database';
import { shopsHere } from '@/lib/data/shops';
import { recordsAreStray } from '@/lib/data/stray-records';
import { smallShop } from '../commands/small-shop';

test('the list of shops is read once for as long as no shop comes or changes', async () => {
  await smallShop();
  const before = await shopsHere();
  expect(await shopsHere()).toBe(before);
  // In a database of its own.
  const other = await smallShop();
  expect((await shopsHere()).map(({ id }) => id)).toEqual([other]);
});

test('a shop that another process has renamed has its new name at once', async () => {
  const shopId = await smallShop();
  await shopsHere();
  const file = new SQLite((await database()).file);
  file.prepare('UPDATE Shop SET name = ? WHERE id = ?').run('Renamed elsewhere', shopId);
  file.close();
  expect((await shopsHere()).find(({ id }) => id === shopId)?.name).toBe('Renamed elsewhere');
});

test('records that another process has made stray are found at once, and not before', async () => {
  const shopId = await smallShop();
  expect(await recordsAreStray()).toBe(false);
  const file = new SQLite((await database()).file);
  file.pragma('foreign_keys = OFF');
  file.exec('DROP TRIGGER IF EXISTS "ApplicationBench_no_delete"');
  file.prepare('DELETE FROM ApplicationBench WHERE shopId = ?').run(shopId);
  file.close();
  expect(await recordsAreStray()).toBe(true);
});
