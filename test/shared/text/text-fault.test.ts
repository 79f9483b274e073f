import fc from 'fast-check';
import { expect, test } from 'vitest';
import { textFault, tidyText } from '@/shared/text/text-fault';

test.each([
  ['Neem\tOil', 'This holds a tab, as between two cells of a spreadsheet. Write a space instead.'],
  ['Neem\nOil', 'This holds a line break. Write it on one line.'],
  ['Neem\u2028Oil', 'This holds a line break. Write it on one line.'],
  ['Neem\u2029Oil', 'This holds a line break. Write it on one line.'],
  ['Neem\u0000', 'This holds a character that cannot be shown (U+0000). Take it out.'],
  ['Neem\u001b[31m', 'This holds a character that cannot be shown (U+001B). Take it out.'],
  ['Neem\ud800', 'This holds half a character (U+D800). Take it out.'],
  ['Neem\u202elio', 'This holds a mark that turns the direction of writing (U+202E). Take it out.'],
  ['Neem\u2066lio', 'This holds a mark that turns the direction of writing (U+2066). Take it out.'],
  ['Neem\u200f', 'This holds a mark that turns the direction of writing (U+200F). Take it out.'],
  [' ', 'Nothing of this can be seen. Write something that can be read.'],
  ['\u00a0\u3000', 'Nothing of this can be seen. Write something that can be read.'],
  ['\u200b\u200d', 'Nothing of this can be seen. Write something that can be read.'],
  ['\u3164', 'Nothing of this can be seen. Write something that can be read.'],
  ['\ufeff', 'Nothing of this can be seen. Write something that can be read.'],
])('%j is refused, with what to write instead', (text, sentence) => {
  expect(textFault(text)).toBe(sentence);
});

test.each(['Neem Oil', 'Käse', 'صابون', 'می\u200cخواهم', '👩‍🌾', 'a', '…', 'नींबू', ''])('%j stands', (text) => {
  expect(textFault(text)).toBeNull();
});

test('whatever a text holds, made tidy it stands, and made tidy once more it stays', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      const tidy = tidyText(text);
      expect(textFault(tidy)).toBeNull();
      expect(tidyText(tidy)).toBe(tidy);
      expect(tidy.trim()).toBe(tidy);
    }),
    { numRuns: 1_000 },
  );
});

test('two cells of a spreadsheet become two words', () => {
  expect(tidyText('Neem\tOil\r\n')).toBe('Neem Oil');
});
