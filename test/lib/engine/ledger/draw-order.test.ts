import { expect, test } from 'vitest';
import { drawnBefore, type Turn } from '@/lib/engine/ledger/draw-order';

const turn = (from: Partial<Turn>): Turn => ({
  lastDay: 100,
  opened: false,
  received: 50,
  lot: 'm',
  place: 1,
  ...from,
});

test.each([
  { name: 'what dies first', first: { lastDay: 99, received: 60, lot: 'z' }, second: { opened: true } },
  {
    name: 'what dies at all before what never does',
    first: {},
    second: { lastDay: Number.POSITIVE_INFINITY, opened: true },
  },
  { name: 'an opened one', first: { opened: true, received: 60 }, second: { received: 40 } },
  { name: 'what came earlier', first: { received: 40, lot: 'z' }, second: { lot: 'a' } },
  { name: 'the earlier lot', first: { lot: 'a', place: 3 }, second: { lot: 'b', place: 0 } },
  { name: 'the earlier place', first: { place: 0 }, second: { place: 1 } },
])('drawn first: $name', ({ first, second }) => {
  expect(drawnBefore(turn(first), turn(second))).toBeLessThan(0);
  expect(drawnBefore(turn(second), turn(first))).toBeGreaterThan(0);
});

test('two that never die are told apart by the rest, not by a difference of infinities', () => {
  const never = { lastDay: Number.POSITIVE_INFINITY };
  expect(drawnBefore(turn({ ...never, opened: true }), turn(never))).toBeLessThan(0);
  expect(drawnBefore(turn(never), turn(never))).toBe(0);
});
