import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moneyText, readMoney } from '@/shared/measure/money';
import { micros } from '@/shared/quantity/amounts';

const ALONE = 'write the number alone, such as "212.00". The currency is the shop\'s.';

test.each([
  ['212.00', 212_000_000],
  ['18', 18_000_000],
  ['.5', 500_000],
  ['0', 0],
  [' 74.00 ', 74_000_000],
  ['0.000001', 1],
  ['12.345678', 12_345_678],
  ['0.0000005', 1],
  ['0.00000049', 0],
  ['100000000', 100_000_000_000_000],
])('%s is %i micros', (text, amount) => {
  expect(readMoney(text)).toEqual({ ok: true, value: amount });
});

test.each([
  ['', 'This is empty. Write it like "212.00".'],
  ['-3', '"-3" is negative. Write an amount of zero or more, such as "212.00".'],
  ['$12', `"$12": ${ALONE}`],
  ['USD 12', `"USD 12": ${ALONE}`],
  ['12 €', `"12 €": ${ALONE}`],
  ['1/2', `"1/2": ${ALONE}`],
  ['12.50 each', `"12.50 each": ${ALONE}`],
  ['free', `"free": ${ALONE}`],
  [
    '1,200.50',
    '"1,200.50" has a comma in its number. Write a decimal with a point, such as 1.5, and a thousand as 1000.',
  ],
  ['12,50', '"12,50" has a comma in its number. Write a decimal with a point, such as 1.5, and a thousand as 1000.'],
  ['1e5', '"1e5" has an exponent. Write the number out in plain digits.'],
  ['100000000.01', '"100000000.01" is more than 100000000. Check the number.'],
  ['9'.repeat(200), 'This is longer than 100 characters. Write it like "212.00".'],
])('"%s" is refused in one sentence', (text, says) => {
  expect(readMoney(text)).toEqual({ ok: false, message: says });
});

test.each([
  [0, '0.000000'],
  [1, '0.000001'],
  [999_999, '0.999999'],
  [12_345_678, '12.345678'],
  [100_000_000_000_000, '100000000.000000'],
])('%i micros are written with six places', (amount, text) => {
  expect(moneyText(micros(amount))).toBe(text);
});

test('money written and read again is the same to the micro', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100_000_000_000_000 }), (amount) => {
      expect(readMoney(moneyText(micros(amount)))).toEqual({ ok: true, value: amount });
    }),
    { numRuns: 1000 },
  );
});
