import { expect, test } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { recordApplication } from '@/lib/commands/record-application';
import { database } from '@/lib/data/database';
import { shopHere, shopsHere } from '@/lib/data/shops';
import { shopFileOf } from '@/lib/data/snapshot';
import { loadDemo } from '@/prisma/load-demo';
import { CLOCK, freshDatabase } from '../data/fresh-database';
import { smallShop, today } from './small-shop';

const sprayed = { recipe: 'r', benches: ['b'], startedAt: today(7), endedAt: null };

test('what was sprayed goes on record with the label intervals of that day, rounded up to the minute', async () => {
  const shopId = await smallShop();
  const outcome = await recordApplication({ commandId: '1', shopId, ...sprayed }, CLOCK);
  if (!outcome.ok) throw new Error('a record was refused');
  expect(await recordApplication({ commandId: '1', shopId, ...sprayed }, CLOCK)).toEqual(outcome);
  const { applications } = await shopFileOf(shopId);
  expect(applications.map(({ id }) => id)).toEqual(['a', outcome.value.application]);
  expect(applications[1]).toMatchObject({
    ...{ startedAt: '2026-03-31T07:00:00Z', endedAt: null, mixedAt: '2026-03-31T07:00:00Z' },
    ...{ crop: 'Bench: 12 Ferns', location: null },
  });
  const { reader } = await database();
  const products = await reader.applicationProduct.findMany({ where: { applicationId: outcome.value.application } });
  expect(products).toMatchObject([{ productId: 'p', dose: '12 mL/gal', reiMinutes: 750 }]);
});

test('an amendment counts, and the record stays', async () => {
  const shopId = await smallShop();
  const change = { endedAt: '2026-03-31T08:00:00Z' };
  const amended = { application: 'a', change, reason: 'noted the end' };
  const outcome = await amendApplication({ commandId: '1', shopId, ...amended }, CLOCK);
  expect(outcome).toMatchObject({ ok: true, value: { version: 2 } });
  expect((await shopFileOf(shopId)).applications).toMatchObject([{ id: 'a', endedAt: '2026-03-31T08:00:00Z' }]);
  const { reader } = await database();
  expect(await reader.applicationVersion.count({ where: { shopId, applicationId: 'a' } })).toBe(2);
});

test('a record that cannot be is refused, and says why', async () => {
  const shopId = await smallShop();
  const record = (change: object) => recordApplication({ commandId: '1', shopId, ...sprayed, ...change }, CLOCK);
  expect(await record({ recipe: 'zz' })).toEqual({
    ok: false,
    refusal: { code: 'not-found', what: 'recipe', id: 'zz' },
  });
  expect(await record({ benches: ['b', 'zz'] })).toMatchObject({
    refusal: { code: 'not-found', what: 'bench', id: 'zz' },
  });
  expect(await record({ benches: [] })).toMatchObject({ refusal: { faults: [{ path: 'benches' }] } });
  expect(await record({ endedAt: today(6) })).toMatchObject({ refusal: { faults: [{ path: 'endedAt' }] } });
  const amend = { commandId: '2', shopId, application: 'a', change: { endedAt: '2026-03-31T08:00:00Z' } };
  expect(await amendApplication({ ...amend, reason: ' ' }, CLOCK)).toMatchObject({
    refusal: { faults: [{ path: 'reason' }] },
  });
  expect(await amendApplication({ ...amend, application: 'zz', reason: 'x' }, CLOCK)).toMatchObject({
    refusal: { code: 'not-found', what: 'application' },
  });
  expect((await shopFileOf(shopId)).applications).toHaveLength(1);
});

test('the demo shop is loaded once, and only where there is no shop', async () => {
  await freshDatabase();
  const demo = await loadDemo(CLOCK);
  expect(await shopsHere()).toEqual([{ id: demo, name: 'Quarry Lane Plants', isDemo: true, createdOn: '2026-03-31' }]);
  expect(await loadDemo(CLOCK)).toBe(null);
  expect(await shopHere(demo ?? '')).toMatchObject({ isDemo: true });
  expect(await shopHere('nowhere')).toBe(null);
});
