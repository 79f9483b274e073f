import { expect, test } from 'vitest';
import type { Rows } from '@/lib/data/database';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { recordChanges } from '@/lib/data/save-changes';
import { NO_DETAILS, saveRecords } from '@/lib/data/save-records';
import { shopFileOf } from '@/lib/data/snapshot';
import { type Stamp, write } from '@/lib/data/writer';
import { accept, explain } from '@/shared/outcome';
import { SMALL, smallShop, today } from '../commands/small-shop';
import { CLOCK } from './fresh-database';

/*
 * A command that forgets to hold its fields against the contract: what it writes is rolled back all the same.
 */

type Work = (rows: Rows, stamp: Stamp) => Promise<unknown>;

const send = (shopId: string, work: Work) =>
  write({ id: newId(), name: 'careless', shopId, body: null }, CLOCK.now(), async (rows, stamp) => {
    await work(rows, stamp);
    return accept(true);
  });

const renamed = (name: string): Work => {
  return async (rows, { shopId }) =>
    rows.supplier.update({ where: { shopId_id: { shopId, id: 's' } }, data: { name } });
};

const CARELESS: [what: string, path: string, work: Work][] = [
  ['a name, and nobody says where', 'suppliers[0].name', renamed('a\tb')],
  [
    'the place of a bottle',
    'lots[0].keptIn',
    async (rows, { shopId, touched }) => {
      touched.add('lots', ['l']);
      await rows.container.updateMany({ where: { shopId, lotId: 'l' }, data: { keptIn: ' ' } });
    },
  ],
  [
    'the day a lot came',
    'lots[0].receivedOn',
    async (rows, { shopId, touched }) => {
      touched.add('lots', ['l']);
      await rows.lot.updateMany({ where: { shopId, id: 'l' }, data: { receivedOn: '1970-01-01' } });
    },
  ],
  [
    'a record without sense',
    'applications[0].by',
    (rows, stamp) => {
      const details = { ...NO_DETAILS, by: '\u2028' };
      const when = { startedAt: today(7), endedAt: today(8), position: 1, number: 1, reason: null, products: [] };
      return saveRecords(rows, stamp, [{ ...when, id: 'new', recipe: 'r', recipeNumber: 1, benches: ['b'], details }]);
    },
  ],
  [
    'why a spraying was skipped',
    'programs[0].changes[0].reason',
    (rows, stamp) => {
      const change = { on: '2026-03-03', kind: 'skipped' as const, movedTo: null, startTime: null, reason: '\u0000' };
      return recordChanges(rows, stamp, [{ program: 'g', change: { ...change, application: null } }]);
    },
  ],
];

test.each(CARELESS)('%s that no reader could read is rolled back, and says where', async (_what, path, work) => {
  const shopId = await smallShop();
  const before = await shopFileOf(shopId);
  const outcome = await send(shopId, work);
  expect(outcome).toMatchObject({ ok: false, refusal: { code: 'cannot-be-read', path } });
  expect(outcome.ok || explain(outcome.refusal)).toMatch(/^This was not kept, .* Nothing was changed\.$/);
  expect(await shopFileOf(shopId)).toEqual(before);
  const { reader } = await database();
  expect(await reader.command.count({ where: { name: 'careless' } })).toBe(0);
});

test('what could not be read before, and was left alone, is not held against a command', async () => {
  const shopId = await smallShop(SMALL);
  const { writer } = await database();
  await writer.product.updateMany({ where: { shopId, id: 'p' }, data: { name: 'a\tb' } });
  await writer.shop.update({ where: { id: shopId }, data: { address: 'a\nb' } });
  const move: Work = async (rows, { touched }) => {
    touched.add('lots', ['l']);
    await rows.container.updateMany({ where: { shopId, lotId: 'l' }, data: { keptIn: 'shed' } });
  };
  expect(await send(shopId, move)).toEqual({ ok: true, value: true });
});
