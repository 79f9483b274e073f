import fc from 'fast-check';
import { expect, test } from 'vitest';
import { leadingNumber, quoted } from '@/shared/measure/number-text';
import { add, exact, fraction } from '@/shared/quantity/exact';

const EXAMPLE = '600 mL';
const message = (text: string): string => {
  const reading = leadingNumber(text, EXAMPLE);
  return reading.ok ? `read as ${reading.value.number.over}/${reading.value.number.under}` : reading.message;
};

test.each([
  { text: '12 mL', number: exact('12'), rest: 'mL' },
  { text: '1.5L', number: exact('1.5'), rest: 'L' },
  { text: '.5 gal', number: exact('0.5'), rest: 'gal' },
  { text: '0.10 gal', number: exact('0.1'), rest: 'gal' },
  { text: '1/4 tsp', number: fraction(1n, 4n), rest: 'tsp' },
  { text: '1 / 4 tsp', number: fraction(1n, 4n), rest: 'tsp' },
  { text: '1⁄4 tsp', number: fraction(1n, 4n), rest: 'tsp' },
  { text: '1 1/2 qt', number: fraction(3n, 2n), rest: 'qt' },
  { text: '1-1/2 qt', number: fraction(3n, 2n), rest: 'qt' },
  { text: '½ gal', number: fraction(1n, 2n), rest: 'gal' },
  { text: '1½ gal', number: fraction(3n, 2n), rest: 'gal' },
  { text: '2 ¾gal', number: fraction(11n, 4n), rest: 'gal' },
  { text: '⅔ cup', number: fraction(2n, 3n), rest: 'cup' },
  { text: '  7   drops ', number: exact('7'), rest: 'drops' },
  { text: '0', number: exact('0'), rest: '' },
])('"$text" begins with an exact number', ({ text, number, rest }) => {
  expect(leadingNumber(text, EXAMPLE)).toEqual({ ok: true, value: { number, rest } });
});

test.each([
  ['', 'This is empty. Write it like "600 mL".'],
  ['   ', 'This is empty. Write it like "600 mL".'],
  ['some', '"some" does not begin with a number. Write it like "600 mL".'],
  ['NaN mL', '"NaN mL" does not begin with a number. Write it like "600 mL".'],
  ['Infinity', '"Infinity" does not begin with a number. Write it like "600 mL".'],
  ['+5 mL', '"+5 mL" does not begin with a number. Write it like "600 mL".'],
  ['-5 mL', '"-5 mL" is negative. Write an amount of zero or more, such as "600 mL".'],
  ['−½ mL', '"−½ mL" is negative. Write an amount of zero or more, such as "600 mL".'],
  ['1,5 L', '"1,5 L" has a comma in its number. Write a decimal with a point, such as 1.5, and a thousand as 1000.'],
  [
    '1,000 L',
    '"1,000 L" has a comma in its number. Write a decimal with a point, such as 1.5, and a thousand as 1000.',
  ],
  ['1e400 L', '"1e400 L" has an exponent. Write the number out in plain digits.'],
  ['2E-3 L', '"2E-3 L" has an exponent. Write the number out in plain digits.'],
  ['1-2 tsp', '"1-2 tsp" is a range. Write one number, such as "600 mL".'],
  ['1 to 2 tsp', '"1 to 2 tsp" is a range. Write one number, such as "600 mL".'],
  ['1–½ tsp', '"1–½ tsp" is a range. Write one number, such as "600 mL".'],
  ['1.2.3 L', '"1.2.3 L" is not one number and one unit. Write it like "600 mL".'],
  ['1 2 L', '"1 2 L" is not one number and one unit. Write it like "600 mL".'],
  ['1/0 L', '"1/0 L" has a fraction over zero. Write it like "600 mL".'],
  ['1 1/0 L', '"1 1/0 L" has a fraction over zero. Write it like "600 mL".'],
  ['1 3/2 L', 'In "1 3/2 L" the fraction is not less than one. Write one and a half as "1 1/2" or 1.5.'],
  ['9'.repeat(101), 'This is longer than 100 characters. Write it like "600 mL".'],
])('"%s" is refused with a sentence that says what to write', (text, sentence) => {
  expect(message(text)).toBe(sentence);
});

test('a hundred characters are read, and one more is not', () => {
  expect(leadingNumber('9'.repeat(100), EXAMPLE)).toMatchObject({ ok: true });
  expect(leadingNumber('9'.repeat(101), EXAMPLE)).toMatchObject({ ok: false });
});

test('a long text is quoted short and a character of two halves is not cut in two', () => {
  expect(quoted('🌱'.repeat(90))).toBe(`"${'🌱'.repeat(56)}…"`);
  expect(quoted('a\nb')).toBe('"a\\nb"');
});

test('whatever number is written, as a decimal or a fraction, is read to its exact value', () => {
  fc.assert(
    fc.property(fc.nat(1_000_000), fc.nat(999), fc.integer({ min: 1, max: 99 }), (whole, thousandths, under) => {
      const decimal = `${whole}.${String(thousandths).padStart(3, '0')}`;
      const over = thousandths % under;
      const read = (text: string) => leadingNumber(`${text} mL`, EXAMPLE);
      const exactly = fraction(BigInt(whole) * 1000n + BigInt(thousandths), 1000n);
      expect(read(decimal)).toEqual({ ok: true, value: { number: exactly, rest: 'mL' } });
      const mixed = add(exact(BigInt(whole)), fraction(BigInt(over), BigInt(under)));
      expect(read(`${whole} ${over}/${under}`)).toEqual({ ok: true, value: { number: mixed, rest: 'mL' } });
    }),
    { numRuns: 1000 },
  );
});

test('no text whatever makes the reader throw, and every refusal is one line', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^[\d./ ,eE½-]{0,12}$/)), (text) => {
      const reading = leadingNumber(text, EXAMPLE);
      if (!reading.ok) expect(reading.message).not.toMatch(/[\r\n]/);
    }),
    { numRuns: 2000 },
  );
});
