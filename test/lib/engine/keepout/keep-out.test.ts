import fc from 'fast-check';
import { expect, test } from 'vitest';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { longestRei } from '@/lib/engine/keepout/reopening';
import type { Application, Shop } from '@/lib/engine/shop';
import { type Instant, readInstant } from '@/shared/time/instant';
import { runs } from '@/test/runs';
import { application, bench, product, recipe, smallShop } from '../rules/small-shop';

const at = (text: string): Instant => {
  const reading = readInstant(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

/** Two benches; recipes with an interval of 12 h, of 4 h and 12 h, of none, and one with an unknown interval. */
const shopWith = (...applications: object[]): Shop =>
  smallShop({
    products: [
      product('p0', { reiHours: 0 }),
      product('p4', { reiHours: 4 }),
      product('p12', { reiHours: 12 }),
      product('unknown', { reiHours: null }),
    ],
    benches: [bench('b1'), bench('b2')],
    recipes: [
      recipe('r0', 'p0'),
      recipe('r4', 'p4'),
      recipe('r1', 'p4', 'p12'),
      recipe('ru', 'p12', 'unknown'),
      { id: 'water', name: 'Water', ingredients: [] },
    ],
    applications: applications.map((one) => ({ ...one })),
  });
const spray = (endedAt: string | null, rest = {}, id = 'a1') => application(id, '2026-03-02T18:00:00Z', endedAt, rest);
const standing = (shop: Shop, now: string) =>
  keepOut(shop, at(now)).map(({ bench: { id }, state, until, because }) => [
    id,
    state,
    until,
    because.map((one) => one.id),
  ]);

const OPEN = ['b2', 'open', null, []];

test.each([
  {
    now: '2026-03-02T17:59:59.999Z',
    b1: ['open', null, []],
    why: 'an application that has not begun counts for nothing',
  },
  { now: '2026-03-02T18:00:00Z', b1: ['closed', '2026-03-03T06:30:00.500Z', ['a1']], why: 'it closes from its start' },
  {
    now: '2026-03-03T06:30:00.499Z',
    b1: ['closed', '2026-03-03T06:30:00.500Z', ['a1']],
    why: 'still the last millisecond',
  },
  { now: '2026-03-03T06:30:00.500Z', b1: ['open', null, []], why: 'the interval has elapsed' },
])('$now: $why', ({ now, b1: [state, until, because] }) => {
  // An end with half a second: nothing is rounded away.
  expect(standing(shopWith(spray('2026-03-02T18:30:00.500Z')), now)).toEqual([
    ['b1', state, until === null ? null : at(String(until)), because],
    OPEN,
  ]);
});

test.each([
  { why: 'without an end', application: spray(null) },
  { why: 'with an unknown interval in the mix', application: spray('2026-03-02T18:30:00Z', { recipe: 'ru' }) },
])('an application $why keeps people out for years', ({ application: one }) => {
  expect(standing(shopWith(one), '2029-01-01T00:00:00Z')).toEqual([['b1', 'unknown', null, ['a1']], OPEN]);
  expect(standing(shopWith(one), '2026-03-02T17:00:00Z')).toEqual([['b1', 'open', null, []], OPEN]);
});

test('unknown outweighs closed, and names only what is unknown', () => {
  const shop = shopWith(spray('2026-03-02T18:30:00Z'), spray(null, {}, 'a2'));
  expect(standing(shop, '2026-03-02T20:00:00Z')).toEqual([['b1', 'unknown', null, ['a2']], OPEN]);
});

test('the latest reopening decides, even when it comes from the earlier application', () => {
  const shop = shopWith(
    spray('2026-03-02T18:30:00Z'),
    application('a2', '2026-03-02T20:00:00Z', '2026-03-02T20:30:00Z', { recipe: 'r4', benches: ['b1', 'b2'] }),
  );
  expect(standing(shop, '2026-03-02T21:00:00Z')).toEqual([
    ['b1', 'closed', at('2026-03-03T06:30:00Z'), ['a1']],
    ['b2', 'closed', at('2026-03-03T00:30:00Z'), ['a2']],
  ]);
});

test('an end noted ahead is an end; an interval of 0 closes until it, and plain water likewise', () => {
  for (const mix of ['r0', 'water']) {
    const shop = shopWith(spray('2026-03-02T18:30:00Z', { recipe: mix }));
    expect(standing(shop, '2026-03-02T18:29:00Z')[0]).toEqual(['b1', 'closed', at('2026-03-02T18:30:00Z'), ['a1']]);
    expect(standing(shop, '2026-03-02T18:30:00Z')[0]).toEqual(['b1', 'open', null, []]);
  }
});

test('two applications that reopen a bench at the same moment both decide it', () => {
  const shop = shopWith(spray('2026-03-02T18:30:00Z'), spray('2026-03-02T18:30:00Z', {}, 'a2'));
  expect(standing(shop, '2026-03-02T20:00:00Z')[0]).toEqual(['b1', 'closed', at('2026-03-03T06:30:00Z'), ['a1', 'a2']]);
});

test.each([
  // New York skips 02:00 to 03:00: four elapsed hours after 01:00 are 06:00 on the clock, not 05:00.
  {
    change: 'spring',
    ended: '2026-03-08T01:00:00-05:00',
    closed: '2026-03-08T05:59:59.999-04:00',
    open: '2026-03-08T06:00:00-04:00',
  },
  // It repeats 01:00 to 02:00: four elapsed hours after 00:30 are 03:30 on the clock.
  {
    change: 'autumn',
    ended: '2026-11-01T00:30:00-04:00',
    closed: '2026-11-01T03:29:59.999-05:00',
    open: '2026-11-01T03:30:00-05:00',
  },
])('an interval is elapsed hours in $change', ({ ended, closed, open }) => {
  const shop = shopWith(application('a1', ended, ended, { recipe: 'r4' }));
  expect(standing(shop, closed)[0]?.[1]).toBe('closed');
  expect(standing(shop, open)[0]?.[1]).toBe('open');
});

const later = at('2030-01-01T00:00:00Z');
test.each([
  { what: 'a start that is no number', damage: (one: Application) => ({ ...one, startedAt: Number.NaN as Instant }) },
  { what: 'an end that is no number', damage: (one: Application) => ({ ...one, endedAt: Number.NaN as Instant }) },
  { what: 'an endless end', damage: (one: Application) => ({ ...one, endedAt: Number.NEGATIVE_INFINITY as Instant }) },
  {
    what: 'an end before its start',
    damage: (one: Application) => ({ ...one, endedAt: (one.startedAt - 1) as Instant }),
  },
  ...[Number.NaN, -1, 0.5, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY].map((rei) => ({
    what: `an interval of ${rei}`,
    damage: (one: Application): Application => {
      const [line] = one.recipe.ingredients;
      if (!line) throw new Error('there is an ingredient');
      const label = { ...line.product.label, rei: rei as never };
      return { ...one, recipe: { ...one.recipe, ingredients: [{ ...line, product: { ...line.product, label } }] } };
    },
  })),
])('$what means keep out', ({ damage }) => {
  const shop = shopWith(spray('2026-03-02T18:30:00Z'));
  const damaged = { ...shop, applications: shop.applications.map(damage) };
  expect(keepOut(damaged, later)).toMatchObject([{ state: 'unknown', until: null }, { state: 'open' }]);
});

test('a clock that gives no time keeps people out everywhere', () => {
  for (const now of [Number.NaN, Number.POSITIVE_INFINITY, 0.5]) {
    const states = keepOut(shopWith(), now as Instant).map(({ state }) => state);
    expect(states).toEqual(['unknown', 'unknown']);
  }
});

test('the interval of a mix is its longest, and unknown as soon as one is', () => {
  const { recipes } = shopWith();
  expect(recipes.map(longestRei)).toEqual([0, 240, 720, null, 0]);
});

// The rule once more, written without the code above it: plain numbers, one bench, every application by itself.
const BASE = at('2026-03-07T00:00:00Z');
const MINUTE = 60_000;
const ended = fc.option(fc.integer({ min: 0, max: 3 * 86_400_000 }), { freq: 6 });
const anyRecord = fc.record({
  start: fc.integer({ min: 0, max: 3 * 86_400_000 }),
  lasts: ended,
  mix: fc.constantFrom<string[]>('r0', 'r4', 'r1', 'r1', 'ru', 'water'),
  benches: fc.constantFrom<string[][]>(['b1'], ['b2'], ['b1', 'b2']),
});
type AnyRecord = { start: number; lasts: number | null; mix: string; benches: string[] };
const NOTHING_MORE = {
  ...{ recordedRei: null, amounts: [], by: null, sprayed: null, pH: null, acid: null, plannedCost: null, cost: null },
  ...{ mixedAt: null, temperatureC: null, closedUntil: null, withdrawn: false, isExtra: false },
};
const INTERVALS: Record<string, number | null> = { r0: 0, r4: 240, r1: 720, ru: null, water: 0 };

const base = shopWith();
const applied = (records: AnyRecord[]): Shop => ({
  ...base,
  applications: records.map(({ start, lasts, mix, benches }, index) => {
    const found = base.recipes.find(({ id }) => id === mix);
    if (!found) throw new Error(`no recipe ${mix}`);
    return {
      id: `a${index}`,
      recipe: found,
      benches: base.benches.filter(({ id }) => benches.includes(id)),
      startedAt: (BASE + start) as Instant,
      endedAt: lasts === null ? null : ((BASE + start + lasts) as Instant),
      ...NOTHING_MORE,
    };
  }),
});

function rule(records: AnyRecord[], benchId: string, now: number) {
  const begun = records.map((one, index) => ({ ...one, id: `a${index}` }));
  const counting = begun.filter(({ benches, start }) => benches.includes(benchId) && BASE + start <= now);
  const reopens = counting.map(({ id, start, lasts, mix }) => {
    const interval = INTERVALS[mix] ?? null;
    return { id, at: lasts === null || interval === null ? null : BASE + start + lasts + interval * MINUTE };
  });
  const unknown = reopens.filter((one) => one.at === null).map(({ id }) => id);
  if (unknown.length > 0) return { state: 'unknown', until: null, because: unknown };
  const last = Math.max(...reopens.map((one) => one.at ?? 0));
  if (reopens.length === 0 || now >= last) return { state: 'open', until: null, because: [] };
  return { state: 'closed', until: last, because: reopens.filter((one) => one.at === last).map(({ id }) => id) };
}

const manyRecords = fc.array(anyRecord, { maxLength: 6 });
const moment = fc.integer({ min: -86_400_000, max: 6 * 86_400_000 });

test('for any records and any moment, each bench stands as the rule says', () => {
  fc.assert(
    fc.property(manyRecords, moment, (records, past) => {
      const now = BASE + past;
      for (const { bench: one, state, until, because } of keepOut(applied(records), now as Instant)) {
        expect({ state, until, because: because.map(({ id }) => id) }).toEqual(rule(records, one.id, now));
      }
    }),
    { numRuns: runs(1_500, 50_000) },
  );
});

test('a closed bench is never shown open: at no moment from its start to before its end + interval', () => {
  const known = anyRecord.filter(({ lasts, mix }) => lasts !== null && INTERVALS[mix] !== null);
  fc.assert(
    fc.property(known, manyRecords, fc.double({ min: 0, max: 1, noNaN: true }), (record, others, share) => {
      const shop = applied([record, ...others]);
      const start = BASE + record.start;
      const end = start + (record.lasts ?? 0) + (INTERVALS[record.mix] ?? 0) * MINUTE;
      const between = start + Math.floor(share * (end - 1 - start));
      for (const now of [start, between, end - 1]) {
        if (now < start || now >= end) continue;
        for (const { bench: one, state } of keepOut(shop, now as Instant)) {
          if (record.benches.includes(one.id)) expect(state).not.toBe('open');
        }
      }
    }),
    { numRuns: runs(1_500, 50_000) },
  );
});

test('one more application never opens a bench, and never opens it sooner', () => {
  fc.assert(
    fc.property(manyRecords, anyRecord, moment, (records, more, past) => {
      const now = (BASE + past) as Instant;
      const after = keepOut(applied([...records, more]), now);
      keepOut(applied(records), now).forEach((before, index) => {
        const then = after[index];
        if (before.state === 'unknown') expect(then?.state).toBe('unknown');
        if (before.state === 'closed') expect(then?.state).not.toBe('open');
        if (before.until !== null && then?.until != null) expect(then.until).toBeGreaterThanOrEqual(before.until);
      });
    }),
    { numRuns: runs(600, 20_000) },
  );
});

test('a label corrected to a shorter interval later does not reopen a bench that was sprayed under the longer one', () => {
  const shop = shopWith(spray('2026-03-02T18:30:00Z'));
  const recorded = (recordedRei: number | null) => ({
    ...shop,
    applications: shop.applications.map((one) => ({ ...one, recordedRei: recordedRei as never })),
  });
  const until = (rei: number | null) => keepOut(recorded(rei), at('2026-03-02T19:00:00Z'))[0]?.until;
  const asLabelled = until(null);
  expect(asLabelled).not.toBeNull();
  expect(until(1)).toBe(asLabelled);
  expect(until(10_000)).toBeGreaterThan(Number(asLabelled));
  expect(keepOut(recorded(Number.NaN), at('2026-03-09T19:00:00Z'))[0]?.state).toBe('unknown');
});
