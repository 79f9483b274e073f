import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Microlitres, type Micros, microlitres, micros } from '@/shared/quantity/amounts';
import { compare, exact, fraction, toNumber } from '@/shared/quantity/exact';
import {
  nearestBy,
  ofEach,
  share,
  shareOut,
  stepUp,
  wholeDown,
  wholeNearest,
  wholeSeconds,
  wholeUp,
  wholeWeeks,
} from '@/shared/quantity/rounding';

const RUNS = { numRuns: 1_000 };
const amount = fc.nat(2 ** 31 - 1);

test.each([
  { value: '2.5', nearest: 3, up: 3, down: 2 },
  { value: '-2.5', nearest: -3, up: -2, down: -3 },
  { value: '2.4999999999999999999', nearest: 2, up: 3, down: 2 },
  { value: '-0.5', nearest: -1, up: 0, down: -1 },
  { value: '7', nearest: 7, up: 7, down: 7 },
])('$value goes to $nearest, up to $up, down to $down', ({ value, nearest, up, down }) => {
  expect(wholeNearest(exact(value)) + 0).toBe(nearest);
  expect(wholeUp(exact(value)) + 0).toBe(up);
  expect(wholeDown(exact(value)) + 0).toBe(down);
});

test('a number too large to be exact is an error, not a nearby number', () => {
  expect(() => wholeNearest(exact(2n ** 53n))).toThrow(RangeError);
});

test('a step of a tenth litre takes 5.41 L to 5.5 L, and leaves 5.5 L alone', () => {
  expect(toNumber(stepUp(exact('5.41'), exact('0.1')))).toBe(5.5);
  expect(toNumber(stepUp(exact('5.5'), exact('0.1')))).toBe(5.5);
});

test('without a step a volume stays as it is', () => {
  expect(compare(stepUp(fraction(1n, 3n), exact(0)), fraction(1n, 3n))).toBe(0);
});

test('a share agrees with exact fractions for any price and pack, small or huge', () => {
  const price = fc.oneof(amount, fc.nat(2 ** 53 - 1));
  fc.assert(
    fc.property(price, amount, fc.integer({ min: 1, max: 2 ** 31 - 1 }), (paid, part, size) => {
      fc.pre((paid / size) * part < 2 ** 52);
      const expected = wholeNearest<Micros>(fraction(BigInt(paid) * BigInt(part), BigInt(size)));
      expect(ofEach(micros(paid), microlitres(part), microlitres(size))).toBe(expected);
    }),
    RUNS,
  );
});

test('exactly half a micro goes up', () => {
  expect(share<Micros, Microlitres>(micros(1), microlitres(1), microlitres(2))).toBe(1);
  expect(share<Micros, Microlitres>(micros(5), microlitres(3), microlitres(10))).toBe(2);
});

test('a share of more than the whole is an error', () => {
  expect(() => share(micros(1), microlitres(3), microlitres(2))).toThrow(RangeError);
});

test('the shares of a lot add up to its price, and the first containers carry the odd micros', () => {
  fc.assert(
    fc.property(amount, fc.integer({ min: 1, max: 50 }), (paid, places) => {
      const shares = shareOut(micros(paid), places);
      expect(shares.reduce((sum, one) => sum + one, 0)).toBe(paid);
      expect([...shares].sort((a, b) => b - a)).toEqual(shares);
      expect(Math.max(...shares) - Math.min(...shares)).toBeLessThanOrEqual(1);
    }),
    RUNS,
  );
});

test('eight days are one week, seven are one, none is none, and one day late is a week late', () => {
  expect([8, 7, 0, -1, -7, -8].map(wholeWeeks)).toEqual([1, 1, 0, -1, -1, -2]);
});

test('an estimate decides as the exact value does, and asks for it only near a half', () => {
  let asked = 0;
  fc.assert(
    fc.property(fc.nat(2 ** 50), fc.integer({ min: 1, max: 1_000_000 }), (over, under) => {
      const value = fraction(BigInt(over), BigInt(under));
      const exactly = () => {
        asked += 1;
        return value;
      };
      expect(nearestBy(over / under, exactly)).toBe(wholeNearest(value));
    }),
  );
  expect(asked).toBeLessThan(100);
  expect(nearestBy(2.4999999999999996, () => fraction(5n, 2n))).toBe(3);
});

test('a wait is told in whole seconds, never too short', () => {
  expect([0, 1, 999, 1_000, 1_001].map(wholeSeconds)).toEqual([0, 1, 1, 1, 2]);
});
