import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readDose } from '@/shared/measure/dose';
import { divide, type Exact, exact, fraction, multiply, toNumber } from '@/shared/quantity/exact';

type Form = 'liquid' | 'powder';
const sentence = (text: string, form: Form = 'liquid') => {
  const reading = readDose(text, form);
  return reading.ok ? 'it was read' : reading.message;
};

// 1 US gallon is 3.785411784 L, so 1 fl oz/gal is 1000/128 mL/L and 1 tsp/gal is 1000/768 mL/L.
test.each([
  ['5 mL/gal', fraction(5_000_000_000n, 3_785_411_784n)],
  ['5mL / gal', fraction(5_000_000_000n, 3_785_411_784n)],
  ['1 fl oz/gal', fraction(1000n, 128n)],
  ['2 tsp/gal', fraction(2000n, 768n)],
  ['1 1/2 tsp per gal', fraction(1500n, 768n)],
  ['1½ Teaspoons PER gallon', fraction(1500n, 768n)],
  ['1 tbsp/gal', fraction(3000n, 768n)],
  ['6 drops/gal', fraction(300_000_000n, 3_785_411_784n)],
  ['8 fl oz/100 gal', fraction(5n, 8n)],
  ['1 pt/100 gal', fraction(5n, 4n)],
  ['2 mL per 500 mL', exact('4')],
  ['1 tsp/½ gal', fraction(2000n, 768n)],
  ['1 mL/L', exact('1')],
  ['0.5 %', exact('5')],
  ['0.5%', exact('5')],
  ['1/2 percent', exact('5')],
  ['0.25 % v/v', exact('2.5')],
  ['1 imp fl oz/imp gal', fraction(1000n, 160n)],
  ['100 %', exact('1000')],
])('%s of a liquid is a volume per litre', (text, mlPerLitre) => {
  expect(readDose(text, 'liquid')).toEqual({ ok: true, value: { text, kind: 'volume', mlPerLitre } });
});

test.each([
  ['1.5 g/L', 'powder', exact('1.5')],
  ['1.5 g/L', 'liquid', exact('1.5')],
  ['0.5 %', 'powder', exact('5')],
  ['0.5 % w/v', 'liquid', exact('5')],
  ['40 mg/L', 'powder', exact('0.04')],
  ['4 oz/100 gal', 'powder', fraction(1_133_980_925n, 3_785_411_784n)],
  ['8 oz wt/100 gal', 'liquid', fraction(2_267_961_850n, 3_785_411_784n)],
  ['1 lb/100 gal', 'powder', fraction(4_535_923_700n, 3_785_411_784n)],
] as const)('%s of a %s is a weight per litre', (text, form, gPerLitre) => {
  expect(readDose(text, form)).toEqual({ ok: true, value: { text, kind: 'mass', gPerLitre } });
});

test('spoons of a powder stay a volume until a level teaspoon has been weighed', () => {
  const text = '1 tsp/gal';
  expect(readDose(text, 'powder')).toEqual({
    ok: true,
    value: { text, kind: 'volume', mlPerLitre: fraction(1000n, 768n) },
  });
});

test.each([
  ['40 ppm spinosad', 'spinosad'],
  ['40ppm spinosad', 'spinosad'],
  ['40 PPM of Spinosad ', 'Spinosad'],
  ['40 ppm potassium salts of fatty acids', 'potassium salts of fatty acids'],
])('%s is that substance in the spray', (text, substance) => {
  expect(readDose(text, 'liquid')).toEqual({
    ok: true,
    value: { text, kind: 'substance', substance, mgPerLitre: exact('40') },
  });
});

const SQUARE_FOOT = exact('0.09290304');
const FLUID_OUNCE = divide(exact('3785.411784'), exact(128n));
const POUND = exact('453.59237');
test.each([
  ['2 mL/m2', 'liquid', 'volume', exact('2')],
  ['2 mL per m²', 'liquid', 'volume', exact('2')],
  ['20 mL/10 sq m', 'liquid', 'volume', exact('2')],
  ['150 mL/ha', 'liquid', 'volume', exact('0.015')],
  ['4 fl oz/1000 sq ft', 'liquid', 'volume', divide(multiply(FLUID_OUNCE, exact('0.004')), SQUARE_FOOT)],
  ['1 pt/acre', 'liquid', 'volume', divide(multiply(FLUID_OUNCE, exact(16n)), multiply(SQUARE_FOOT, exact(43_560n)))],
  ['2 lb/acre', 'powder', 'mass', divide(multiply(POUND, exact(2n)), multiply(SQUARE_FOOT, exact(43_560n)))],
  ['1.5 oz per 1000 sq ft', 'powder', 'mass', divide(multiply(POUND, exact('0.00009375')), SQUARE_FOOT)],
  ['3 oz wt/1000 square feet', 'liquid', 'mass', divide(multiply(POUND, exact('0.0001875')), SQUARE_FOOT)],
  ['1 tsp/100 sq. ft.', 'powder', 'volume', divide(multiply(FLUID_OUNCE, fraction(1n, 600n)), SQUARE_FOOT)],
] as const)('%s of a %s is an amount for each square metre', (text, form, measure, perSquareMetre) => {
  expect(readDose(text, form)).toEqual({ ok: true, value: { text, kind: 'perArea', measure, perSquareMetre } });
});

test('the same dose per 100 gallons is read however it is written', () => {
  for (const [written, plainly] of [
    ['8 fl oz per 100 gallons', '8 fl oz/100 gal'],
    ['1 pint/100 gal', '1 pt/100 gal'],
    ['2 pounds per 100 gallon', '2 lb/100 gal'],
  ] as const) {
    expect(readDose(written, 'powder')).toEqual({ ok: true, value: { ...value(plainly), text: written } });
  }
});

function value(text: string) {
  const reading = readDose(text, 'powder');
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
}

const NEITHER = 'must be per volume of spray or per area';
const LIKE = 'Write it like "5 mL/gal" or "2 mL/m2".';
const OUNCE = 'fluid ounces or ounces by weight? Write "fl oz" for a measure or "oz wt" for a weight.';

test.each([
  ['8 oz/100 gal', 'liquid', `"8 oz/100 gal": ${OUNCE}`],
  ['5 mL/16 oz', 'liquid', `"5 mL/16 oz": ${OUNCE}`],
  ['5 g/16 oz', 'powder', `"5 g/16 oz": ${OUNCE}`],
  [
    '0 mL/gal',
    'liquid',
    '"0 mL/gal" is a dose of nothing. Leave the product out, or the rate empty when none is known.',
  ],
  ['0 %', 'powder', '"0 %" is a dose of nothing. Leave the product out, or the rate empty when none is known.'],
  ['40 ppm', 'liquid', '"40 ppm": ppm of what? Write the substance, such as "40 ppm spinosad".'],
  ['5', 'liquid', '"5" does not say per how much spray. Write it like "5 mL/gal" or "0.5 %".'],
  ['5 mL', 'liquid', '"5 mL" does not say per how much spray. Write it like "5 mL/gal" or "0.5 %".'],
  ['5/gal', 'liquid', '"5/gal" has no unit for the product. Write it like "5 mL/gal".'],
  ['5 mL/', 'liquid', 'In "5 mL/" the spray is missing. Write it like "5 mL/gal".'],
  ['2 g/kg', 'powder', `"2 g/kg" ${NEITHER}, and "kg" is neither. ${LIKE}`],
  ['2 g/ft', 'powder', `"2 g/ft" ${NEITHER}, and "ft" is neither. ${LIKE}`],
  ['5 oz/acre', 'liquid', `"5 oz/acre": ${OUNCE}`],
  ['5 mL/0 acres', 'liquid', '"5 mL/0 acres" is per no area at all. Write it like "8 fl oz/100 gal".'],
  ['0 mL/m2', 'liquid', '"0 mL/m2" is a dose of nothing. Leave the product out, or the rate empty when none is known.'],
  [
    '1001 mL/m2',
    'liquid',
    '"1001 mL/m2" is more than a litre or a kilogram on every m². Check the number and the units.',
  ],
  ['5 mL/0 gal', 'liquid', '"5 mL/0 gal" is per no spray at all. Write it like "8 fl oz/100 gal".'],
  ['6 drops/gal', 'powder', '"6 drops/gal": a powder has no drops. Write a weight.'],
  ['2 L/L', 'liquid', '"2 L/L" is more product than spray. Check the number and the units.'],
  ['101 %', 'powder', '"101 %" is more product than spray. Check the number and the units.'],
  [
    '1000001 ppm spinosad',
    'liquid',
    '"1000001 ppm spinosad" is more product than spray. Check the number and the units.',
  ],
  ['5 % w/w', 'liquid', '"5 % w/w": write "%", "% v/v" or "% w/v", and nothing after it.'],
  [
    '1,5 mL/L',
    'liquid',
    '"1,5 mL/L" has a comma in its number. Write a decimal with a point, such as 1.5, and a thousand as 1000.',
  ],
  ['5-10 mL/gal', 'liquid', '"5-10 mL/gal" is a range. Write one number, such as "5 mL/gal".'],
  ['-5 mL/gal', 'liquid', '"-5 mL/gal" is negative. Write an amount of zero or more, such as "5 mL/gal".'],
] as const)('%s of a %s is refused in one sentence', (text, form, says) => {
  expect(sentence(text, form)).toBe(says);
});

test('an unknown unit of the product is answered with the nearest ones', () => {
  expect(sentence('2 teaspon/gal')).toMatch(/^"teaspon" is not a unit known here\. Did you mean tsp, /);
});

test('a shop that counted its dropper doses by its own drop', () => {
  expect(readDose('10 drops/L', 'liquid', exact('40'))).toMatchObject({
    ok: true,
    value: { mlPerLitre: exact('0.4') },
  });
});

test('the same dose per any volume of spray is the same strength', () => {
  const units = fc.constantFrom('mL', 'L', 'gal', 'qt', 'fl oz');
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 500 }), units, (tenths, times, spray) => {
      const once = readDose(`${tenths}/10 µL/${spray}`, 'liquid');
      const often = readDose(`${tenths * times}/10 µL per ${times} ${spray}`, 'liquid');
      if (!once.ok || !often.ok || once.value.kind !== 'volume' || often.value.kind !== 'volume')
        throw new Error('refused');
      expect(often.value.mlPerLitre).toEqual(once.value.mlPerLitre);
    }),
    { numRuns: 1000 },
  );
});

test('no text whatever makes a dose throw, and a dose that is read is above nothing', () => {
  const near = fc.stringMatching(
    /^[\d./½ ]{1,5} ?(mL|tsp|oz|g|%|ppm|drops) ?(\/|per|of)? ?[\d½]{0,2} ?(gal|L|oz|v\/v|m2|acre|sq ft)?$/,
  );
  fc.assert(
    fc.property(
      fc.oneof(fc.string({ unit: 'binary' }), near),
      fc.constantFrom<Form>('liquid', 'powder'),
      (text, form) => {
        const reading = readDose(text, form);
        if (!reading.ok) return;
        const { value } = reading;
        const [rate] = Object.values(value).filter((part): part is Exact => typeof part === 'object');
        if (!rate) throw new Error('a dose has a rate');
        expect(toNumber(rate)).toBeGreaterThan(0);
        expect(value.text).toBe(text);
      },
    ),
    { numRuns: 2000 },
  );
});
