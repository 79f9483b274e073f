import fc from 'fast-check';
import { expect, test } from 'vitest';
import { phAfter, readingOf } from '@/lib/engine/mix/acid-doses';
import { learnedCorrection, type Reading } from '@/lib/engine/mix/learned-correction';
import { carbonateOf } from '@/lib/engine/mix/water';
import { acid, powder } from './some-products';

const readings = (...ratios: number[]): Reading[] => ratios.map((ratio) => ({ estimated: 2, used: 2 * ratio }));

test.each<[string, number[], number | null, boolean]>([
  ['no reading teaches nothing', [], null, false],
  ['nor does a single one', [1.2], null, false],
  ['two teach what lies between them', [1.1, 1.2], 1.15, false],
  ['of three the middle one counts, so that one slip moves nothing', [1.2, 9, 1.1], 1.2, false],
  ['of four the middle two', [1, 1.1, 1.2, 0.1], 1.05, false],
  ['a factor of 1.4 is within the bounds', [1.4, 1.4], 1.4, false],
  ['more than 1.4 is held there', [1.41, 1.41], 1.4, true],
  ['a factor of 0.7 is within the bounds', [0.7, 0.7], 0.7, false],
  ['less than 0.7 is held there', [0.69, 0.69], 0.7, true],
  ['a reading without acid says nothing', [1.2, 0], null, false],
])('%s', (_, ratios, factor, beyondBounds) => {
  const learned = learnedCorrection(readings(...ratios));
  if (factor === null) return expect(learned).toBeNull();
  expect(learned).toMatchObject({ readings: ratios.length, beyondBounds });
  expect(learned?.factor).toBeCloseTo(factor, 12);
});

test('a reading where no acid was estimated says nothing either', () => {
  expect(learnedCorrection([{ estimated: 0, used: 1 }, ...readings(1.1)])).toBeNull();
});

test('the factor never leaves 0.7 to 1.4, whatever the readings and their order', () => {
  const ratio = fc.double({ min: 0.001, max: 1000, noNaN: true });
  fc.assert(
    fc.property(fc.array(ratio, { minLength: 2 }), (ratios) => {
      const learned = learnedCorrection(readings(...ratios));
      expect(learned?.factor).toBeGreaterThanOrEqual(0.7);
      expect(learned?.factor).toBeLessThanOrEqual(1.4);
      expect(learnedCorrection(readings(...ratios.toReversed()))?.factor).toBeCloseTo(learned?.factor ?? 0, 12);
    }),
  );
});

test('water that takes a fifth more than the shop believes is learnt from two mixes', () => {
  const [believed, real] = [100, 120].map((alkalinityMgPerLCaCO3) => carbonateOf({ alkalinityMgPerLCaCO3, pH: 7.5 }));
  const citric = acid('c', ['99 % w/w citric acid'], powder);
  if (!believed || !real) throw new Error('there is such water');
  const noted = [0.15, 0.2].map((used) => readingOf(believed, citric, used, phAfter(real, citric, used) ?? 0));
  const learned = learnedCorrection(noted.flatMap((reading) => (reading ? [reading] : [])));
  // Not quite, since the little free H⁺ does not grow with the carbonate.
  expect(learned?.factor).toBeCloseTo(1.2, 3);
});

test('no reading is made of an acid of unknown strength, or of a pH above that of the water', () => {
  const water = carbonateOf({ alkalinityMgPerLCaCO3: 100, pH: 7.5 });
  if (!water) throw new Error('there is such water');
  expect(readingOf(water, acid('p', ['25 % w/w phosphoric acid']), 0.2, 6)).toBeNull();
  expect(readingOf(water, acid('c', ['99 % w/w citric acid'], powder), 0.2, 7.7)).toBeNull();
});
