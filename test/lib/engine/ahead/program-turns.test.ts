import { expect, test } from 'vitest';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { day, once, planOf, recipe, smallShop } from '../rules/small-shop';

const weekly = (changes: object[]) => ({
  recipes: [recipe('r1', 'p1'), recipe('r2', 'p1')],
  programs: [
    once('g1', '2026-03-03', { repeat: 'FREQ=WEEKLY;BYDAY=TU', recipes: ['r1', 'r2'], endsOn: '2026-03-24', changes }),
  ],
});
const seen = (changes: object[], today = '2026-03-02', weeks = 5) =>
  planOf(weekly(changes), today, weeks).sprayings.map(({ date, recipe, occurrence }) => [date, recipe.id, occurrence]);

test('a program without changes has all its turns', () => {
  expect(seen([])).toEqual([
    ['2026-03-03', 'r1', 0],
    ['2026-03-10', 'r2', 1],
    ['2026-03-17', 'r1', 2],
    ['2026-03-24', 'r2', 3],
  ]);
});

test('what is done or skipped is not sprayed again, and the rotation goes on as it would have', () => {
  expect(
    seen([
      { on: '2026-03-03', kind: 'done' },
      { on: '2026-03-17', kind: 'skipped' },
    ]),
  ).toEqual([
    ['2026-03-10', 'r2', 1],
    ['2026-03-24', 'r2', 3],
  ]);
});

test('a moved spraying is on its new day with its own recipe, even past the end of its program or into the horizon', () => {
  expect(seen([{ on: '2026-03-24', kind: 'moved', movedTo: '2026-03-26' }]).at(-1)).toEqual(['2026-03-26', 'r2', 3]);
  const moved = [{ on: '2026-03-03', kind: 'moved', movedTo: '2026-03-12', startTime: '06:15' }];
  expect(seen(moved, '2026-03-11', 1)).toEqual([
    ['2026-03-12', 'r1', 0],
    ['2026-03-17', 'r1', 2],
  ]);
  const [first] = planAhead(smallShop(weekly(moved)), day('2026-03-11'), 1).sprayings;
  expect(new Date(Number(first?.startsAt)).toISOString()).toBe('2026-03-12T06:15:00.000Z');
});

test('a moved spraying out of the horizon is not in it', () => {
  expect(seen([{ on: '2026-03-10', kind: 'moved', movedTo: '2026-07-01' }]).map(([date]) => date)).toEqual([
    '2026-03-03',
    '2026-03-17',
    '2026-03-24',
  ]);
});

test('a change of a day on which the program has nothing is refused', () => {
  expect(() => seen([{ on: '2026-03-04', kind: 'skipped' }])).toThrow(/has no spraying on 2026-03-04/);
  expect(() => seen([{ on: '2026-03-03', kind: 'moved' }])).toThrow(/write the day it is on now/);
  expect(() =>
    seen([
      { on: '2026-03-03', kind: 'done' },
      { on: '2026-03-03', kind: 'skipped' },
    ]),
  ).toThrow(/told/);
});
