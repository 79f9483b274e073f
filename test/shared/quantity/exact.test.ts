import fc from 'fast-check';
import { expect, test } from 'vitest';
import { add, compare, divide, exact, fraction, multiply, subtract, toNumber, ZERO } from '@/shared/quantity/exact';

const RUNS = { numRuns: 1_000 };
const some = fc
  .tuple(fc.bigInt(-(10n ** 12n), 10n ** 12n), fc.bigInt(1n, 10n ** 9n))
  .map(([over, under]) => fraction(over, under));

test('a tenth is a tenth: ten of them are one', () => {
  expect(compare(multiply(exact(0.1), exact(10)), exact(1))).toBe(0);
  expect(compare(add(exact(0.1), exact(0.2)), exact(0.3))).toBe(0);
});

test('numbers written with an exponent are read as they stand', () => {
  expect(exact(1e21)).toEqual({ over: 10n ** 21n, under: 1n });
  expect(exact('2.5e-3')).toEqual({ over: 1n, under: 400n });
});

test.each(['', '1/2', 'NaN', '1,5', ' 1'])('"%s" is not a decimal number', (text) => {
  expect(() => exact(text)).toThrow(RangeError);
});

test('NaN and infinity are not numbers here', () => {
  expect(() => exact(Number.NaN)).toThrow(RangeError);
  expect(() => exact(Number.POSITIVE_INFINITY)).toThrow(RangeError);
});

test('every double comes back as the double it was', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 }), (value) => {
      fc.pre(value === 0 || Math.abs(value) > 1e-9);
      expect(toNumber(exact(value)) + 0).toBe(value + 0);
    }),
    RUNS,
  );
});

test('fractions keep the laws of arithmetic', () => {
  fc.assert(
    fc.property(some, some, some, (a, b, c) => {
      expect(add(a, b)).toEqual(add(b, a));
      expect(multiply(a, add(b, c))).toEqual(add(multiply(a, b), multiply(a, c)));
      expect(subtract(add(a, b), b)).toEqual(a);
      if (compare(b, ZERO) !== 0) expect(multiply(divide(a, b), b)).toEqual(a);
    }),
    RUNS,
  );
});

test('dividing by zero is an error', () => {
  expect(() => divide(exact(1), ZERO)).toThrow(RangeError);
});
