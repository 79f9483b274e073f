import fc from 'fast-check';
import { expect, test } from 'vitest';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { isLong, runs } from '@/test/runs';
import { parsedOrThrow } from '../../../data/any-shop-file';
import { ShopInTime } from './a-shop-in-time';
import { History } from './history';
import type { ModelProgram } from './plain-model';
import type { Step } from './step';

/** The same histories in every ordinary run; a long run makes new ones. */
const SEED = isLong ? {} : { seed: 20_261_130 };

/*
 * Random histories of a shop: records, extra mixes, moved and skipped turns, amendments, other zones, programs and
 * intervals, restarts, and a clock that is set and drifts. Whatever the program decides is held against the plain model.
 */

const BENCHES = ['b0', 'b1', 'b2'];
const ZONES = ['America/New_York', 'America/Los_Angeles', 'Europe/London', 'Asia/Kathmandu', 'Australia/Lord_Howe'];
const START = Date.parse('2026-03-07T12:00:00Z');

const someBenches = fc.subarray(BENCHES, { minLength: 1 });
const aRecipe = fc.constantFrom('r0', 'r1', 'r2');
const aMinute = fc.integer({ min: 300, max: 1_380 });
const aWait = fc.oneof(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 0, max: 900 }));
const isSure = fc.oneof({ weight: 3, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.constant(true) });
const aPick = fc.nat({ max: 40 });

const aProgram = fc.record({ recipe: aRecipe, benches: someBenches, start: aMinute, every: fc.constantFrom(1, 2, 3) });

const sprayed = fc.record({
  do: fc.constant('spray' as const),
  recipe: aRecipe,
  benches: someBenches,
  minutes: fc.integer({ min: 0, max: 90 }),
  late: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 400 })),
  says: fc.constantFrom('turn' as const, 'turn' as const, 'extra' as const, 'nothing' as const, 'running' as const),
  pick: aPick,
});

const aStep: fc.Arbitrary<Step> = fc.oneof(
  { weight: 5, arbitrary: sprayed },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('wait' as const), minutes: aWait }) },
  { weight: 6, arbitrary: fc.record({ do: fc.constant('until' as const), by: fc.integer({ min: -200, max: 60 }) }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('tidy' as const) }) },
  // Longer than a missed spraying with a known interval is asked about.
  { weight: 1, arbitrary: fc.record({ do: fc.constant('wait' as const), minutes: fc.constant(8 * 1_440) }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('end' as const), pick: aPick }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('skip' as const), pick: aPick, isSure }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('move' as const),
      pick: aPick,
      by: fc.integer({ min: -600, max: 2_000 }),
      isSure,
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('zone' as const), zone: fc.constantFrom(...ZONES), isSure }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('program' as const), pick: aPick, to: aProgram, isSure }) },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('label' as const),
      recipe: aRecipe,
      minutes: fc.option(fc.constantFrom(0, 30, 60, 240, 720)),
      isSure,
    }),
  },
  {
    weight: 3,
    arbitrary: fc.record({
      ...{ do: fc.constant('amend' as const), pick: aPick, benches: fc.option(someBenches), isSure },
      start: fc.integer({ min: -120, max: 120 }),
      end: fc.integer({ min: -300, max: 300 }),
      withdrawn: fc.oneof({ weight: 4, arbitrary: fc.constant(false) }, { weight: 1, arbitrary: fc.constant(true) }),
    }),
  },
);

const aClockStep: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant('jump' as const), minutes: fc.integer({ min: -600, max: 2_000 }) }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('jump' as const), minutes: fc.integer({ min: -3, max: 11 }) }) },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('drift' as const),
      perMinute: fc.constantFrom(-60_000, -1_000, 500, 6_000, 570_000),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('restart' as const),
      minutes: fc.oneof(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 1_600 })),
    }),
  },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('right' as const) }) },
);

const aHistory = fc.record({
  zone: fc.constantFrom(...ZONES),
  programs: fc.array(aProgram, { minLength: 1, maxLength: 2 }),
  labels: fc.tuple(...[0, 1, 2].map(() => fc.constantFrom(0, 30, 60, 240, 720, null))),
});

function shopWith(zone: string, programs: ModelProgram[], labels: (number | null)[]) {
  return shopOfFile(
    parsedOrThrow({
      format: 'bench-and-bottle/shop@1',
      shop: { name: 'A shop', timeZone: zone, currency: 'USD', fillCapacity: '10 L' },
      products: labels.map((rei, at) => ({
        ...{ id: `p${at}`, name: `p${at}`, kind: 'insecticide' as const, form: 'liquid' as const },
        label: { reiHours: rei === null ? null : rei / 60 },
      })),
      benches: BENCHES.map((id) => ({ id, name: id })),
      recipes: labels.map((_, at) => ({
        id: `r${at}`,
        name: `r${at}`,
        ingredients: [{ product: `p${at}`, dose: '2 mL/L' }],
      })),
      programs: programs.map(({ id, recipe, benches, start, every }) => ({
        ...{
          id,
          recipes: [recipe],
          benches,
          startsOn: '2026-03-07',
          minutes: 30,
          repeat: `FREQ=DAILY;INTERVAL=${every};UNTIL=20260318`,
        },
        startTime: `${String(Math.floor(start / 60)).padStart(2, '0')}:${String(start % 60).padStart(2, '0')}`,
      })),
    }),
  );
}

function live(
  { zone, programs, labels }: { zone: string; programs: Omit<ModelProgram, 'id'>[]; labels: (number | null)[] },
  steps: Step[],
  isClockFaulty: boolean,
) {
  const named = programs.map((one, at) => ({ id: `g${at}`, ...one }));
  const byRecipe = Object.fromEntries(labels.map((rei, at) => [`r${at}`, rei]));
  const model = { zone, programs: named, labels: byRecipe, records: [], places: {}, told: {} };
  const history = new History(new ShopInTime(shopWith(zone, named, labels), START), model, isClockFaulty);
  for (const step of steps) history.take(step);
  return history.seen;
}

/** Found by a long run: a turn of a week ago that another zone brings back among those that are asked about. */
const WEEK_OLD: [Parameters<typeof live>[0], Step[]] = [
  { zone: 'America/New_York', programs: [{ recipe: 'r0', benches: ['b0'], start: 855, every: 3 }], labels: [0, 0, 0] },
  [
    { do: 'until', by: 0 },
    ...[11_520, 525, 11_520].map((minutes) => ({ do: 'wait' as const, minutes })),
    { do: 'zone', zone: 'Asia/Kathmandu', isSure: false },
  ],
];

test('in no history with a right clock a bench opens early, or by a change that nobody confirmed', {
  timeout: 3_600_000,
}, () => {
  const seen = { open: 0, out: 0 };
  fc.assert(
    fc.property(aHistory, fc.array(aStep, { minLength: 3, maxLength: 14 }), (start, steps) => {
      const its = live(start, steps, false);
      seen.open += its.open;
      seen.out += its.out;
    }),
    { numRuns: runs(700, 70_000), ...SEED, examples: [WEEK_OLD] },
  );
  expect(seen.open).toBeGreaterThan(500);
  expect(seen.out).toBeGreaterThan(500);
});

test('nor in one with a clock that is set, drifts, or stops with its machine', { timeout: 3_600_000 }, () => {
  const seen = { open: 0, out: 0 };
  const anyStep = fc.oneof({ weight: 2, arbitrary: aStep }, { weight: 1, arbitrary: aClockStep });
  fc.assert(
    fc.property(aHistory, fc.array(anyStep, { minLength: 4, maxLength: 16 }), (start, steps) => {
      const its = live(start, steps, true);
      seen.open += its.open;
      seen.out += its.out;
    }),
    { numRuns: runs(300, 30_000), ...SEED },
  );
  expect(seen.open).toBeGreaterThan(200);
  expect(seen.out).toBeGreaterThan(200);
});
