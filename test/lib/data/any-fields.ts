import fc from 'fast-check';
import { addDays, Day } from '@/shared/time/day';

/* Fields of shop files at random. */

export const word = fc
  .string({ maxLength: 12, unit: fc.constantFrom(...'abcdeé ß"\\{}%,;=~√0123') })
  .map((text) => `a${text}z`);
export const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
export const money = fc.nat(2_000_000_000).map((micros) => (micros / 1e6).toFixed(6));
export const tidyMoney = fc.constantFrom('0', '12.00', '0.125', '74.5', '1234.567891');
export const day = fc.integer({ min: 0, max: 700 }).map((n) => addDays(Day.parse('2025-06-01'), n));
export const sizeOf = (form: 'liquid' | 'powder') =>
  form === 'liquid' ? fc.constantFrom('1 qt', '1 gal', '250 mL', '8 fl oz') : fc.constantFrom('1 lb', '250 g', '8 oz');
export const doseOf = (form: 'liquid' | 'powder') =>
  form === 'liquid' ? fc.constantFrom('5 mL/gal', '1 1/2 tsp/gal', '0.5 %') : fc.constantFrom('1.5 g/L', '2 g/gal');
