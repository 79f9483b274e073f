import fc from 'fast-check';
import { expect, test } from 'vitest';
import { AMOUNT_UNITS, joinAmount, splitAmount, stepAmount } from '@/shared/measure/amount-typed';
import { readStock } from '@/shared/measure/read-stock';

const LIQUID = { form: 'liquid', densityGPerMl: 1, gramsPerTeaspoon: null } as const;
const size = (text: string): number => {
  const reading = readStock(text, LIQUID);
  if (!reading.ok) throw new Error(`${text}: ${reading.message}`);
  return reading.value;
};

test('the unit stands beside a number and need not be typed; whoever types one is understood', () => {
  expect(splitAmount('14.5 g', 'powder')).toEqual({ number: '14.5', unit: 'g' });
  expect(splitAmount('1  mL', 'liquid'), 'somebody is about to type 1 1/2').toEqual({ number: '1 ', unit: 'mL' });
  expect(splitAmount('', 'liquid')).toEqual({ number: '', unit: 'mL' });
  expect(splitAmount('12', 'liquid')).toEqual({ number: '12', unit: 'mL' });
  expect(splitAmount('2 qt', 'liquid')).toEqual({ number: '2 qt', unit: null });
  expect(joinAmount('3', 'tsp')).toBe('3 tsp');
  expect(joinAmount('3 fl oz', 'mL')).toBe('3 fl oz');
  expect(joinAmount(' ', 'mL')).toBe(' ');
});

test('a step is a quarter of a spoon, and finer for less', () => {
  expect(stepAmount('1/4 tsp', 'liquid', 1)).toBe('1/2 tsp');
  expect(stepAmount('1 tsp', 'liquid', 1)).toBe('1 1/4 tsp');
  expect(stepAmount('1/4 tsp', 'liquid', -1)).toBe('0 tsp');
  expect(stepAmount('', 'liquid', 1)).toBe('0.1 mL');
  expect(stepAmount('36 mL', 'liquid', 1)).toBe('37 mL');
  expect(stepAmount('14.3 g', 'powder', 1)).toBe('14.5 g');
  expect(stepAmount('2 qt', 'liquid', 1), 'nobody knows its step').toBe('2 qt');
  expect(stepAmount('0 mL', 'liquid', -1)).toBe('0 mL');
});

test('more is more, less is less, and both can be read', () => {
  const amount = fc.tuple(fc.integer({ min: 1, max: 50_000 }), fc.constantFrom(...AMOUNT_UNITS.liquid));
  fc.assert(
    fc.property(amount, ([hundredths, unit]) => {
      const text = joinAmount(String(hundredths / 100), unit);
      expect(size(stepAmount(text, 'liquid', 1))).toBeGreaterThan(size(text));
      const less = stepAmount(text, 'liquid', -1);
      expect(less.startsWith('0 ') ? 0 : size(less)).toBeLessThan(size(text));
    }),
    { numRuns: 200 },
  );
});
