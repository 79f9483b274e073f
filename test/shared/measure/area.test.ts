import fc from 'fast-check';
import { all, create } from 'mathjs';
import { expect, test } from 'vitest';
import { readArea, showArea } from '@/shared/measure/area';
import { type Exact, exact, toNumber } from '@/shared/quantity/exact';

const areaOf = (text: string): Exact => {
  const reading = readArea(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};
const sentence = (text: string) => {
  const reading = readArea(text);
  return reading.ok ? 'it was read' : reading.message;
};

test.each([
  ['130 sq ft', exact('12.0773952')],
  ['1 ft²', exact('0.09290304')],
  ['1 Square Foot', exact('0.09290304')],
  ['144 sq. in.', exact('0.09290304')],
  ['1 sq yd', exact('0.83612736')],
  ['12 m2', exact(12n)],
  ['12 m²', exact(12n)],
  ['1 1/2 square metres', exact('1.5')],
  ['0.25 acre', exact('1011.7141056')],
  ['¼ acre', exact('1011.7141056')],
  ['1 ha', exact(10_000n)],
])('%s, exact by the international foot', (text, squareMetres) => {
  expect(areaOf(text)).toEqual(squareMetres);
});

test.each([
  ['', 'This is empty. Write it like "130 sq ft".'],
  ['130', '"130" has no unit of area that is known here. Write it like "130 sq ft" or "12 m2".'],
  ['12 ft', '"12 ft" has no unit of area that is known here. Write it like "130 sq ft" or "12 m2".'],
  ['0 sq ft', '"0 sq ft" is no area at all. Leave it empty when it is not known.'],
  ['1,000 sq ft', expect.stringContaining('a thousand as 1000')],
  ['-3 m2', expect.stringContaining('negative')],
])('%j is refused in one sentence', (text, says) => {
  expect(sentence(text)).toEqual(says);
});

test.each([
  ['130 sq ft', '130 sq ft', '12.08 m²'],
  ['12 m2', '129.2 sq ft', '12 m²'],
  ['1 acre', '1 acre', '4,047 m²'],
  ['2.5 ha', '6.178 acres', '2.5 ha'],
])('%s reads %s here and %s there', (text, us, metric) => {
  expect([showArea(areaOf(text), 'us'), showArea(areaOf(text), 'metric')]).toEqual([us, metric]);
});

const math = create(all ?? {});
test('any area comes out the same in a general-purpose units library', () => {
  const units = fc.constantFrom(
    ['sq ft', 'sqft'],
    ['sq in', 'sqin'],
    ['sq yd', 'sqyd'],
    ['m2', 'm2'],
    ['ha', 'hectare'],
  );
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100_000 }), units, (amount, [ours = '', theirs = '']) => {
      const other = math.unit(amount, theirs).toNumber('m2');
      expect(Math.abs(toNumber(areaOf(`${amount} ${ours}`)) - other)).toBeLessThanOrEqual(1e-12 * other);
    }),
    { numRuns: 300 },
  );
});
