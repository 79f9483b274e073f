import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type LotContainer, paidFor, parentOf, partsOf } from '@/lib/engine/exchange/split-lots';
import { micros, stock } from '@/shared/quantity/amounts';
import { shareOut } from '@/shared/quantity/rounding';
import { Day } from '@/shared/time/day';

const SIZE = stock(100);
const OPENED = Day.parse('2026-03-01');

const containersOf = (paid: number | null, states: { left: number; opened: boolean }[]): LotContainer[] => {
  const shares = paid === null ? null : shareOut(micros(paid), states.length);
  return states.map(({ left, opened }, place) => ({
    ...{ place, remaining: stock(left), paid: shares?.[place] ?? null, expiresOn: null, keptIn: null },
    openedOn: opened ? OPENED : null,
  }));
};

const full = { left: 100, opened: false };
const begun = { left: 60, opened: true };
const parts = (containers: LotContainer[], taken: string[] = []) =>
  partsOf({ id: 'l', size: SIZE }, containers, (id) => taken.includes(id));

test('a lot of one stays one, whatever is in it', () => {
  expect(parts(containersOf(10, [begun])).map(({ id }) => id)).toEqual(['l']);
});

test('full ones stay together under the name of the lot, and a begun one gets a line of its own', () => {
  const told = parts(containersOf(10, [full, begun, full]));
  expect(told.map(({ id, containers }) => [id, containers.map(({ place }) => place)])).toEqual([
    ['l', [0, 2]],
    ['l~2', [1]],
  ]);
  expect(told.map(paidFor)).toEqual([7, 3]);
});

test('a name that somebody gave to another lot is not taken', () => {
  expect(parts(containersOf(null, [begun, begun]), ['l~1']).map(({ id }) => id)).toEqual(['l~~1', 'l~2']);
});

test('full ones whose prices do not share out again as they are each stand apart', () => {
  const uneven = containersOf(10, [full, full]).map((one, place) => ({ ...one, paid: micros(place) }));
  expect(parts(uneven).map((part) => [part.id, paidFor(part)])).toEqual([
    ['l~1', 0],
    ['l~2', 1],
  ]);
  const halfKnown = containersOf(10, [full, full]).map((one, place) => ({
    ...one,
    paid: place === 0 ? micros(5) : null,
  }));
  expect(parts(halfKnown).map((part) => [part.id, paidFor(part)])).toEqual([
    ['l', 5],
    ['l~2', null],
  ]);
});

test('the parts of a lot cost what the lot cost, and each container its own share when it is shared out again', () => {
  const states = fc.array(fc.record({ left: fc.constantFrom(0, 60, 100, 100), opened: fc.boolean() }), {
    minLength: 1,
    maxLength: 12,
  });
  fc.assert(
    fc.property(states, fc.nat(100_000), (states, paid) => {
      const containers = containersOf(paid, states);
      const told = parts(containers);
      expect(told.reduce((sum, part) => sum + (paidFor(part) ?? Number.NaN), 0)).toBe(paid);
      for (const part of told) {
        const again = shareOut(paidFor(part) ?? micros(0), part.containers.length);
        expect(again).toEqual(part.containers.map(({ paid }) => paid));
      }
      const places = told.flatMap(({ containers }) => containers.map(({ place }) => place));
      expect([...places].sort((a, b) => a - b)).toEqual(containers.map(({ place }) => place));
      expect(new Set(told.map(({ id }) => id)).size).toBe(told.length);
    }),
    { numRuns: 1_000 },
  );
});

test.each([
  { id: 'l~2', parent: 'l' },
  { id: 'a~b~12', parent: 'a~b' },
  { id: 'l~~1', parent: 'l' },
  { id: 'l', parent: null },
  { id: 'l~', parent: null },
  { id: '~1', parent: null },
])('$id is a part of $parent', ({ id, parent }) => {
  expect(parentOf(id)).toBe(parent);
});
