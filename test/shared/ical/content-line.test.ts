import fc from 'fast-check';
import { expect, test } from 'vitest';
import { contentLine, textValue } from '@/shared/ical/content-line';

const octets = (text: string): number => Buffer.byteLength(text, 'utf8');
const unfolded = (lines: string): string => lines.replace(/\r\n[ \t]/g, '');

test('a line of 75 octets stays one, and one octet more makes a second', () => {
  const line = (length: number) => contentLine('X', 'a'.repeat(length - 2));
  expect(line(75)).toBe(`X:${'a'.repeat(73)}\r\n`);
  expect(line(76)).toBe(`X:${'a'.repeat(73)}\r\n a\r\n`);
});

test('no line is longer than 75 octets, no character is split, and unfolding gives the line back', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 200 }), (text) => {
      const value = textValue(text);
      const lines = contentLine('SUMMARY', value);
      expect(lines.endsWith('\r\n')).toBe(true);
      for (const line of lines.slice(0, -2).split('\r\n')) {
        expect(octets(line)).toBeLessThanOrEqual(75);
        expect(Buffer.from(line, 'utf8').toString('utf8')).toBe(line);
      }
      expect(unfolded(lines)).toBe(`SUMMARY:${value}\r\n`);
    }),
  );
});

test('a character of four octets that does not fit goes to the next line whole', () => {
  const [first, second] = contentLine('X', `${'a'.repeat(71)}🌱b`).split('\r\n');
  expect([first, second]).toEqual([`X:${'a'.repeat(71)}`, ' 🌱b']);
});

test.each([
  ['every break of a line is one', 'a\r\nb\rc\nd\u2028e\u2029f\u0085g\vh', 'a\\nb\\nc\\nd\\ne\\nf\\ng\\nh'],
  ['control characters and halves of a character are left out, a tab stays', 'a\0b\u001bc\u007f\td\ud83c', 'abc\td'],
  ['what looks like escaped is escaped again', '\\n\\;', '\\\\n\\\\\\;'],
  ['a colon and quotes stand as they are', 'a:b"c', 'a:b"c'],
])('%s', (_, words, written) => {
  expect(textValue(words)).toBe(written);
});
