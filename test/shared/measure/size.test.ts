import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readSize, readVolume, stockOf } from '@/shared/measure/size';
import { exact, fraction } from '@/shared/quantity/exact';

type Form = 'liquid' | 'powder';
const LIQUID = { form: 'liquid' as const, densityGPerMl: null, gramsPerTeaspoon: null };
const POWDER = { form: 'powder' as const, densityGPerMl: null, gramsPerTeaspoon: null };

const sizeOf = (text: string, form: Form = 'liquid') => {
  const reading = readSize(text, form);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};
const sentence = (text: string, form: Form = 'liquid') => {
  const reading = readSize(text, form);
  return reading.ok ? 'it was read' : reading.message;
};

test.each([
  ['1 mL', 1_000],
  ['1 cc', 1_000],
  ['1 cm³', 1_000],
  ['1 L', 1_000_000],
  ['2 litres', 2_000_000],
  ['3 Millilitre', 3_000],
  ['7 µL', 7],
  ['7 μl', 7],
  ['7 ul', 7],
  ['1 gal', 3_785_412],
  ['1 GALLON', 3_785_412],
  ['1 us gal', 3_785_412],
  ['1 qt', 946_353],
  ['1 pt.', 473_176],
  ['1 fl oz', 29_574],
  ['1 fl. oz.', 29_574],
  ['1 floz', 29_574],
  ['16 fluid ounces', 473_176],
  ['1 cup', 236_588],
  ['1 tbsp', 14_787],
  ['1 tsp', 4_929],
  ['1 drop', 50],
  ['20 drops', 1_000],
  ['1 imp gal', 4_546_090],
  ['1 Imperial quart', 1_136_523],
  ['1 UK pint', 568_261],
  ['1 imp fl oz', 28_413],
  ['½ gal', 1_892_706],
  ['1 1/2 qt', 1_419_529],
  ['0 mL', 0],
])('%s of a liquid is %i µL', (text, microlitres) => {
  expect(stockOf(sizeOf(text), LIQUID)).toBe(microlitres);
});

test.each([
  ['1 mg', 1],
  ['1 g', 1_000],
  ['2.5 Grams', 2_500],
  ['1 kg', 1_000_000],
  ['1 oz', 28_350],
  ['4 ounces', 113_398],
  ['4 oz wt', 113_398],
  ['1 lb', 453_592],
  ['2.5 lbs', 1_133_981],
  ['1 pound', 453_592],
  ['0 g', 0],
])('%s of a powder is %i mg', (text, milligrams) => {
  expect(stockOf(sizeOf(text, 'powder'), POWDER)).toBe(milligrams);
});

test('a size keeps the text that was typed, and is exact until it is stock', () => {
  expect(sizeOf(' 1/3 qt ')).toEqual({
    text: ' 1/3 qt ',
    kind: 'volume',
    microlitres: fraction(946_352_946n, 3_000n),
  });
});

test.each([
  [
    '16 oz',
    'liquid',
    '"16 oz": fluid ounces or ounces by weight? Write "fl oz" for a measure or "oz wt" for a weight.',
  ],
  ['16', 'liquid', '"16" has no unit. Write it like "600 mL".'],
  ['16', 'powder', '"16" has no unit. Write it like "2.5 lb".'],
  ['3 drops', 'powder', '"3 drops": a powder has no drops. Write a weight.'],
  ['1000000.001 L', 'liquid', '"1000000.001 L" is more than this program can hold. Check the unit.'],
  ['0.0001 mL', 'liquid', '"0.0001 mL" is less than half a µL or mg, the least that is kept. Check the unit.'],
  ['-1 mL', 'liquid', '"-1 mL" is negative. Write an amount of zero or more, such as "600 mL".'],
] as const)('%s of a %s is refused in one sentence', (text, form, says) => {
  expect(sentence(text, form)).toBe(says);
});

test('an unknown unit is answered with the nearest ones and all of them', () => {
  expect(sentence('1 galon')).toBe(
    '"galon" is not a unit known here. Did you mean gal, fl oz or kg? Known are mL, L, µL, gal, qt, pt, fl oz, cup, tbsp, tsp, drop, imp gal, imp qt, imp pt, imp fl oz, mg, g, kg, oz, oz wt, lb.',
  );
  expect(sentence('1 tabelspoon')).toContain('Did you mean tbsp, tsp or');
});

test.each(['1 T', '1 t', '1 C', '1 gr', '1 imp', '1 mL 2', '1 gal 2 qt', '1 mL/L', '1 hl'])(
  '%s is never guessed at',
  (text) => {
    expect(readSize(text, 'liquid')).toMatchObject({ ok: false });
  },
);

test('a million litres and half a µL are held, anything beyond is not', () => {
  expect(stockOf(sizeOf('1000000 L'), LIQUID)).toBe(1_000_000_000_000);
  expect(stockOf(sizeOf('0.5 µL'), LIQUID)).toBe(1);
  expect(readSize('1000000.000001 L', 'liquid')).toMatchObject({ ok: false });
  expect(readSize('0.49 µL', 'liquid')).toMatchObject({ ok: false });
});

test('a shop that counted its dropper has its own drop', () => {
  expect(readSize('10 drops', 'liquid', exact('40'))).toMatchObject({ ok: true, value: { microlitres: exact('400') } });
});

test('a weight of a liquid becomes a volume through its density, and is unknown without it', () => {
  expect(stockOf(sizeOf('1 kg'), { ...LIQUID, densityGPerMl: 1.25 })).toBe(800_000);
  expect(stockOf(sizeOf('1 oz wt'), { ...LIQUID, densityGPerMl: 1 })).toBe(28_350);
  expect(stockOf(sizeOf('1 kg'), LIQUID)).toBeNull();
});

test('a spoon of a powder becomes a weight through its own level teaspoon, and is unknown without it', () => {
  expect(stockOf(sizeOf('1 tsp', 'powder'), { ...POWDER, gramsPerTeaspoon: 2.8 })).toBe(2_800);
  expect(stockOf(sizeOf('1 1/2 tbsp', 'powder'), { ...POWDER, gramsPerTeaspoon: 2.8 })).toBe(12_600);
  expect(stockOf(sizeOf('1 tsp', 'powder'), POWDER)).toBeNull();
  expect(stockOf(sizeOf('1 tsp', 'powder'), { ...POWDER, densityGPerMl: 0.6 })).toBeNull();
});

test('an amount is rounded once, a half away from zero', () => {
  expect(stockOf(sizeOf('2.5 µL'), LIQUID)).toBe(3);
  expect(stockOf(sizeOf('2.4999 µL'), LIQUID)).toBe(2);
  expect(stockOf(sizeOf('0.5 mg'), { ...LIQUID, densityGPerMl: 0.2 })).toBe(3);
});

test('the density of a double such as 1.1 is taken as it is written', () => {
  expect(stockOf(sizeOf('11 g'), { ...LIQUID, densityGPerMl: 1.1 })).toBe(10_000);
});

test.each([
  ['2 gal', fraction(7_570_823_568n, 1_000_000n)],
  ['0.5 L', exact('500')],
  ['100 mL', exact('100')],
  ['0 mL', exact('0')],
])('a sprayer mark of %s is exact mL', (text, ml) => {
  expect(readVolume(text)).toEqual({ ok: true, value: ml });
});

test.each([
  ['2 lb', '"2 lb" is a weight. Write a volume, such as "2 gal".'],
  ['16 oz', '"16 oz": fluid ounces or ounces by weight? Write "fl oz" for a measure or "oz wt" for a weight.'],
  ['2', '"2" has no unit. Write it like "2 gal".'],
])('a sprayer does not hold %s', (text, says) => {
  expect(readVolume(text)).toEqual({ ok: false, message: says });
});

test('twice the size is twice the stock, to the rounding of each', () => {
  fc.assert(
    fc.property(fc.nat(100_000), fc.constantFrom('mL', 'gal', 'fl oz', 'tsp', 'imp pt'), (thousandths, unit) => {
      const [once, twice] = [thousandths + 1, 2 * (thousandths + 1)].map((n) =>
        Number(stockOf(sizeOf(`${n}/1000 ${unit}`), LIQUID)),
      );
      expect(Math.abs((twice ?? Number.NaN) - 2 * (once ?? Number.NaN))).toBeLessThanOrEqual(1);
    }),
    { numRuns: 1000 },
  );
});

test('no text whatever makes a size or a volume throw', () => {
  const near = fc.stringMatching(/^[\d./ ½-]{1,6} ?(m|k|µ|fl|imp|us)? ?(L|g|oz|gal|lb)s?\.?$/);
  fc.assert(
    fc.property(
      fc.oneof(fc.string({ unit: 'binary' }), near),
      fc.constantFrom<Form>('liquid', 'powder'),
      (text, form) => {
        const reading = readSize(text, form);
        if (reading.ok) stockOf(reading.value, { form, densityGPerMl: 0.01, gramsPerTeaspoon: 100 });
        readVolume(text);
      },
    ),
    { numRuns: 2000 },
  );
});
