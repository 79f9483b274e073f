import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Amended, amendApplication } from '@/lib/commands/amend-application';
import { changeShop } from '@/lib/commands/change-shop';
import { confirmAmendment } from '@/lib/commands/confirm-amendment';
import { newId } from '@/lib/data/new-id';
import { recordsOfFile } from '@/lib/data/records-of-file';
import { shopFileOf } from '@/lib/data/snapshot';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { type Instant, instantOf } from '@/shared/time/instant';
import { runs } from '@/test/runs';
import { parsedOrThrow } from '../data/any-shop-file';
import { CLOCK } from '../data/fresh-database';
import { SMALL, smallShop, today } from './small-shop';

const HOUR = 3_600_000;

/** Two benches sprayed from 5 to 6 this morning with the soap, whose label says 12.5 hours: closed until 18:30. */
const SPRAYED = parsedOrThrow({
  ...SMALL,
  products: [...SMALL.products, { id: 'z', name: 'Unknown dust', kind: 'fungicide', form: 'powder' }],
  benches: [...SMALL.benches, { id: 'c', name: 'Other bench', plants: [] }],
  programs: [],
  applications: [
    {
      ...{ id: 'a', recipe: 'r', benches: ['b', 'c'] },
      ...{ startedAt: '2026-03-31T05:00:00Z', endedAt: '2026-03-31T06:00:00Z' },
    },
  ],
});

const at = (hour: number): string => `2026-03-31T${String(hour).padStart(2, '0')}:00:00Z`;

function amending(shopId: string) {
  const amend = (change: Amended, reason = 'wrong') =>
    amendApplication({ commandId: newId(), shopId, application: 'a', change, reason }, CLOCK);
  const confirm = (version: number, reason = 'asked Ada') =>
    confirmAmendment({ commandId: newId(), shopId, application: 'a', version, reason }, CLOCK);
  const statesAt = async (moments: Instant[]) => {
    const shop = shopOfFile(await shopFileOf(shopId));
    return moments.map((now) =>
      keepOut(shop, now).map(({ state, until }) => (until === null ? state : (until - today(0)) / HOUR)),
    );
  };
  const states = async (now: Instant) => (await statesAt([now]))[0];
  return { amend, confirm, states, statesAt };
}

test('what lengthens an interval counts at once, and no interval opens early on the way', async () => {
  const { amend, states } = amending(await smallShop(SPRAYED));
  expect(await states(today(9))).toEqual([18.5, 18.5]);
  expect(await amend({ endedAt: at(8) })).toEqual({ ok: true, value: { version: 2, closedUntil: null } });
  expect(await states(today(9))).toEqual([20.5, 20.5]);
});

test('what shortens an interval keeps the later end until somebody confirms it, and both stay beside the record', async () => {
  const shopId = await smallShop(SPRAYED);
  const { amend, confirm, states } = amending(shopId);
  const later = instantOf(today(18) + HOUR / 2);
  expect(await amend({ startedAt: at(4), endedAt: at(5) })).toEqual({
    ok: true,
    value: { version: 2, closedUntil: later },
  });
  expect(await states(today(9))).toEqual([18.5, 18.5]);
  expect(await confirm(2, ' ')).toMatchObject({ refusal: { faults: [{ path: 'reason' }] } });
  expect(await confirm(1)).toMatchObject({ refusal: { code: 'changed-meanwhile' } });
  expect(await confirm(2)).toEqual({ ok: true, value: { confirmed: 2 } });
  expect(await states(today(9))).toEqual([17.5, 17.5]);
  expect(await confirm(2)).toMatchObject({ refusal: { code: 'faults' } });
  const [checked] = await recordsOfFile(`${process.env.DATA_DIR}/shop.db`);
  expect(checked).toMatchObject({ faults: [] });
  expect(checked?.seals.map(({ kind, version }) => `${kind} ${version}`)).toEqual([
    'version 1',
    'version 2',
    'confirmation 2',
  ]);
});

test('an interval made longer while an amendment waits counts from the later end, and for what it leaves out', async () => {
  const shopId = await smallShop(SPRAYED);
  const { amend, confirm, states } = amending(shopId);
  const relabel = (id: string, reiHours: number) => {
    const products = SPRAYED.products.filter((one) => one.id === id);
    const part = { products: products.map((one) => ({ ...one, label: { ...one.label, reiHours } })) };
    return changeShop({ commandId: newId(), shopId, part }, CLOCK);
  };
  await amend({ startedAt: at(4), endedAt: at(5) });
  expect(await relabel('p', 24)).toMatchObject({ ok: true });
  expect(await states(today(9))).toEqual([30, 30]);
  await confirm(2);
  expect(await states(today(9))).toEqual([29, 29]);

  await relabel('z', 30);
  await amend({ products: [soap, { ...soap, product: 'z', dose: '1 g/L', amount: '2 g', reiMinutes: 1_800 }] });
  await amend({ products: [soap] });
  await relabel('z', 48);
  expect(await states(today(9))).toEqual([53, 53]);
});

test('a bench that was named by mistake stays closed until that is confirmed; so does a record that is withdrawn', async () => {
  const { amend, confirm, states } = amending(await smallShop(SPRAYED));
  await amend({ benches: ['b'] });
  expect(await states(today(9))).toEqual([18.5, 18.5]);
  await confirm(2);
  expect(await states(today(9))).toEqual([18.5, 'open']);
  await amend({ withdrawn: true }, 'entered in error');
  expect(await states(today(9))).toEqual([18.5, 'open']);
  await confirm(3);
  expect(await states(today(9))).toEqual(['open', 'open']);
  expect(await amend({ withdrawn: false })).toMatchObject({ value: { version: 4, closedUntil: null } });
  expect(await states(today(9))).toEqual([18.5, 'open']);
});

test('an end that is noted counts at once; where an interval was not known, nothing opens until it is confirmed', async () => {
  const running = SPRAYED.applications.map((one) => ({ ...one, endedAt: null }));
  const { amend, confirm, states } = amending(await smallShop({ ...SPRAYED, applications: running }));
  expect(await states(today(9))).toEqual(['unknown', 'unknown']);
  expect(await amend({ endedAt: at(6) })).toMatchObject({ value: { closedUntil: null } });
  expect(await states(today(9))).toEqual([18.5, 18.5]);

  const lines = [soap, { ...soap, product: 'z', dose: '1 g/L', amount: '2 g', reiMinutes: null }];
  expect(await amend({ products: lines })).toMatchObject({ value: { closedUntil: null } });
  expect(await states(today(9))).toEqual(['unknown', 'unknown']);
  await amend({ products: [soap] });
  expect(await states(today(9))).toEqual(['unknown', 'unknown']);
  // Saying so twice confirms nothing.
  await amend({ products: [soap], endedAt: at(7) });
  expect(await states(today(9))).toEqual(['unknown', 'unknown']);
  await confirm(5);
  expect(await states(today(9))).toEqual([19.5, 19.5]);
});

const asThen = { name: null, registration: null, actives: null };
const soap = { product: 'p', dose: '12 mL/gal', amount: '6 mL', reiMinutes: 750, ...asThen };

test('an amendment may say how much went in, and takes from today’s labels what was never recorded', async () => {
  const shopId = await smallShop(SPRAYED);
  const { amend } = amending(shopId);
  const crop = 'Ferns, on both benches';
  await amend({ products: [soap], crop, temperatureC: 18.5, leftover: '100 mL', by: 'Ada' });
  expect((await shopFileOf(shopId)).applications[0]).toMatchObject({
    products: [{ product: 'p', amount: '6 mL', reiMinutes: 750, name: 'Soap', registration: null }],
    ...{ crop, temperatureC: 18.5, leftover: '100 mL', by: 'Ada' },
  });
});

test('an amendment that cannot be is refused beside its field, and nothing is written', async () => {
  const shopId = await smallShop(SPRAYED);
  const { amend } = amending(shopId);
  const faults = async (change: Amended) => {
    const outcome = await amend(change);
    if (outcome.ok || outcome.refusal.code !== 'faults') throw new Error('that was not refused');
    return outcome.refusal.faults.map(({ path }) => path);
  };
  expect(await faults({ endedAt: at(4) })).toEqual(['endedAt']);
  expect(await faults({ endedAt: at(10) })).toEqual(['endedAt']);
  expect(await faults({ benches: [] })).toEqual(['benches']);
  expect(await faults({ crop: 'two\nlines', temperatureC: 400 })).toEqual(['temperatureC', 'crop']);
  expect(await faults({})).toEqual(['reason']);
  expect(await faults({ products: [{ ...soap, product: 'z', dose: '1 g/L' }] })).toEqual(['products[0].amount']);
  const seen = { commandId: 'x', shopId, application: 'a', seen: 2, change: { crop: 'Ferns' }, reason: 'x' };
  expect(await amendApplication(seen, CLOCK)).toMatchObject({ refusal: { code: 'changed-meanwhile' } });
  const [checked] = await recordsOfFile(`${process.env.DATA_DIR}/shop.db`);
  expect(checked?.things).toHaveLength(1);
});

const anyChange: fc.Arbitrary<Amended> = fc.record(
  {
    benches: fc.constantFrom(['b'], ['c'], ['b', 'c']),
    startedAt: fc.integer({ min: 0, max: 8 }).map(at),
    endedAt: fc.oneof(fc.integer({ min: 4, max: 9 }).map(at), fc.constant(null)),
    withdrawn: fc.boolean(),
  },
  { requiredKeys: [] },
);

test('no run of amendments opens a bench earlier than it stood, as long as nobody confirms one', {
  timeout: 120_000,
}, async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(anyChange, { minLength: 1, maxLength: 5 }), async (changes) => {
      const { amend, statesAt } = amending(await smallShop(SPRAYED));
      const moments = [1, 5.5, 7, 12, 17, 19, 22].map((hour) => instantOf(today(0) + hour * HOUR));
      for (const change of changes) {
        const before = await statesAt(moments);
        await amend(change);
        const after = await statesAt(moments);
        before.forEach((benches, moment) => {
          benches.forEach((was, bench) => {
            const is = after[moment]?.[bench];
            // The one thing that may open: an end was noted where there was none.
            if (was !== 'open' && !(was === 'unknown' && 'endedAt' in change)) expect(is).not.toBe('open');
            if (typeof was === 'number' && typeof is === 'number') expect(is).toBeGreaterThanOrEqual(was);
          });
        });
      }
    }),
    { numRuns: runs(5, 200) },
  );
});
