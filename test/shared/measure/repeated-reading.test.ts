import fc from 'fast-check';
import { expect, test } from 'vitest';
import { portionsOf, repeatedReading } from '@/shared/measure/repeated-reading';
import { exact } from '@/shared/quantity/exact';

const portions = (...amounts: [pieces: number, amount: number][]) =>
  amounts.map(([pieces, amount]) => ({ pieces, amount: exact(amount) }));

test('five level spoons give their mean, and how far one is from another', () => {
  const weighed = repeatedReading(portions([1, 4.8], [1, 5], [1, 4.6], [1, 5.1], [1, 4.9]));
  expect(weighed).toMatchObject({ pieces: 5, readings: 5, mean: 4.88, least: 4.6, most: 5.1 });
  // Sample standard deviation: squares .0064 + .0144 + .0784 + .0484 + .0004 = .148, over 4.
  expect(weighed.deviation).toBeCloseTo(Math.sqrt(0.148 / 4), 12);
  expect(weighed.spread).toBeCloseTo(Math.sqrt(0.148 / 4) / 4.88, 12);
});

test('a reading of several spoons counts for as many', () => {
  const weighed = repeatedReading(portions([3, 15], [1, 4]));
  expect(weighed).toMatchObject({ mean: 4.75, least: 4, most: 5 });
  // 3 × 0.25² + 1 × 0.75² over one.
  expect(weighed.deviation).toBeCloseTo(Math.sqrt(0.75), 12);
});

test('one reading says nothing of the spread', () => {
  expect(repeatedReading(portions([10, 49]))).toMatchObject({ mean: 4.9, deviation: null, spread: null });
  expect(() => repeatedReading([])).toThrow(RangeError);
});

test('a scale that was not set back is read as what each spoon added', () => {
  const each = portionsOf(['4.8', ' 5 g', ''], 1, 'each');
  const total = portionsOf(['4.8', '9.8', ''], 1, 'total');
  expect(total).toEqual(each);
  expect(portionsOf(['4.8', '4.8'], 1, 'total')).toMatchObject({ ok: false, at: 1 });
  expect(portionsOf(['4.8', '0'], 1, 'each')).toMatchObject({ ok: false, at: 1 });
  expect(portionsOf(['4.8', 'about five'], 1, 'each')).toMatchObject({ ok: false, at: 1 });
  expect(portionsOf(['4.8', '4.7 lb'], 1, 'each')).toMatchObject({ ok: false, at: 1 });
});

const grams = fc.integer({ min: 1, max: 90_000 }).map((milligrams) => milligrams / 1000);
const reading = fc.tuple(fc.integer({ min: 1, max: 20 }), grams);

test('whatever is weighed, the mean lies between the readings, and their order and their unit change nothing else', () => {
  fc.assert(
    fc.property(fc.array(reading, { minLength: 1, maxLength: 8 }), (readings) => {
      const weighed = repeatedReading(portions(...readings));
      expect(weighed.mean).toBeGreaterThanOrEqual(weighed.least - 1e-9);
      expect(weighed.mean).toBeLessThanOrEqual(weighed.most + 1e-9);
      const backwards = repeatedReading(portions(...readings.toReversed()));
      expect(backwards.mean).toBe(weighed.mean);
      expect(backwards.deviation ?? 0).toBeCloseTo(weighed.deviation ?? 0, 6);
      const inMilligrams = repeatedReading(portions(...readings.map(([n, g]): [number, number] => [n, g * 1000])));
      expect(inMilligrams.spread ?? 0).toBeCloseTo(weighed.spread ?? 0, 6);
    }),
  );
});

test('alike spoons have no spread, however many are in each reading', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 6 }), (pieces) => {
      const weighed = repeatedReading(pieces.map((n) => ({ pieces: n, amount: exact(5n * BigInt(n)) })));
      expect(weighed).toMatchObject({ mean: 5, deviation: 0, spread: 0, least: 5, most: 5 });
    }),
  );
});

test('a running total and the single readings say the same', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 9000 }), { minLength: 1, maxLength: 8 }), (milligrams) => {
      const texts = milligrams.map((mg) => String(mg / 1000));
      let sum = 0;
      const totals = milligrams.map((mg) => {
        sum += mg;
        return String(sum / 1000);
      });
      expect(portionsOf(totals, 2, 'total')).toEqual(portionsOf(texts, 2, 'each'));
    }),
  );
});
