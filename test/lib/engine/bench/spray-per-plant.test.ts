import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  plantsPerSquareMetre,
  sprayPerPlantByGround,
  sprayPerPlantByLeaves,
  sprayPerPlantTried,
} from '@/lib/engine/bench/spray-per-plant';
import { exact } from '@/shared/quantity/exact';

test('a trial of twelve plants that took 180 of 500 mL says 15 mL a plant', () => {
  expect(sprayPerPlantTried(exact(500n), exact(320n), 12)).toEqual({ ok: true, value: 15 });
});

test.each([
  [500, 320, 0, /No plants/],
  [320, 500, 12, /More is left/],
  [500, 500, 12, /Nothing is gone/],
])('%f mL in, %f left, %i plants is refused with a sentence', (putIn, left, plants, says) => {
  const reading = sprayPerPlantTried(exact(putIn), exact(left), plants);
  expect(reading).toEqual({ ok: false, message: expect.stringMatching(says) });
});

test('what stays on the leaves is what the plant takes, and says whose figure that is', () => {
  const retention = { mlPerSquareMetre: 100, source: 'weighed here' };
  expect(sprayPerPlantByLeaves(1500, 1, retention).mlPerPlant).toBe(15);
  expect(sprayPerPlantByLeaves(1500, 2, retention)).toEqual({
    mlPerPlant: 30,
    rests: '1500 cm² of leaf, both sides, at 100 mL on each m² (weighed here)',
  });
});

test('spray on the ground is shared by the plants that stand on it', () => {
  expect(plantsPerSquareMetre(25, 'square')).toBe(16);
  expect(sprayPerPlantByGround(exact(3200n), exact(10n), 25, 'square')).toEqual({ ok: true, value: 20 });
  expect(sprayPerPlantByGround(exact(3200n), exact(0n), 25, 'square')).toMatchObject({ ok: false });
});

test('however they stand, all plants of a square metre together take what it takes', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 200 }),
      fc.constantFrom('square' as const, 'staggered' as const),
      (cm, standing) => {
        const each = sprayPerPlantByGround(exact(200n), exact(1n), cm, standing);
        expect(each.ok && each.value * plantsPerSquareMetre(cm, standing)).toBeCloseTo(200, 9);
      },
    ),
  );
});
