import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bottleCode, readBottleCode } from '@/shared/codes/bottle-code';
import { codeMeaning, wholeUpc } from '@/shared/codes/code-meaning';
import { checkDigit, readGtin } from '@/shared/measure/gtin';

test('whatever a lot is called, its label names it again', () => {
  fc.assert(
    fc.property(
      fc.string({ minLength: 1, maxLength: 64, unit: 'grapheme' }),
      fc.integer({ min: 1, max: 99_999 }),
      (lotId, number) => {
        expect(codeMeaning(bottleCode({ lotId, number }))).toEqual({ kind: 'bottle', bottle: { lotId, number } });
      },
    ),
  );
});

test.each([
  ['BB1:oil-b/1', { lotId: 'oil-b', number: 1 }],
  ['  bb1: oil-b / 12\n', { lotId: 'oil-b', number: 12 }],
  ['BB1:l%C3%B6t%2F2~3/2', { lotId: 'löt/2~3', number: 2 }],
])('"%s" opens a bottle, also typed with wet gloves', (text, bottle) => {
  expect(readBottleCode(text)).toEqual({ ok: true, value: bottle });
});

test.each(['BB1:', 'BB1:oil-b', 'BB1:oil-b/0', 'BB1:oil-b/1/2', 'BB1:/1', 'BB1:%E0%A4%A/1', 'BB1:oil-b/one'])(
  '"%s" is a label torn off, and says what a whole one reads',
  (text) => {
    expect(codeMeaning(text)).toEqual({ kind: 'misread', message: expect.stringContaining('such as BB1:oil-b/1') });
  },
);

test.each([
  ['9506000134352', { kind: 'gtin', gtin: '9506000134352' }],
  ['9 506000 134352', { kind: 'gtin', gtin: '9506000134352' }],
  ['95060001-34352', { kind: 'gtin', gtin: '9506000134352' }],
  ['96385074', { kind: 'gtin', gtin: '96385074' }],
  ['9506000134353', { kind: 'misread', message: expect.stringContaining('the last one would be 2') }],
  ['oil-b', { kind: 'words', words: 'oil-b' }],
  ['1234567', { kind: 'words', words: '1234567' }],
  ['123456789', { kind: 'words', words: '123456789' }],
  ['BB12', { kind: 'words', words: 'BB12' }],
  [' ', { kind: 'nothing' }],
])('"%s" is told apart from the other codes', (text, meaning) => {
  expect(codeMeaning(text)).toEqual(meaning);
});

test.each([
  ['04252614', '042100005264'],
  ['01234531', '012300000451'],
  ['01234543', '012340000053'],
  ['01234558', '012345000058'],
])('the short bar code %s stands for %s', (short, whole) => {
  expect(wholeUpc(short)).toBe(whole);
  expect(readGtin(whole)).toEqual({ ok: true, value: whole });
  expect(codeMeaning(short, 'upc_e')).toEqual({ kind: 'gtin', gtin: whole });
});

test('a bar code with one digit misread is never taken for another product', () => {
  const digits = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 12, maxLength: 12 });
  fc.assert(
    fc.property(digits, fc.nat(12), fc.integer({ min: 1, max: 9 }), (twelve, place, off) => {
      const others = twelve.join('');
      const whole = [...others, checkDigit(others)].map(Number);
      const misread = whole.with(place, ((whole[place] ?? 0) + off) % 10).join('');
      expect(codeMeaning(whole.join(''))).toEqual({ kind: 'gtin', gtin: whole.join('') });
      expect(codeMeaning(misread).kind).toBe('misread');
    }),
  );
});
