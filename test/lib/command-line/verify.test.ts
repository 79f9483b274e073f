import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { verify } from '@/lib/command-line/verify';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { checkRecords, damagedRecords } from '@/lib/data/check-records';
import { newId } from '@/lib/data/new-id';
import { doubtNow } from '@/lib/views/bench-states';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

/** Changes a record as somebody with other tools can. */
function moveTheEnd(file: string): void {
  const database = new Database(file);
  database.exec('DROP TRIGGER "ApplicationVersion_no_update"');
  database.exec('UPDATE "ApplicationVersion" SET "startedAt" = "startedAt" - 60000');
  database.close();
}

test('verify names the first bad record, and so does the shop that has the database open', async () => {
  const shopId = await smallShop();
  const folder = process.env.DATA_DIR ?? '';
  const sound = await verify('shop.db', folder);
  expect(sound).toMatchObject({
    document: { ok: true, shops: [{ shop: shopId, records: 1, versions: 1, lines: 1, firstFault: null }] },
    faults: [],
  });
  expect((await damagedRecords()).size).toBe(0);

  moveTheEnd(join(folder, 'shop.db'));
  const { document, faults } = await verify(undefined, '/');
  const sentence = /^Version 1 of record "a" is not as it was sealed in line 1/;
  expect(document).toMatchObject({ ok: false, shops: [{ ok: false, firstFault: expect.stringMatching(sentence) }] });
  expect(faults).toEqual([{ path: `${shopId}.a.1`, message: expect.stringMatching(sentence) }]);
  await checkRecords();
  expect((await damagedRecords()).get(shopId)).toMatch(sentence);
  // And its own boards keep people out of every bench, those of another shop do not.
  expect(await doubtNow(CLOCK, shopId)).toBe('records');
  const other = await importShopFile({ commandId: newId(), file: SMALL, into: { isDemo: false } }, CLOCK);
  expect(other.ok && (await doubtNow(CLOCK, other.value.shopId))).toBeNull();
});

test('a database that is not there, or is none of ours, is refused with a sentence', async () => {
  expect(await verify('nothing.db', '/nowhere')).toEqual({
    document: null,
    faults: [{ path: '', message: expect.stringContaining('There is no database at /nowhere/nothing.db') }],
  });
  expect(await verify('package.json', process.cwd())).toMatchObject({
    document: null,
    faults: [{ message: expect.stringContaining('cannot be read as a database of this program') }],
  });
});
