import { expect, test } from 'vitest';
import { unrecordedSprayings } from '@/lib/engine/ahead/overdue';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { countingApplications } from '@/lib/engine/keepout/counting';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { dayStrips } from '@/lib/engine/keepout/planned-closures';
import { acidReadings } from '@/lib/engine/mix/acid-steps';
import { untriedPairs } from '@/lib/engine/mix/jar-test';
import type { Shop } from '@/lib/engine/shop';
import { type Instant, LAST_INSTANT, readInstant } from '@/shared/time/instant';
import { application, bench, day, once, product, recipe, type SmallShop, smallShop } from '../rules/small-shop';

const at = (text: string): Instant => {
  const reading = readInstant(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

/** Sprayed from 18:00 to 18:30 under twelve hours: closed until 06:30 the next morning. */
const sprayed = (rest: object, parts: SmallShop = {}): Shop =>
  smallShop({
    products: [product('p1', { reiHours: 12 }), product('p2', { reiHours: 4 })],
    recipes: [recipe('r1', 'p1', 'p2')],
    applications: [application('a1', '2026-03-02T18:00:00Z', '2026-03-02T18:30:00Z', { ...rest })],
    ...parts,
  });
const stateAt = (shop: Shop, now: string) => {
  const [standing] = keepOut(shop, at(now));
  return standing && [standing.state, standing.until];
};

test.each([
  { now: '2026-03-03T06:29:59.999Z', state: 'closed' },
  { now: '2026-03-03T06:30:00Z', state: 'closed' },
  { now: '2026-03-03T09:59:59.999Z', state: 'closed' },
  { now: '2026-03-03T10:00:00Z', state: 'open' },
])('an amendment that nobody confirmed keeps a bench closed until the later end: $now', ({ now, state }) => {
  const closedUntil = '2026-03-03T10:00:00Z';
  expect(stateAt(sprayed({ closedUntil }), now)).toEqual([state, state === 'open' ? null : at(closedUntil)]);
});

test('an end that an amendment keeps never shortens what the record says', () => {
  const shop = sprayed({ closedUntil: '2026-03-02T20:00:00Z' });
  expect(stateAt(shop, '2026-03-02T21:00:00Z')).toEqual(['closed', at('2026-03-03T06:30:00Z')]);
});

test('kept closed until the end of time means that nobody knows', () => {
  const shop = sprayed({});
  const kept = (closedUntil: number) => ({
    ...shop,
    applications: shop.applications.map((one) => ({ ...one, closedUntil: closedUntil as Instant })),
  });
  expect(stateAt(kept(LAST_INSTANT), '2030-01-01T00:00:00Z')).toEqual(['unknown', null]);
  expect(stateAt(kept(Number.NaN), '2030-01-01T00:00:00Z')).toEqual(['unknown', null]);
});

test('a withdrawn record counts nowhere, and until that is confirmed it counts as it did', () => {
  const withdrawn = sprayed({ withdrawn: true });
  expect(countingApplications(withdrawn)).toEqual([]);
  expect(stateAt(withdrawn, '2026-03-02T18:10:00Z')).toEqual(['open', null]);
  const asked = sprayed({ withdrawn: true, closedUntil: '2026-03-03T06:30:00Z' });
  expect(countingApplications(asked)).toHaveLength(1);
  expect(stateAt(asked, '2026-03-02T18:10:00Z')).toEqual(['closed', at('2026-03-03T06:30:00Z')]);
  const running = sprayed(
    {},
    {
      applications: [
        application('a1', '2026-03-02T18:00:00Z', null, { withdrawn: true, closedUntil: '2026-03-03T06:30:00Z' }),
      ],
    },
  );
  expect(stateAt(running, '2026-03-09T00:00:00Z')).toEqual(['unknown', null]);
});

test('neither strips nor what is learned from records hold a withdrawn one', () => {
  const measured = {
    sprayed: '1 L',
    pH: 6,
    acid: { product: 'acid', amount: '1 mL' },
    products: [
      { product: 'p1', dose: '2 mL/L' },
      { product: 'p2', dose: '2 mL/L' },
    ],
  };
  const shopWhere = (withdrawn: boolean) =>
    sprayed(
      { ...measured, withdrawn },
      {
        settings: { water: { alkalinityMgPerLCaCO3: 100, pH: 7.5 } },
        products: [
          product('p1', { reiHours: 12 }),
          product('p2', { reiHours: 4 }),
          product(
            'acid',
            {},
            {
              kind: 'pH adjuster',
              densityGPerMl: 1.2,
              contents: [{ substance: 'citric acid', amount: 50, basis: '% w/w' }],
            },
          ),
        ],
      },
    );
  const found = (shop: Shop) => ({
    strip: dayStrips(shop, [], day('2026-03-02')).benches[0]?.spraying.length,
    readings: acidReadings(shop).length,
    untried: untriedPairs(shop.recipes[0]?.ingredients ?? [], countingApplications(shop)).length,
  });
  expect(found(shopWhere(false))).toEqual({ strip: 1, readings: 1, untried: 0 });
  expect(found(shopWhere(true))).toEqual({ strip: 0, readings: 0, untried: 1 });
});

test('a rule that looks back passes a withdrawn record over', () => {
  const rulesOf = (withdrawn: boolean) =>
    planAhead(
      sprayed(
        { withdrawn },
        { products: [product('p1', { minDaysBetween: 7 }), product('p2')], programs: [once('g1', '2026-03-04')] },
      ),
      day('2026-03-03'),
      1,
    ).flags.map(({ rule }) => rule);
  expect(rulesOf(false)).toEqual(['too-soon']);
  expect(rulesOf(true)).toEqual([]);
});

const TWO = [recipe('r1', 'p1', 'p2'), recipe('r2', 'p1')];
const PLANNED = [once('g1', '2026-03-02')];
const board = (shop: Shop, now: string) =>
  keepOut(shop, at(now), unrecordedSprayings(shop, at(now))).map(({ state, unrecorded }) => [state, unrecorded.length]);

test.each([
  { now: '2026-03-02T17:59:59.999Z', state: 'open', why: 'before its start' },
  { now: '2026-03-02T18:00:00Z', state: 'unknown', why: 'from its start on' },
  { now: '2026-03-09T23:59:00Z', state: 'unknown', why: 'as long as it is asked about' },
  { now: '2026-03-10T00:00:00Z', state: 'open', why: 'a week on, its interval long past' },
])('a planned spraying of which nobody said what became keeps people out: $why', ({ now, state }) => {
  const shop = sprayed({}, { applications: [], programs: PLANNED });
  expect(board(shop, now)).toEqual([[state, state === 'open' ? 0 : 1]]);
  // The shop file's own definition counts records and nothing else.
  expect(stateAt(shop, now)).toEqual(['open', null]);
});

test('one with a long interval keeps people out until it would have reopened', () => {
  const parts = { applications: [], programs: PLANNED, products: [product('p1', { reiHours: 240 }), product('p2')] };
  const shop = sprayed({}, parts);
  expect(board(shop, '2026-03-12T18:29:59.999Z')).toEqual([['unknown', 1]]);
  expect(board(shop, '2026-03-12T18:30:00Z')).toEqual([['open', 0]]);
});

test('skipped, moved, done or on record, it is the record that counts', () => {
  const changed = (changes: object[]) =>
    board(sprayed({}, { applications: [], programs: [{ ...PLANNED[0], changes }] }), '2026-03-02T19:00:00Z');
  expect(changed([{ on: '2026-03-02', kind: 'skipped', reason: 'rain' }])).toEqual([['open', 0]]);
  expect(changed([{ on: '2026-03-02', kind: 'moved', movedTo: '2026-03-03' }])).toEqual([['open', 0]]);
  const told = sprayed({}, { programs: PLANNED });
  expect(board(told, '2026-03-02T19:00:00Z')).toEqual([['closed', 0]]);
  const elsewhere = sprayed({ benches: ['b2'] }, { programs: PLANNED, benches: [bench('b1'), bench('b2')] });
  expect(board(elsewhere, '2026-03-02T19:00:00Z')).toEqual([
    ['unknown', 1],
    ['closed', 0],
  ]);
  const done = [{ ...PLANNED[0], changes: [{ on: '2026-03-02', kind: 'done', application: 'a1' }] }];
  expect(board(sprayed({ recipe: 'r2' }, { programs: done, recipes: TWO }), '2026-03-02T19:00:00Z')).toEqual([
    ['closed', 0],
  ]);
  const inError = sprayed({ recipe: 'r2', withdrawn: true }, { programs: done, recipes: TWO });
  expect(board(inError, '2026-03-02T19:00:00Z')).toEqual([['unknown', 1]]);
});
