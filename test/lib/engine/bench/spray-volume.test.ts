import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plantsOn, sprayFor } from '@/lib/engine/bench/spray-volume';
import type { Bench, Sprayer } from '@/lib/engine/shop';
import { compare, divide, exact, multiply, subtract, toNumber } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';

const sprayer = (capacity: number, lossPerFill: number, measuringStep: number): Sprayer => ({
  capacity: exact(capacity),
  lossPerFill: exact(lossPerFill),
  measuringStep: exact(measuringStep),
});

const bench = (count: number, mlPerPlant: number | null, coverage = 1): Bench => ({
  id: 'b',
  name: 'Fern wall',
  customers: false,
  enclosed: false,
  coverage,
  area: null,
  place: null,
  harvestOn: null,
  plants: [{ name: 'fern', pot: '4 in', count, mlPerPlant }],
});

test.each([
  { name: '100 plants at 20 mL fit one 2.5 L fill', at: [100, 20, 1], by: [2500, 0, 100], fills: 1, fill: 2000 },
  {
    name: 'a loss of 60 mL is added to the fill, then it goes up to the step',
    at: [100, 20, 1],
    by: [2500, 60, 100],
    fills: 1,
    fill: 2100,
  },
  {
    name: 'exactly what two fills hold takes two, not three',
    at: [100, 22, 1],
    by: [1200, 100, 0],
    fills: 2,
    fill: 1200,
  },
  { name: 'a millilitre more takes a third', at: [2201, 1, 1], by: [1200, 100, 100], fills: 3, fill: 900 },
  {
    name: 'the step never takes a fill over what the sprayer holds',
    at: [100, 18.5, 1],
    by: [1892.705892, 0, 1000],
    fills: 1,
    fill: 1892.705892,
  },
  {
    name: 'coverage of 1.1 on 1,000 mL is exactly one fill of 1,100 mL',
    at: [100, 10, 1.1],
    by: [1100, 0, 100],
    fills: 1,
    fill: 1100,
  },
])('$name', ({ at: [count = 0, ml = 0, coverage], by: [capacity = 0, loss = 0, step = 0], fills, fill }) => {
  const spray = sprayFor([bench(count, ml, coverage)], sprayer(capacity, loss, step));
  expect(spray?.fills).toBe(fills);
  expect(spray && toNumber(spray.fill)).toBe(fill);
  expect(spray && toNumber(spray.total)).toBeCloseTo(fills * fill, 9);
});

test('one bench whose plants have no mL makes the whole spray unknown, not smaller', () => {
  expect(sprayFor([bench(10, 20), bench(5, null)], sprayer(5000, 0, 0))).toBeNull();
});

test('no plants take no spray and no fill', () => {
  expect(sprayFor([bench(0, 20)], sprayer(5000, 50, 100))).toMatchObject({ fills: 0, total: exact(0) });
});

test('plants are counted over all benches, whatever their coverage', () => {
  expect(plantsOn([bench(10, 20, 0.5), bench(5, null)])).toBe(15);
});

test('any spray reaches the plants, in as few equal fills as possible, none over the brim', () => {
  const some = fc.record({
    count: fc.integer({ min: 1, max: 2000 }),
    ml: fc.integer({ min: 1, max: 900 }),
    coverage: fc.integer({ min: 1, max: 20 }),
    capacity: fc.integer({ min: 500, max: 20000 }),
    loss: fc.integer({ min: 0, max: 499 }),
    step: fc.constantFrom(0, 1, 50, 100, 500, 1000),
  });
  fc.assert(
    fc.property(some, ({ count, ml, coverage, capacity, loss, step }) => {
      const by = sprayer(capacity, loss, step);
      const spray = sprayFor([bench(count, ml / 10, coverage / 10)], by);
      if (!spray) throw new Error('every mL per plant is known');
      const useful = multiply(exact(spray.fills), subtract(spray.fill, by.lossPerFill));
      expect(compare(useful, spray.onPlants)).toBeGreaterThanOrEqual(0);
      expect(compare(spray.fill, by.capacity)).toBeLessThanOrEqual(0);
      const oneFewer = multiply(exact(spray.fills - 1), subtract(by.capacity, by.lossPerFill));
      expect(compare(oneFewer, spray.onPlants)).toBe(-1);
      const steps = step === 0 ? exact(0) : divide(spray.fill, by.measuringStep);
      expect(spray.fill === by.capacity || compare(steps, exact(wholeNearest(steps))) === 0).toBe(true);
    }),
    { numRuns: 1_000 },
  );
});
