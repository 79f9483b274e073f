import { expect, test } from 'vitest';
import { amendApplication } from '@/lib/commands/amend-application';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { finishMix } from '@/lib/commands/finish-mix';
import { recordApplication } from '@/lib/commands/record-application';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates } from '@/lib/views/bench-states';
import { exact } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { addMinutes, instantOf } from '@/shared/time/instant';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop, today } from './small-shop';

/*
 * The tests' clock shows Tuesday 31 March, 9:00 UTC. The soap's interval is 12.5 hours. A turn was planned for Monday at
 * 13:00 UTC.
 */
const NOW = today(9);
const FROM_NOW = addMinutes(NOW, 750);
const ON = Day.parse('2026-03-30');
const at = (day: number, hour: number) => instantOf(Date.UTC(2026, 2, day, hour));

const shopWith = (rest: Partial<ShopFile>) =>
  smallShop({
    ...SMALL,
    applications: SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' })),
    programs: SMALL.programs.map((one) => ({ ...one, startsOn: ON, startTime: '09:00' })),
    ...rest,
  });

async function benchNow(shopId: string, now = NOW) {
  const shop = shopOfFile(await shopFileOf(shopId));
  const [bench] = benchStates(shop, now, { doubt: null, lag: null });
  return bench && { state: bench.state, until: bench.until };
}

const mixed = (shopId: string, endedAt = at(30, 14)) =>
  finishMix(
    {
      ...{ commandId: newId(), shopId, recipe: 'r', benches: ['b'], plants: null, by: null, sprayed: exact(2000) },
      ...{ startedAt: at(30, 13), endedAt, leftover: null, leftoverWent: null, conditions: null, pH: null },
      poured: [{ product: 'p', from: [{ lotId: 'l', place: 0, amount: '6 mL', heldMore: false }], elsewhere: null }],
      ...{ acid: null, passed: [], plannedCost: null, planned: { program: 'g', on: ON } },
    },
    CLOCK,
  );

test('a mix that ended so long ago that its interval is over opens its bench only once that is confirmed', async () => {
  const shopId = await shopWith({});
  expect(await benchNow(shopId)).toEqual({ state: 'unknown', until: null });
  const outcome = await mixed(shopId);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  expect(await benchNow(shopId)).toEqual({ state: 'closed', until: FROM_NOW });
  expect((await benchNow(shopId, FROM_NOW))?.state).toBe('open');
  const { application } = outcome.value;
  const sure = { commandId: newId(), shopId, application, version: 1, reason: 'asked Ada' };
  expect(await confirmAmendment(sure, CLOCK)).toMatchObject({ ok: true });
  expect((await benchNow(shopId))?.state).toBe('open');
});

test('the later end stays through an amendment that changes nothing of it', async () => {
  const shopId = await shopWith({});
  const outcome = await mixed(shopId);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  const { application } = outcome.value;
  const change = { conditions: 'calm' };
  await amendApplication({ commandId: newId(), shopId, application, change, reason: 'noted' }, CLOCK);
  expect(await benchNow(shopId)).toEqual({ state: 'closed', until: FROM_NOW });
});

test('a mix whose interval is not over counts at once', async () => {
  const shopId = await shopWith({});
  await mixed(shopId, at(30, 21));
  expect(await benchNow(shopId)).toEqual({ state: 'closed', until: addMinutes(at(30, 21), 750) });
});

test('a late mix opens nothing, and so waits for nobody, where nothing keeps people out', async () => {
  const shopId = await shopWith({
    programs: SMALL.programs.map((one) => ({ ...one, startsOn: Day.parse('2026-04-07') })),
  });
  expect((await benchNow(shopId))?.state).toBe('open');
  const sprayed = { recipe: 'r', benches: ['b'], startedAt: at(30, 13), endedAt: at(30, 14) };
  await recordApplication({ commandId: newId(), shopId, ...sprayed }, CLOCK);
  expect((await benchNow(shopId))?.state).toBe('open');
});

test('an end that is noted long after it opens the bench only once that is confirmed', async () => {
  const shopId = await shopWith({ applications: SMALL.applications, programs: [] });
  expect((await benchNow(shopId))?.state).toBe('unknown');
  const noted = { commandId: newId(), shopId, application: 'a', reason: 'noted the end' };
  const outcome = await amendApplication({ ...noted, change: { endedAt: '2026-03-30T14:00:00Z' } }, CLOCK);
  expect(outcome).toEqual({ ok: true, value: { version: 2, closedUntil: FROM_NOW } });
  expect((await benchNow(shopId))?.state).not.toBe('open');
  const sure = { commandId: newId(), shopId, application: 'a', version: 2, reason: 'asked Ada' };
  expect(await confirmAmendment(sure, CLOCK)).toMatchObject({ ok: true });
  expect((await benchNow(shopId))?.state).toBe('open');
});
