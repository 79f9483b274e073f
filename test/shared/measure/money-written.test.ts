import fc from 'fast-check';
import { expect, test } from 'vitest';
import { coinPlaces } from '@/shared/measure/coin-places';
import { readMoney } from '@/shared/measure/money';
import { plainMoney } from '@/shared/measure/money-written';
import { showMoney } from '@/shared/measure/show';
import { micros } from '@/shared/quantity/amounts';

test.each([
  ['$14.50', 'USD', '14.50'],
  ['14.50 $', 'USD', '14.50'],
  ['US$14.50', 'USD', '14.50'],
  ['14.50 usd', 'USD', '14.50'],
  ['$1,234.50', 'USD', '1234.50'],
  ['1,234', 'USD', '1234'],
  ['1,234,567', 'USD', '1234567'],
  ['14,50 €', 'EUR', '14.50'],
  ['€ 1.234,50', 'EUR', '1234.50'],
  ['1.234.567', 'EUR', '1234567'],
  ['1 234,50 EUR', 'EUR', '1234.50'],
  ['kr 120', 'SEK', '120'],
  ['£9', 'GBP', '9'],
  ['none', 'USD', '0'],
  ['free', 'USD', '0'],
])('%s in %s is %s', (text, currency, plain) => {
  expect(plainMoney(text, currency)).toBe(plain);
});

test.each([
  ['€14.50', 'USD'],
  ['$14.50', 'EUR'],
  ['14.50 GBP', 'USD'],
  ['$14.50 USD', 'USD'],
  ['1,2,3', 'USD'],
  ['about 5', 'USD'],
  ['-5', 'USD'],
  ['$-5', 'USD'],
  ['5-6', 'USD'],
])('%s stays as it is in %s, and is refused', (text, currency) => {
  expect(plainMoney(text, currency)).toBe(text);
  expect(readMoney(plainMoney(text, currency)).ok).toBe(false);
});

test('what can be two numbers in a currency of three decimals is refused', () => {
  expect(readMoney(plainMoney('1,234', 'KWD')).ok).toBe(false);
});

test('what the pages show as money can be typed, and is the same money', () => {
  const currency = fc.constantFrom('USD', 'EUR', 'GBP', 'SEK', 'HUF', 'JPY', 'CHF', 'AUD', 'CAD', 'BRL');
  fc.assert(
    fc.property(currency, fc.integer({ min: 1_000, max: 9_999_999 }), (code, coins) => {
      const amount = micros(coins * 10 ** (6 - coinPlaces(code)));
      expect(readMoney(plainMoney(showMoney(amount, code), code))).toEqual({ ok: true, value: amount });
    }),
  );
});

test('a number that was read before is read as the same', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 9_999_999 }), fc.constantFrom('USD', 'EUR', 'JPY'), (cents, code) => {
      const text = (cents / 100).toFixed(2);
      expect(plainMoney(text, code)).toBe(text);
    }),
  );
});
