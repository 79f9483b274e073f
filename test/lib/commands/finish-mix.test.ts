import { expect, test } from 'vitest';
import { type FinishMix, finishMix } from '@/lib/commands/finish-mix';
import { skipSpraying } from '@/lib/commands/skip-spraying';
import { database } from '@/lib/data/database';
import { shopFileOf } from '@/lib/data/snapshot';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { openSprayings } from '@/lib/engine/ahead/turns-on-record';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { exact } from '@/shared/quantity/exact';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { figure } from '@/test/promises/figure';
import { runs } from '@/test/runs';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop, today } from './small-shop';

const MIX: Omit<FinishMix, 'shopId'> = {
  ...{ commandId: '1', recipe: 'r', benches: ['b'], plants: null, startedAt: today(7), endedAt: today(8), by: null },
  ...{ sprayed: exact(2000), leftover: exact(150), leftoverWent: 'on the same bench', conditions: 'calm', pH: 6.1 },
  poured: [{ product: 'p', from: [{ lotId: 'l', place: 0, amount: '6 mL', heldMore: false }], elsewhere: null }],
  ...{ acid: null, passed: [], plannedCost: '0.94', planned: null },
};

/** A shop whose bench is open: the record of the small shop has an end. */
const READY = {
  ...SMALL,
  applications: SMALL.applications.map((one) => ({ ...one, endedAt: '2026-02-24T23:00:00Z' })),
  programs: SMALL.programs.map((one) => ({ ...one, startsOn: '2026-03-31' })),
};
const ready = () => smallShop(READY);

const counts = async (shopId: string) => {
  const { reader } = await database();
  const where = { shopId };
  return [
    await reader.application.count({ where }),
    await reader.movement.count({ where }),
    await reader.containerChange.count({ where }),
    await reader.sprayingChange.count({ where }),
  ];
};

test('a finished mix draws its bottles, is on record with what it took, closes its bench and is done in the plan', async () => {
  const shopId = await ready();
  const planned = { program: 'g', on: Day.parse('2026-03-31') };
  const sprayingsOf = async () => planAhead(shopOfFile(await shopFileOf(shopId)), Day.parse('2026-03-31'), 1).sprayings;
  expect(await sprayingsOf()).toHaveLength(1);

  const outcome = await finishMix({ ...MIX, shopId, planned, actor: 'Ada' }, CLOCK);
  // 6 of the 500 mL that cost 74.00.
  expect(outcome).toMatchObject({ ok: true, value: { cost: 888_000 } });
  const file = await shopFileOf(shopId);
  expect(file.lots.find(({ id }) => id === 'l')).toMatchObject({ remaining: '494 mL', openedOn: '2026-03-31' });
  expect(file.applications.at(-1)).toMatchObject({
    ...{ recipe: 'r', benches: ['b'], startedAt: '2026-03-31T07:00:00Z', endedAt: '2026-03-31T08:00:00Z', by: 'Ada' },
    products: [{ product: 'p', dose: '12 mL/gal', amount: '6 mL', reiMinutes: 750 }],
    ...{ sprayed: '2000 mL', leftover: '150 mL', leftoverWent: 'on the same bench', conditions: 'calm', pH: 6.1 },
    ...{ plannedCost: '0.94', cost: '0.888', crop: 'Bench: 12 Ferns', location: null, mixedAt: '2026-03-31T07:00:00Z' },
  });
  expect(await sprayingsOf()).toEqual([]);
  const [bench] = keepOut(shopOfFile(file), today(9));
  expect(bench).toMatchObject({ state: 'closed', until: instantOf(today(8) + 750 * 60_000) });
  expect(await finishMix({ ...MIX, shopId, planned, commandId: '2' }, CLOCK)).toMatchObject({
    refusal: { code: 'already-done' },
  });
});

test('how warm it was is kept with the record, and unknown where nobody said so', async () => {
  const shopId = await ready();
  await finishMix({ ...MIX, shopId, temperatureC: 31.5 }, CLOCK);
  await finishMix({ ...MIX, shopId, commandId: '2', passed: [{ rule: 'bench-closed', reason: 'a test' }] }, CLOCK);
  const file = await shopFileOf(shopId);
  expect(file.applications.slice(-2).map(({ temperatureC }) => temperatureC)).toEqual([31.5, null]);
});

test('a record says which plants were treated and where that is, as it was then, and when it was mixed', async () => {
  const shopId = await smallShop({
    ...SMALL,
    shop: { ...SMALL.shop, address: '1 Quarry Lane' },
    benches: SMALL.benches.map((bench) => ({ ...bench, place: 'by the door' })),
    applications: [],
  });
  await finishMix({ ...MIX, shopId, plants: 'the front half', mixedAt: today(6) }, CLOCK);
  expect((await shopFileOf(shopId)).applications[0]).toMatchObject({
    crop: 'the front half (of Bench: 12 Ferns)',
    location: 'Bench (by the door); 1 Quarry Lane',
    mixedAt: '2026-03-31T06:00:00Z',
    products: [{ name: 'Soap', registration: null, actives: null }],
  });
});

/** In how many shops two tabs finish twenty mixes each. */
const SHOPS = runs(2, 10);

test('two tabs that finish one mix make one record, however often', {
  timeout: 120_000,
}, async () => {
  const poured = [{ product: 'p', from: [{ lotId: 'm', place: 0, amount: '1 mL', heldMore: false }], elsewhere: null }];
  const passed = [{ rule: 'bench-closed', reason: 'a test' }];
  const made = [0, 0, 0, 0];
  // In several shops, because each round reads the records of all rounds before it in its shop.
  for (let shop = 0; shop < SHOPS; shop += 1) {
    const shopId = await ready();
    const before = await counts(shopId);
    for (let round = 0; round < 20; round += 1) {
      const mix = { ...MIX, shopId, poured, passed, commandId: `round ${round}` };
      const [one, other] = await Promise.all([finishMix(mix, CLOCK), finishMix(mix, CLOCK)]);
      expect(one.ok).toBe(true);
      expect(other).toEqual(one);
    }
    const after = await counts(shopId);
    after.forEach((count, at) => {
      made[at] = (made[at] ?? 0) + count - (before[at] ?? 0);
    });
  }
  expect(made).toEqual([20 * SHOPS, 20 * SHOPS, SHOPS, 0]);
  figure(7, `${20 * SHOPS} rounds: ${20 * SHOPS} records`);
});

test('a mix that cannot be finished leaves everything as it was', async () => {
  const shopId = await ready();
  const before = await counts(shopId);
  const from = (amount: string, lotId = 'l', place = 0) => ({ lotId, place, amount, heldMore: false });
  const pour = (...bottles: ReturnType<typeof from>[]) => [{ product: 'p', from: bottles, elsewhere: null }];
  const refused: [object, object][] = [
    [{ poured: pour(from('400 mL'), from('101 mL')) }, { code: 'not-enough-stock' }],
    [{ poured: pour(from('1 mL'), from('1 mL', 'zz')) }, { code: 'not-found', what: 'bottle' }],
    [{ poured: pour(from('1 mL', 'm', 3)) }, { code: 'not-found', what: 'bottle' }],
    [{ poured: [...pour(from('1 mL')), ...pour(from('1 mL'))] }, { faults: [{ path: 'poured' }] }],
    [
      {
        poured: [{ product: 'q', from: [from('1 g')], elsewhere: null }],
        passed: [{ rule: 'rei-unknown', reason: 'x' }],
      },
      { faults: [{ path: 'poured' }] },
    ],
    [{ poured: pour(from('some')) }, { faults: [{ path: 'poured[0].from[0].amount' }] }],
    [{ leftover: exact(2001) }, { faults: [{ path: 'leftover' }] }],
    [{ endedAt: today(6) }, { faults: [{ path: 'endedAt' }] }],
    [{ startedAt: today(23), endedAt: today(23) }, { faults: [{ path: 'startedAt' }] }],
    [{ acid: 'q' }, { faults: [{ path: 'acid' }] }],
    [{ benches: ['b', 'zz'] }, { code: 'not-found', what: 'bench' }],
    [{ planned: { program: 'zz', on: Day.parse('2026-03-31') } }, { code: 'not-found', what: 'program' }],
  ];
  for (const [change, refusal] of refused) {
    expect(await finishMix({ ...MIX, ...change, shopId }, CLOCK)).toMatchObject({ ok: false, refusal });
  }
  expect(await counts(shopId)).toEqual(before);
});

test('a rule that says stop wants a reason, and the reason is on record', async () => {
  const shopId = await smallShop();
  // Nobody noted when the last spraying of this bench ended, so it counts as closed.
  const refused = await finishMix({ ...MIX, shopId }, CLOCK);
  expect(refused).toMatchObject({ refusal: { faults: [{ path: 'passed.bench-closed' }] } });
  const blank = [{ rule: 'bench-closed', reason: '  ' }];
  expect(await finishMix({ ...MIX, shopId, passed: blank }, CLOCK)).toMatchObject({ ok: false });
  const passed = [{ rule: 'bench-closed', reason: 'it ended at six that day' }];
  expect(await finishMix({ ...MIX, shopId, passed }, CLOCK)).toMatchObject({ ok: true });
  expect((await shopFileOf(shopId)).applications.at(-1)?.passed).toEqual(passed);
});

test('a bottle that held more than the books say is counted up first, and one outside the books makes the cost unknown', async () => {
  const shopId = await ready();
  const from = (amount: string, heldMore: boolean) => [{ lotId: 'l', place: 0, amount, heldMore }];
  await finishMix({ ...MIX, shopId, poured: [{ product: 'p', from: from('490 mL', false), elsewhere: null }] }, CLOCK);
  const more = { ...MIX, shopId, commandId: '2', passed: [{ rule: 'bench-closed', reason: 'a test' }] };
  const poured = [{ product: 'p', from: from('14 mL', true), elsewhere: null }];
  expect(await finishMix({ ...more, poured }, CLOCK)).toMatchObject({ ok: true });
  expect((await shopFileOf(shopId)).lots.find(({ id }) => id === 'l')).toMatchObject({ remaining: '0 mL' });
  const { reader } = await database();
  const movements = await reader.movement.findMany({ where: { shopId, lotId: 'l' }, orderBy: { number: 'asc' } });
  expect(movements.map(({ kind, amount }) => [kind, Number(amount)])).toEqual([
    ['received', 500_000],
    ['drawn', 490_000],
    ['counted', 4_000],
    ['drawn', 14_000],
  ]);
  const elsewhere = [{ product: 'p', from: [], elsewhere: '6 mL' }];
  expect(await finishMix({ ...more, commandId: '3', poured: elsewhere }, CLOCK)).toMatchObject({
    value: { cost: null },
  });
});

test('a phone whose clock runs ahead closes its bench at once', async () => {
  const shopId = await ready();
  const ahead = (minutes: number) => instantOf(CLOCK.now() + minutes * 60_000);
  const mix = { ...MIX, shopId, startedAt: ahead(5), endedAt: ahead(9) };
  expect(await finishMix(mix, CLOCK)).toMatchObject({ ok: true });
  const shop = shopOfFile(await shopFileOf(shopId));
  expect(keepOut(shop, CLOCK.now())).toMatchObject([{ state: 'closed', until: ahead(9 + 750) }]);
  const later = { ...MIX, shopId, commandId: '2', startedAt: ahead(11), endedAt: ahead(12) };
  expect(await finishMix(later, CLOCK)).toMatchObject({ refusal: { faults: [{ path: 'startedAt' }] } });
});

test('a mix without a planned spraying is an extra one, and what is planned stays to be sprayed', async () => {
  const shopId = await ready();
  const outcome = await finishMix({ ...MIX, shopId }, CLOCK);
  const record = outcome.ok ? outcome.value.application : '';
  expect((await shopFileOf(shopId)).applications.find(({ id }) => id === record)).toMatchObject({ extra: true });
});

test('a planned spraying that was done on some of its benches is done or skipped on the others', async () => {
  const benches = [...READY.benches, ...READY.benches.map((bench) => ({ ...bench, id: 'c', name: 'Other' }))];
  const programs = READY.programs.map((program) => ({ ...program, benches: ['b', 'c'] }));
  const shopId = await smallShop({ ...READY, benches, programs });
  const planned = { program: 'g', on: Day.parse('2026-03-31') };
  const mix = (commandId: string, of: string[]) =>
    finishMix({ ...MIX, shopId, planned, commandId, benches: of }, CLOCK);
  const open = async () =>
    openSprayings(shopOfFile(await shopFileOf(shopId)), planned.on, planned.on).map((one) =>
      one.open.map(({ id }) => id),
    );
  expect(await mix('1', ['b'])).toMatchObject({ ok: true });
  expect(await open()).toEqual([['c']]);
  expect(await mix('2', ['b'])).toMatchObject({ refusal: { code: 'already-done' } });
  const skip = { shopId, ...planned, reason: 'c was in bloom' };
  expect(await skipSpraying({ ...skip, commandId: '3' }, CLOCK)).toMatchObject({ ok: true });
  expect(await open()).toEqual([]);
  expect((await shopFileOf(shopId)).programs[0]?.changes).toMatchObject([{ kind: 'done', reason: 'c was in bloom' }]);
  expect(await skipSpraying({ ...skip, commandId: '4' }, CLOCK)).toMatchObject({
    refusal: { code: 'changed-meanwhile' },
  });
});
