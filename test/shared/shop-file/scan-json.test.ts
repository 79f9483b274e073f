import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LONGEST_LIST, MOST_VALUES, scanJson } from '@/shared/shop-file/scan-json';

const said = (text: string) => scanJson(text).faults.map(({ message }) => message);

test.each([
  ['nothing', '', /empty/],
  ['only space', ' \n ', /empty/],
  ['a comma too many in an object', '{"a":1,}', /line 1, column 8.*take it out/],
  ['a comma too many in a list', '[1,\n2,\n]', /line 3, column 1.*take it out/],
  ['single quotes', "{'a':1}", /column 2.*single quote/],
  ['a missing comma', '{"a":1\n"b":2}', /line 2, column 1.*a comma or }.*was expected/],
  ['a missing colon', '{"a" 1}', /column 6, a colon was expected, but there is "1"/],
  [
    'a missing bracket',
    '{"a":[1,2',
    /ends where a comma or \] was expected for the bracket opened at line 1, column 6/,
  ],
  ['a comment', '// hello\n{}', /comment/],
  ['a word that is no value', '[True]', /a value was expected, but there is "True"/],
  ['a word that begins like a value', '[nullx]', /column 6/],
  ['a number with a leading zero', '[01]', /01 is not a number/],
  ['a number with a plus', '[1e+]', /1e\+ is not a number/],
  ['an endless number', `[${'1'.repeat(41)}]`, /more than 40 digits/],
  ['a text over two lines', '["a\nb"]', /line 1, column 4.*over the end of its line/],
  ['a control character', '["a\u001fb"]', /column 4.*control character/],
  ['a text without an end', '["abc]', /never closed/],
  ['an unknown escape', '["a\\q"]', /backslash/],
  ['something after the end', '{} {}', /column 4, the end of the file was expected/],
])('%s is told with its place', (_, text, says) => {
  const scan = scanJson(text);
  expect(scan.readable).toBe(false);
  expect(scan.faults).toMatchObject([{ path: '', message: expect.stringMatching(says) }]);
});

test('a field written twice is told once, however it is spelled, and the rest is still read', () => {
  const scan = scanJson('{"a":{"b":1,"\\u0062":2,"b":3},"c d":[{"e":1,"e":1}]}');
  expect(scan).toMatchObject({ readable: true, faults: [{ path: 'a.b' }, { path: '["c d"][0].e' }] });
});

test('32 brackets inside each other are read, and one more is not', () => {
  expect(scanJson('['.repeat(32) + ']'.repeat(32)).readable).toBe(true);
  expect(said('['.repeat(33) + ']'.repeat(33))).toEqual([expect.stringMatching(/column 33.*more than 32 deep/)]);
  expect(said('{"a":'.repeat(1_000_000))).toHaveLength(1);
});

test('a list longer than any shop needs is refused with its place', () => {
  const list = (length: number) => `{"lots":[${Array.from({ length }, () => 1).join(',')}]}`;
  expect(scanJson(list(LONGEST_LIST)).readable).toBe(true);
  expect(scanJson(list(LONGEST_LIST + 1))).toMatchObject({ readable: false, faults: [{ path: 'lots' }] });
});

test('more values than any shop needs are refused', () => {
  const list = `[${'1,'.repeat(LONGEST_LIST - 1)}1]`;
  const lists = Array.from({ length: MOST_VALUES / LONGEST_LIST }, () => list);
  expect(scanJson(`[${lists.join(',')}]`).readable).toBe(false);
});

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

test('what JSON.parse reads is readable, and what it does not read is not', () => {
  const pieces = fc.constantFrom(
    ...[
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"a"',
      '"',
      '\\',
      '0',
      '1.5',
      '-',
      'e3',
      'null',
      'true',
      ' ',
      '\n',
      '\u0001',
      'é',
    ],
  );
  const texts = fc.oneof(
    fc.json({ maxDepth: 5 }),
    fc.array(pieces, { maxLength: 12 }).map((all) => all.join('')),
    fc.tuple(fc.json(), fc.nat(), fc.string({ maxLength: 2 })).map(([text, at, put]) => {
      const place = at % (text.length + 1);
      return text.slice(0, place) + put + text.slice(place + 1);
    }),
  );
  fc.assert(
    fc.property(texts, (text) => {
      expect(scanJson(text).readable).toBe(isJson(text));
    }),
    { numRuns: 5_000 },
  );
});
