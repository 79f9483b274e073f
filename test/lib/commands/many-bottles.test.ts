import { beforeEach, expect, test } from 'vitest';
import { importShopFile } from '@/lib/commands/import-shop-file';
import { receiveDelivery } from '@/lib/commands/receive-delivery';
import { receiveLot } from '@/lib/commands/receive-lot';
import { withConfirmation } from '@/lib/confirmation';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import type { Outcome } from '@/shared/outcome';
import { Day } from '@/shared/time/day';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK, freshDatabase } from '../data/fresh-database';
import { smallShop } from './small-shop';

beforeEach(async () => {
  await freshDatabase();
});

const ON = Day.parse('2026-03-30');
const lot = (count: number) => ({ product: 'p', pack: '1 qt', count, paid: null, expiresOn: null, keptIn: null });

type Bring = (count: number) => Promise<Outcome<object>>;

const one =
  (shopId: string): Bring =>
  (count) =>
    receiveLot({ commandId: newId(), shopId, ...lot(count), receivedOn: ON }, CLOCK);

const several =
  (shopId: string): Bring =>
  (count) =>
    receiveDelivery({ commandId: newId(), shopId, receivedOn: ON, lots: [lot(count - 200), lot(200)] }, CLOCK);

const tokenIn = (outcome: Outcome<unknown>): string =>
  !outcome.ok && outcome.refusal.code === 'many-bottles' ? outcome.refusal.token : '';

const bottlesIn = async (shopId: string): Promise<number> =>
  (await shopFileOf(shopId)).lots.reduce((sum, { count }) => sum + count, 0);

test.each([
  ['one lot', one],
  ['a delivery of several', several],
])('over 500 bottles in %s are asked about once more, and 500 are not', async (_, way) => {
  const shopId = await smallShop();
  const before = await bottlesIn(shopId);
  const bring = way(shopId);
  const asked = await bring(501);
  expect(asked).toMatchObject({
    ok: false,
    refusal: { code: 'many-bottles', said: [expect.stringMatching(/50[0-9]/)] },
  });
  expect(await bottlesIn(shopId)).toBe(before);
  // The word for one count is none for another.
  const word = { token: tokenIn(asked), reason: 'counted again' };
  expect((await withConfirmation(word, () => bring(5_010))).ok).toBe(false);
  expect((await withConfirmation({ ...word, reason: ' ' }, () => bring(501))).ok).toBe(false);
  expect((await withConfirmation(word, () => bring(501))).ok).toBe(true);
  expect((await bring(500)).ok).toBe(true);
  expect(await bottlesIn(shopId)).toBe(before + 1_001);
});

test('a file is asked about for one lot of 10,000, and not for many small ones', async () => {
  const file = (lots: object[]) =>
    parsedOrThrow({
      format: 'bench-and-bottle/shop@1',
      shop: { name: 'S', timeZone: 'UTC', currency: 'USD', fillCapacity: '2 gal' },
      products: [{ id: 'p', name: 'P', kind: 'nutrient', form: 'liquid' }],
      lots,
    });
  const held = (id: string, count: number) => ({ id, product: 'p', pack: '1 qt', count, receivedOn: ON });
  const bring = (lots: object[]) =>
    importShopFile({ commandId: newId(), file: file(lots), into: { isDemo: false } }, CLOCK);
  const asked = await bring([held('l', 10_000)]);
  expect(asked).toMatchObject({ ok: false, refusal: { code: 'many-bottles' } });
  const word = { token: tokenIn(asked), reason: 'a pallet' };
  expect((await withConfirmation(word, () => bring([held('l', 10_000)]))).ok).toBe(true);
  expect((await bring([held('a', 300), held('b', 300), held('c', 300)])).ok).toBe(true);
});
