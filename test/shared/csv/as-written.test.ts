import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderIn, plainDay } from '@/shared/csv/day-text';
import { decodeText } from '@/shared/csv/decode';
import { hasDecimalComma, plainNumeral } from '@/shared/csv/numeral';
import { guarded, unguarded } from '@/shared/csv/write-rows';

const OPEN = { said: null, isCommaSeen: false };
const plain = (text: string, numerals: Parameters<typeof plainNumeral>[1] = OPEN) => {
  const read = plainNumeral(text, numerals);
  return read.ok ? read.value : 'asked';
};

test.each([
  ['12', '12'],
  ['12.50', '12.50'],
  ['12,50', '12.50'],
  ['12,5 L', '12.5 L'],
  [',5', '.5'],
  ['0,125', '0.125'],
  ['1.234', '1.234'],
  ['1,234', 'asked'],
  ['1,234 mL', 'asked'],
  ['12,345', 'asked'],
  ['1234,567', '1234.567'],
  ['1,234,567', '1234567'],
  ['1.234.567', '1234567'],
  ['1,234.56', '1234.56'],
  ['1.234,56', '1234.56'],
  ['1\u00a0234,56', '1234.56'],
  ["1'234.56", '1234.56'],
  ['1 1/2 qt', '1 1/2 qt'],
  ['5e-324', '5e-324'],
  ['1,2,3', '1,2,3'],
  ['none', 'none'],
  ['-5,5', '-5,5'],
])('%j is read as %j', (text, value) => {
  expect(plain(text)).toBe(value);
});

test('a point before three digits is asked about where others divide with a comma', () => {
  expect(hasDecimalComma('12,50')).toBe(true);
  expect(hasDecimalComma('1,234')).toBe(false);
  expect(plain('1.234', { said: null, isCommaSeen: true })).toBe('asked');
});

test('once somebody said which mark divides, nothing is asked, and the other mark is refused where it groups nothing', () => {
  const [comma, point] = [
    { said: 'comma', isCommaSeen: false },
    { said: 'point', isCommaSeen: false },
  ] as const;
  expect([plain('1,234', comma), plain('1.234', comma)]).toEqual(['1.234', '1234']);
  expect([plain('1,234', point), plain('1.234', point)]).toEqual(['1234', '1.234']);
  expect(plainNumeral('1.5', comma)).toMatchObject({ ok: false, message: /Write it with a comma/ });
  expect(plainNumeral('1,5', point)).toMatchObject({ ok: false, message: /Write it with a point/ });
});

test.each([
  ['2026-03-31', '2026-03-31'],
  ['2026/3/1', '2026-03-01'],
  ['31.03.2026', '2026-03-31'],
  ['3/31/2026', '2026-03-31'],
  ['05/05/2026', '2026-05-05'],
  ['31 Mar 2026', '2026-03-31'],
  ['31-Mar-2026', '2026-03-31'],
  ['March 31, 2026', '2026-03-31'],
  ['31. August 2026', '2026-08-31'],
  ['tomorrow', 'tomorrow'],
  ['46112', '46112'],
])('the day %j is read as %j', (text, value) => {
  expect(plainDay(text, null)).toEqual({ ok: true, value });
});

test('a day that can be two is asked about, unless its column proves the order', () => {
  expect(plainDay('03/04/2026', null)).toMatchObject({ ok: false, message: /2026-04-03 or 2026-03-04/ });
  expect(plainDay('03/04/2026', 'day-first')).toEqual({ ok: true, value: '2026-04-03' });
  expect(plainDay('03/04/2026', 'month-first')).toEqual({ ok: true, value: '2026-03-04' });
  expect(plainDay('3/4/26', 'day-first')).toMatchObject({ ok: false, message: /all four/ });
  expect(orderIn(['03/04/2026', '13/04/2026'])).toEqual({ proven: 'day-first', isMixed: false, open: '03/04/2026' });
  expect(orderIn(['03/04/2026', '04/13/2026'])).toMatchObject({ proven: 'month-first' });
  expect(orderIn(['13/04/2026', '04/13/2026'])).toMatchObject({ proven: null, isMixed: true });
});

const bytes = (...numbers: number[]) => Uint8Array.from(numbers);

test('a file is read in its own encoding, with or without a mark', () => {
  expect(decodeText(new TextEncoder().encode('\uFEFFé'))).toEqual({ text: 'é', encoding: 'UTF-8' });
  expect(decodeText(new TextEncoder().encode('é'))).toEqual({ text: 'é', encoding: 'UTF-8' });
  expect(decodeText(bytes(0xff, 0xfe, 0xe9, 0))).toEqual({ text: 'é', encoding: 'UTF-16' });
  expect(decodeText(bytes(0xfe, 0xff, 0, 0xe9))).toEqual({ text: 'é', encoding: 'UTF-16' });
  expect(decodeText(bytes(0xe9, 0x80))).toEqual({ text: 'é€', encoding: 'Windows-1252' });
});

test('no text begins a formula once it is guarded, and every text comes back as it was', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(..."'=+-@\t\r\nab＝") }), (text) => {
      expect(guarded(text)).not.toMatch(/^[=+\-@\t\r\n＝＋－＠]/);
      expect(unguarded(guarded(text))).toBe(text);
    }),
  );
});
