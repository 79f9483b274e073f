import fc from 'fast-check';
import { expect, test } from 'vitest';
import { proposedOrder } from '@/lib/engine/rotation/proposed-order';
import { modeRepeated } from '@/lib/engine/rules/mode-repeated';
import { runs } from '@/test/runs';
import { application, bench, once, planOf, product, recipe, type SmallShop } from '../rules/small-shop';

const products = [
  product('a', { modes: ['IRAC 3A'] }),
  product('b', { modes: ['IRAC 5'] }),
  product('c', { modes: ['IRAC 28'] }),
  product('plain'),
];
const recipes = [
  ...['a', 'b', 'c', 'plain'].map((id) => recipe(id, id)),
  recipe('a2', 'a'),
  recipe('a3', 'a', 'plain'),
  recipe('ab', 'a', 'b'),
];
/** A program that goes through the recipes day by day. */
const daily = (id: string, names: string[], rest: object = {}) =>
  once(id, '2026-03-02', { recipes: names, repeat: 'FREQ=DAILY', ...rest });
const proposed = (parts: SmallShop, most = 1, weeks = 2) => {
  const plan = planOf({ products, recipes, settings: { sameModeInARow: most }, ...parts }, '2026-03-02', weeks);
  const [program] = plan.shop.programs;
  if (!program) throw new Error('there is a program');
  const { recipes: found, program: _, ...rest } = proposedOrder(plan, program);
  return { order: found.map(({ id }) => id), ...rest };
};

test('an order that keeps the limit stays as it is', () => {
  expect(proposed({ programs: [daily('g', ['a', 'b', 'c'])] })).toEqual({
    ...{ order: ['a', 'b', 'c'], isAsNow: true, repeatsNow: 0, repeats: 0, proven: true },
  });
});

test('an order that repeats is changed into one that does not', () => {
  // Fourteen days of a a2 b c: each round has the second a after the first, so three whole ones and a half.
  expect(proposed({ programs: [daily('g', ['a', 'a2', 'b', 'c'])] })).toEqual({
    ...{ order: ['a', 'b', 'a2', 'c'], isAsNow: false, repeatsNow: 4, repeats: 0, proven: true },
  });
});

test('what is on record and what other programs spray decides, too', () => {
  const sprayed = [application('r', '2026-03-01T18:00:00Z', '2026-03-01T18:30:00Z', { recipe: 'a' })];
  const programs = [daily('g', ['a', 'b'], { endsOn: '2026-03-03' })];
  expect(proposed({ programs, applications: sprayed })).toMatchObject({ order: ['b', 'a'], repeatsNow: 1, repeats: 0 });
  const other = once('h', '2026-03-02', { recipes: ['b'], startTime: '20:00' });
  expect(proposed({ programs: [...programs, other] })).toMatchObject({ order: ['a', 'b'], repeatsNow: 1, repeats: 1 });
  const elsewhere = { benches: [bench('b1'), bench('b2')], programs: [...programs, { ...other, benches: ['b2'] }] };
  expect(proposed(elsewhere)).toMatchObject({ isAsNow: true, repeatsNow: 0 });
});

test('what a bench of another program gets too often is not counted', () => {
  const sprayed = [
    application('r', '2026-03-01T18:00:00Z', '2026-03-01T18:30:00Z', { recipe: 'b', benches: ['b1', 'b2'] }),
  ];
  const both = once('h', '2026-03-02', { recipes: ['b'], benches: ['b1', 'b2'], startTime: '20:00' });
  const programs = [daily('g', ['a', 'c']), both];
  expect(proposed({ benches: [bench('b1'), bench('b2')], programs, applications: sprayed })).toMatchObject({
    repeatsNow: 0,
  });
});

test('where no order keeps the limit, the one that breaks it least is said, and that there is none', () => {
  expect(proposed({ programs: [daily('g', ['a', 'a2'])] })).toMatchObject({ repeats: 13, isAsNow: true, proven: true });
  // Fourteen days of aaab: two too many in each of three rounds, and one more. Of abaa: a, then three times b and aaa, then b.
  expect(proposed({ programs: [daily('g', ['a', 'a2', 'a3', 'b'])] })).toEqual({
    ...{ order: ['a', 'b', 'a3', 'a2'], isAsNow: false, repeatsNow: 7, repeats: 6, proven: true },
  });
});

test('a recipe without any group lies in between and breaks no row', () => {
  expect(proposed({ programs: [daily('g', ['a', 'plain', 'a2', 'b', 'c'])] })).toEqual({
    ...{ order: ['a', 'plain', 'b', 'a2', 'c'], isAsNow: false, repeatsNow: 3, repeats: 0, proven: true },
  });
});

/** Every order of a list. */
function ordersOf<T>(list: readonly T[]): T[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, at) => ordersOf(list.toSpliced(at, 1)).map((rest) => [one, ...rest]));
}

test('no order repeats less than the one that is proposed, by the rule itself', () => {
  const names = ['a', 'a2', 'b', 'c', 'plain', 'ab'];
  const anyProgram = fc.record({
    mine: fc.array(fc.constantFrom(...names), { minLength: 1, maxLength: 4 }),
    theirs: fc.array(fc.constantFrom(...names), { minLength: 1, maxLength: 3 }),
    repeat: fc.constantFrom('FREQ=DAILY', 'FREQ=DAILY;INTERVAL=2'),
    most: fc.integer({ min: 1, max: 2 }),
    before: fc.array(fc.constantFrom(...names), { maxLength: 3 }),
  });
  fc.assert(
    fc.property(anyProgram, ({ mine, theirs, repeat, most, before }) => {
      const applications = before.map((name, at) =>
        application(`r${at}`, `2026-02-2${at}T18:00:00Z`, `2026-02-2${at}T18:30:00Z`, { recipe: name }),
      );
      const shop = (order: string[]) => ({
        ...{ applications, products, recipes, settings: { sameModeInARow: most } },
        programs: [daily('g', order), daily('h', theirs, { repeat, startTime: '20:00' })],
      });
      // Of every group that comes too often, a message names how often: count each group by itself.
      const repeatsOf = (order: string[]) =>
        modeRepeated(planOf(shop(order))).reduce(
          (sum, { message }) => sum + (message.match(/in a row on/g) ?? []).length,
          0,
        );
      const { order, repeats, repeatsNow, proven } = proposed(shop(mine), most);
      expect([...order].sort()).toEqual([...mine].sort());
      expect(repeatsNow).toBe(repeatsOf(mine));
      expect(repeats).toBe(repeatsOf(order));
      expect(proven).toBe(true);
      expect(repeats).toBe(Math.min(...ordersOf(mine).map(repeatsOf)));
    }),
    { numRuns: runs(40, 1_000) },
  );
});
