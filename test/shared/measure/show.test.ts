import fc from 'fast-check';
import { expect, test } from 'vitest';
import { showMass, showMinutes, showMoney, showNumber, showPh, showStock, showVolume } from '@/shared/measure/show';
import { readSize, stockOf } from '@/shared/measure/size';
import { microlitres, milligrams } from '@/shared/quantity/amounts';

test.each([
  [0, '0 mL', '0 mL'],
  [4, 'less than 0.01 mL', 'less than 0.01 mL'],
  [5, '0.01 mL', '0.01 mL'],
  [50, '0.05 mL', '0.05 mL'],
  [6_250, '6.25 mL', '6.25 mL'],
  [9_995, '10 mL', '10 mL'],
  [12_350, '12.4 mL', '12.4 mL'],
  [600_000, '600 mL', '600 mL'],
  [946_351, '946 mL', '946 mL'],
  [946_353, '0.25 gal', '946 mL'],
  [999_999, '0.26 gal', '1,000 mL'],
  [1_000_000, '0.26 gal', '1.00 L'],
  [3_785_412, '1.00 gal', '3.79 L'],
  [3_785_411.784, '1.00 gal', '3.79 L'],
  [37_854_117.84, '10.00 gal', '37.85 L'],
  [10_000_000_000, '2,641.72 gal', '10,000.00 L'],
])('%d µL reads %s, or %s in a metric shop', (amount, us, metric) => {
  expect([showVolume(amount, 'us'), showVolume(amount, 'metric')]).toEqual([us, metric]);
});

test.each([
  [0, '0 g', '0 g'],
  [2, 'less than 0.01 g', 'less than 0.01 g'],
  [2_800, '2.8 g', '2.8 g'],
  [453_591, '454 g', '454 g'],
  [453_592, '1.00 lb', '454 g'],
  [1_000_000, '2.20 lb', '1.00 kg'],
])('%d mg reads %s, or %s in a metric shop', (amount, us, metric) => {
  expect([showMass(amount, 'us'), showMass(amount, 'metric')]).toEqual([us, metric]);
});

test('what a container holds reads as a volume of a liquid and a weight of a powder', () => {
  expect(showStock(microlitres(946_353), 'liquid', 'us')).toBe('0.25 gal');
  expect(showStock(milligrams(946_353), 'powder', 'us')).toBe('2.09 lb');
});

test.each([
  [0, 'USD', '$0.00'],
  [49, 'USD', 'less than 0.01 ¢'],
  [50, 'USD', '0.01 ¢'],
  [6_500, 'USD', '0.65 ¢'],
  [99_999, 'USD', '10.00 ¢'],
  [100_000, 'USD', '$0.10'],
  [1_005_000, 'USD', '$1.01'],
  [1_234_567_890_123, 'USD', '$1,234,567.89'],
  [6_500, 'EUR', '€0.0065'],
  [12_345_678, 'EUR', '€12.35'],
  [650_000, 'JPY', '¥0.65'],
  [12_500_000, 'JPY', '¥13'],
  [12_345_678, 'KWD', 'KWD\u00a012.346'],
  [12_345_678, 'HUF', 'HUF\u00a012.35'],
  [650_000, 'HUF', 'HUF\u00a00.65'],
])('%d micros of %s read %s', (amount, currency, text) => {
  expect(showMoney(amount, currency)).toBe(text);
});

test('an amount above nothing never reads as nothing', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 10_000_000 }),
      fc.constantFrom('USD', 'EUR', 'JPY', 'KWD'),
      (amount, currency) => {
        for (const text of [showMoney(amount, currency), showVolume(amount, 'us'), showMass(amount, 'metric')]) {
          expect(text).toMatch(/[1-9]/);
        }
      },
    ),
    { numRuns: 1000 },
  );
});

test.each([
  [0, '0 min'],
  [45, '45 min'],
  [59.1, '1 h'],
  [60, '1 h'],
  [90, '1 h 30 min'],
  [720, '12 h'],
  [2_880, '48 h'],
])('an interval of %d minutes reads %s, never shorter than it is', (minutes, text) => {
  expect(showMinutes(minutes)).toBe(text);
});

test.each([
  [0, '0'],
  [12, '12'],
  [12_345, '12,345'],
  [1.3208603, '1.321'],
  [0.00123456, '0.001235'],
  [1_234.56, '1,235'],
])('the bare number %d reads %s', (value, text) => {
  expect(showNumber(value)).toBe(text);
});

test.each([
  [7, '7'],
  [7.4, '7.4'],
  [6.004, '6'],
  [6.005, '6.01'],
  [10.140894, '10.14'],
])('a pH of %d reads "%s"', (pH, text) => {
  expect(showPh(pH)).toBe(text);
});

test('units are for reading only: whatever they are, a pack typed in is kept as the same whole amount', () => {
  const product = { form: 'liquid' as const, densityGPerMl: null, gramsPerTeaspoon: null };
  const typed = fc.tuple(fc.integer({ min: 1, max: 9_999 }), fc.constantFrom('mL', 'gal', 'qt', 'fl oz', 'L'));
  fc.assert(
    fc.property(typed, ([amount, unit]) => {
      const reading = readSize(`${amount} ${unit}`, 'liquid');
      if (!reading.ok) throw new Error(reading.message);
      const kept = stockOf(reading.value, product);
      if (kept === null) throw new Error('a volume of a liquid is always known');
      const [us, metric] = [showStock(kept, 'liquid', 'us'), showStock(kept, 'liquid', 'metric')];
      expect(us).toMatch(/ (gal|mL)$/);
      expect(metric).toMatch(/ (L|mL)$/);
      expect(stockOf(reading.value, product)).toBe(kept);
      // Both texts are the kept amount to their last place: a hundredth of a gallon is 37.85 mL, of a litre 10 mL.
      expect(Math.abs(shownUl(us) - kept)).toBeLessThan(18_928);
      expect(Math.abs(shownUl(metric) - kept)).toBeLessThan(5_001);
    }),
    { numRuns: 1000 },
  );
});

function shownUl(text: string): number {
  const [number = '', unit = ''] = text.split(' ');
  return Number(number.replaceAll(',', '')) * ({ gal: 3_785_411.784, L: 1_000_000, mL: 1_000 }[unit] ?? Number.NaN);
}
