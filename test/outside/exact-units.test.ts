import { expect, test } from 'vitest';
import { readArea } from '@/shared/measure/area';
import { toNumber } from '@/shared/quantity/exact';
import { grams, ml, near, printedAs } from './published';

/*
 * Units by their legal definitions. `seen` was read in a copy of the source; `memory` was recalled and not looked up
 * again. Everything here is exact, unless a source rounds.
 */

const HANDBOOK =
  'NIST Handbook 44, Appendix C, General Tables of Units of Measurement, read at yumpu.com/en/document/view/67962081/vdoc/461 and angelfire.com/whittenwords/measure/capacity01.htm';
const CUBIC_INCH = 16.387064;

test.each([
  { text: '1 gal', cubicInches: 231, basis: 'seen' },
  { text: '1 qt', cubicInches: 57.75, basis: 'memory' },
  { text: '1 pt', cubicInches: 28.875, basis: 'memory' },
  { text: '1 cup', cubicInches: 14.4375, basis: 'memory' },
  { text: '1 fl oz', cubicInches: 1.8046875, basis: 'memory' },
])(`$text is $cubicInches cubic inches ($basis, ${HANDBOOK})`, ({ text, cubicInches }) => {
  near(ml(text), cubicInches * CUBIC_INCH, 1e-14);
});

test.each([
  { text: '1 cup', same: '8 fl oz', basis: 'seen' },
  { text: '1 cup', same: '0.5 pt', basis: 'seen' },
  { text: '1 gal', same: '128 fl oz', basis: 'memory' },
  { text: '1 gal', same: '4 qt', basis: 'memory' },
  { text: '1 qt', same: '2 pt', basis: 'memory' },
])(`$text is $same exactly ($basis, ${HANDBOOK})`, ({ text, same }) => near(ml(text), ml(same), 1e-15));

test(`a measuring cup is 237 mL, rounded (seen, ${HANDBOOK})`, () => printedAs(ml('1 cup'), '237'));

// Weights and Measures Act 1985, Schedule 1 (memory), and the exact values of the page of HANDBOOK (seen).
test.each([
  { text: '1 imp pt', is: 568.26125 },
  { text: '1 imp qt', is: 1136.5225 },
  { text: '1 imp gal', is: 4546.09 },
  { text: '1 imp fl oz', is: 28.4130625 },
])('$text is $is mL', ({ text, is }) => near(ml(text), is, 1e-14));

test('a British gallon is 1.201 US gallons, and a US gallon 0.833 British ones (memory, as HANDBOOK)', () => {
  printedAs(ml('1 imp gal') / ml('1 gal'), '1.201');
  printedAs(ml('1 gal') / ml('1 imp gal'), '0.833');
});

// A grain is 64.79891 mg exactly; a pound is 7,000 of them and an ounce 437.5 (memory, NIST Handbook 44, Appendix C).
test.each([
  { text: '1 lb', grains: 7000 },
  { text: '1 oz', grains: 437.5 },
])('$text is $grains grains', ({ text, grains }) => near(grams(text), grains * 0.06479891, 1e-14));

test('a kilogram is 2.2046 pounds (memory, NIST SP 811, Appendix B)', () => {
  printedAs(grams('1 kg') / grams('1 lb'), '2.2046');
});

const NEBRASKA = 'University of Nebraska-Lincoln, Math for Pesticide Applicators, pested.unl.edu/math';

test.each([
  { ours: ml('1 fl oz') / ml('1 tbsp'), printed: '2', what: 'tablespoons in a fluid ounce' },
  { ours: ml('1 fl oz') / ml('1 tsp'), printed: '6', what: 'teaspoons in a fluid ounce' },
  { ours: ml('1 pt') / ml('1 cup'), printed: '2', what: 'cups in a pint' },
  { ours: ml('1 L') / ml('1 qt'), printed: '1.057', what: 'quarts in a litre' },
  { ours: ml('1 gal') / 1000, printed: '3.785', what: 'litres in a gallon' },
  { ours: grams('1 lb'), printed: '453.59', what: 'grams in a pound' },
  { ours: grams('1 lb') / 1000, printed: '0.4536', what: 'kilograms in a pound' },
])(`$printed $what (seen, ${NEBRASKA})`, ({ ours, printed }) => printedAs(ours, printed));

const PNW = 'PNW Pest Management Handbooks, Weights and Measures, pnwhandbooks.org/node/328/print';

test.each([
  { over: '1 tbsp', under: '1 tsp', is: 3 },
  { over: '1 cup', under: '1 tbsp', is: 16 },
  { over: '1 pt', under: '1 fl oz', is: 16 },
  { over: '1 gal', under: '1 pt', is: 8 },
])(`$is times $under in $over (seen, ${PNW})`, ({ over, under, is }) => near(ml(over) / ml(under), is, 1e-14));

test('a gallon is 256 tablespoons and 768 teaspoons (seen, a table of measures, nsei.net/measure.html, and arithmetic)', () => {
  near(ml('1 gal') / ml('1 tbsp'), 256, 1e-14);
  near(ml('1 gal') / ml('1 tsp'), 768, 1e-14);
});

test('a normal drop of 20 to the millilitre is 0.05 mL (memory, USP <1101>: 20 drops of water weigh 0.9 to 1.1 g)', () => {
  near(ml('20 drops'), 1, 1e-15);
  near(ml('1 drop'), 0.05, 1e-15);
});

const squareMetres = (text: string): number => {
  const reading = readArea(text);
  if (!reading.ok) throw new Error(reading.message);
  return toNumber(reading.value);
};

// NIST SP 811, Appendix B.8, by the international foot of 0.3048 m (memory).
test.each([
  { text: '1 sq ft', is: 0.09290304 },
  { text: '1 sq in', is: 0.00064516 },
  { text: '1 sq yd', is: 0.83612736 },
  { text: '1 acre', is: 4046.8564224 },
  { text: '1 ha', is: 10_000 },
])('$text is $is m²', ({ text, is }) => near(squareMetres(text), is, 1e-14));

test(`an acre is 43,560 square feet and 0.405 ha, a hectare 2.471 acres (seen, ${NEBRASKA})`, () => {
  near(squareMetres('1 acre') / squareMetres('1 sq ft'), 43_560, 1e-14);
  printedAs(squareMetres('1 acre') / squareMetres('1 ha'), '0.405');
  printedAs(squareMetres('1 ha') / squareMetres('1 acre'), '2.471');
});

test(`an acre is 160 square rods of 272.3 square feet, rounded (seen, ${PNW})`, () => {
  printedAs(squareMetres('1 acre') / squareMetres('1 sq ft') / 160, '272.3');
  expect(squareMetres('1 acre') / squareMetres('1 sq yd')).toBeCloseTo(4840, 9);
});
