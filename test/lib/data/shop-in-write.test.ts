import { expect, test } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { recordApplication } from '@/lib/commands/record-application';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { shopFromRows } from '@/lib/data/shop-rows';
import { shopFileOf } from '@/lib/data/snapshot';
import { write } from '@/lib/data/writer';
import { refuse } from '@/shared/outcome';
import { instantOf } from '@/shared/time/instant';
import { smallShop } from '../commands/small-shop';
import { CLOCK } from './fresh-database';

/* In the middle of a write a shop is read with the records that are kept, and says the same as its rows. */

async function record(shopId: string, hour: number): Promise<string> {
  const at = (minute: number) => instantOf(Date.UTC(2026, 2, 30, hour, minute));
  const spraying = { recipe: 'r', benches: ['b'], startedAt: at(0), endedAt: at(30) };
  const outcome = await recordApplication({ commandId: newId(), shopId, ...spraying }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value.application;
}

/** Both readings inside of a write that is rolled back. */
async function bothReadings(shopId: string) {
  const found: unknown[] = [];
  const command = { id: newId(), name: 'lookOnly', shopId, body: null };
  await write(command, CLOCK.now(), async (rows) => {
    found.push(await shopInWrite(rows, shopId), await shopFromRows(rows, shopId));
    return refuse({ code: 'not-found', what: 'shop', id: shopId });
  });
  return found;
}

test('after each record and each amendment both readings of a write agree, whatever was kept before', async () => {
  const shopId = await smallShop();
  for (const hour of [6, 8, 10]) {
    const added = await record(shopId, hour);
    if (hour === 8) await shopFileOf(shopId);
    const amendment = { commandId: newId(), shopId, application: added, change: { by: 'Sam' }, reason: 'who it was' };
    expect(await amendApplication(amendment, CLOCK)).toMatchObject({ ok: true });
    const [kept, read] = await bothReadings(shopId);
    expect(kept).toEqual(read);
  }
});

test('what a write has recorded and rolled back is kept nowhere', async () => {
  const shopId = await smallShop();
  const before = await shopFileOf(shopId);
  const { writer } = await database();
  const version = await writer.applicationVersion.findFirstOrThrow({ where: { shopId } });
  const seen: number[] = [];
  const command = { id: newId(), name: 'addAndRefuse', shopId, body: null };
  await write(command, CLOCK.now(), async (rows) => {
    await rows.applicationVersion.create({ data: { ...version, passed: [], number: version.number + 1 } });
    seen.push((await shopInWrite(rows, shopId))?.applications.length ?? 0);
    return refuse({ code: 'not-found', what: 'shop', id: shopId });
  }).catch(() => null);
  expect(seen).toHaveLength(1);
  const [kept, read] = await bothReadings(shopId);
  expect(kept).toEqual(read);
  expect(await shopFileOf(shopId)).toEqual(before);
});
