import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plainInstant, plainMoney, plainStock } from '@/lib/engine/exchange/plain-text';
import { readMoney } from '@/shared/measure/money';
import { readSize, stockOf } from '@/shared/measure/size';
import { micros, stock } from '@/shared/quantity/amounts';
import { instantOf, readInstant } from '@/shared/time/instant';

test.each([
  { amount: 0, text: '0' },
  { amount: 1, text: '0.000001' },
  { amount: 125_000, text: '0.125' },
  { amount: 12_000_000, text: '12.00' },
  { amount: 12_500_000, text: '12.50' },
  { amount: 1_234_567_891, text: '1234.567891' },
])('money is written $text', ({ amount, text }) => {
  expect(plainMoney(micros(amount))).toBe(text);
});

test.each([
  { amount: 354_880, form: 'liquid' as const, text: '354.88 mL' },
  { amount: 1, form: 'powder' as const, text: '0.001 g' },
  { amount: 600_000, form: 'liquid' as const, text: '600 mL' },
  { amount: 0, form: 'powder' as const, text: '0 g' },
])('stock is written $text', ({ amount, form, text }) => {
  expect(plainStock(stock(amount), form)).toBe(text);
});

test('a moment is written in UTC, with thousandths only where there are some', () => {
  expect(plainInstant(instantOf(Date.UTC(2026, 1, 24, 22, 30)))).toBe('2026-02-24T22:30:00Z');
  expect(plainInstant(instantOf(Date.UTC(2026, 1, 24, 22, 30, 0, 125)))).toBe('2026-02-24T22:30:00.125Z');
});

test('whatever is written is read back to the same', () => {
  const whole = fc.nat(1_000_000_000_000);
  fc.assert(
    fc.property(whole, fc.constantFrom('liquid' as const, 'powder' as const), (amount, form) => {
      expect(readMoney(plainMoney(micros(amount)))).toEqual({ ok: true, value: amount });
      const size = readSize(plainStock(stock(amount), form), form);
      expect(size.ok && stockOf(size.value, { form, densityGPerMl: null, gramsPerTeaspoon: null })).toBe(amount);
      const at = instantOf(Date.UTC(1971, 0, 1) + amount);
      expect(readInstant(plainInstant(at))).toEqual({ ok: true, value: at });
    }),
    { numRuns: 1_000 },
  );
});
