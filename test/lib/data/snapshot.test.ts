import { expect, test, vi } from 'vitest';
import { drawStock } from '@/lib/commands/draw-stock';
import { lookAtClock } from '@/lib/commands/watch-clock';
import { database } from '@/lib/data/database';
import { Kept } from '@/lib/data/kept';
import { newId } from '@/lib/data/new-id';
import { planKept } from '@/lib/data/plan-kept';
import { shopFileOf, shopOf, snapshotOf } from '@/lib/data/snapshot';
import { stock } from '@/shared/quantity/amounts';
import { lotOf, smallShop } from '../commands/small-shop';
import { CLOCK, changedElsewhere, otherProgram } from './fresh-database';

/* A shop is read once for as long as no command changes it, and anew as soon as one did, in whatever process. */

/** Counts how often a shop is read whole from here on. */
async function countReads() {
  const { reader } = await database();
  return vi.spyOn(reader, '$transaction');
}

async function draw(shopId: string): Promise<void> {
  const drawing = { commandId: newId(), shopId, lot: 'l', place: 0, amount: stock(100_000), drawnAt: null };
  const outcome = await drawStock(drawing, CLOCK);
  expect(outcome).toMatchObject({ ok: true });
}

test('however many ask for a shop that nobody changes, it is read, followed and planned once', async () => {
  const shopId = await smallShop();
  const reads = await countReads();
  const asked = await Promise.all(Array.from({ length: 20 }, () => snapshotOf(shopId)));
  expect(new Set([...asked, await snapshotOf(shopId)]).size).toBe(1);
  expect(reads).toHaveBeenCalledTimes(1);
  const [shop, day] = [await shopOf(shopId), CLOCK.today((await shopOf(shopId)).zone)];
  expect(await shopOf(shopId)).toBe(shop);
  expect(await planKept(await shopOf(shopId), day)).toBe(await planKept(shop, day));
});

test('a command is seen at once', async () => {
  const shopId = await smallShop();
  expect((await lotOf(shopId, 'l')).remaining).toBeNull();
  await draw(shopId);
  expect((await lotOf(shopId, 'l')).remaining).toBe('400 mL');
});

test('a command of another process is seen at once', async () => {
  const shopId = await smallShop();
  await shopFileOf(shopId);
  const other = await otherProgram();
  await other.exec('BEGIN; UPDATE "Shop" SET "revision" = "revision" + 1;');
  await other.exec(`UPDATE "Bench" SET "name" = 'Renamed elsewhere';`);
  expect((await shopFileOf(shopId)).benches[0]?.name).toBe('Bench');
  await other.exec('COMMIT');
  await other.close();
  expect((await shopFileOf(shopId)).benches[0]?.name).toBe('Renamed elsewhere');
});

test('what somebody changes in the file without a command is seen, and what this program notes beside the shops changes none', async () => {
  const shopId = await smallShop();
  const before = await shopFileOf(shopId);
  await lookAtClock(CLOCK);
  expect(await shopFileOf(shopId)).toBe(before);
  await changedElsewhere(`UPDATE "Bench" SET "name" = 'Changed by hand'`);
  expect((await shopFileOf(shopId)).benches[0]?.name).toBe('Changed by hand');
});

test('a command is seen even while somebody else still reads the shop as it was before', async () => {
  const shopId = await smallShop();
  await shopFileOf(shopId);
  const { reader } = await database();
  let asked: ReturnType<typeof shopFileOf> | null = null;
  await reader.$transaction(async (rows) => {
    await rows.shop.findMany();
    await draw(shopId);
    asked = shopFileOf(shopId);
    await new Promise((resolve) => setTimeout(resolve, 20));
  });
  const file: Awaited<ReturnType<typeof shopFileOf>> = await (asked ?? Promise.reject(new Error('nobody asked')));
  expect(file.lots.find(({ id }) => id === 'l')?.remaining).toBe('400 mL');
});

test('what all share cannot be changed by one of them', async () => {
  const { file, shop } = await snapshotOf(await smallShop());
  expect(() => file.lots.pop()).toThrow(TypeError);
  expect(() => Object.assign(shop.benches[0] ?? {}, { name: 'x' })).toThrow(TypeError);
});

test('a shop that could not be read is asked for anew', async () => {
  const shopId = await smallShop();
  const reads = await countReads();
  reads.mockRejectedValueOnce(new Error('planted'));
  await expect(snapshotOf(shopId)).rejects.toThrow('planted');
  expect((await snapshotOf(shopId)).file.benches).toHaveLength(1);
});

test('what nobody asked for the longest makes room, and the newest stays however heavy it is', () => {
  const kept = new Kept<number>({ things: 3, weight: 10 });
  for (const [name, weight] of [
    ['a', 2],
    ['b', 2],
    ['c', 2],
  ] as const)
    kept.set(name, weight, weight);
  kept.get('a');
  kept.set('d', 2, 2);
  expect(['a', 'b', 'c', 'd'].map((name) => kept.get(name))).toEqual([2, undefined, 2, 2]);
  kept.set('e', 9, 9);
  expect(['a', 'c', 'd', 'e'].map((name) => kept.get(name))).toEqual([undefined, undefined, undefined, 9]);
  kept.set('f', 50, 50);
  expect([kept.get('e'), kept.get('f')]).toEqual([undefined, 50]);
});
