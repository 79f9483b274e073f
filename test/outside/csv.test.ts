import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readRows } from '@/shared/csv/rows';
import { csvText, guarded } from '@/shared/csv/write-rows';

/*
 * RFC 4180, "Common Format and MIME Type for Comma-Separated Values (CSV) Files", section 2: the examples of its seven
 * rules, https://www.rfc-editor.org/rfc/rfc4180#section-2. A second opinion: csv-parse, which nothing of ours uses.
 */

test.each([
  [
    '2.1, each record on a line of its own',
    'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '2.2, the last may lack its line break',
    'aaa,bbb,ccc\r\nzzz,yyy,xxx',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '2.3, a header like any other line',
    'field_name,field_name,field_name\r\naaa,bbb,ccc\r\n',
    [
      ['field_name', 'field_name', 'field_name'],
      ['aaa', 'bbb', 'ccc'],
    ],
  ],
  ['2.4, spaces are part of a field', 'aaa, bbb ,ccc\r\n', [['aaa', ' bbb ', 'ccc']]],
  [
    '2.5, fields in quotes and without',
    '"aaa","bbb","ccc"\r\nzzz,yyy,xxx\r\n',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '2.6, a line break in quotes',
    '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx\r\n',
    [
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  ['2.7, a quote in quotes is written twice', '"aaa","b""bb","ccc"\r\n', [['aaa', 'b"bb', 'ccc']]],
])('RFC 4180 %s', (_, text, rows) => {
  const read = readRows(text, ',');
  expect(read.ok && read.rows.map(({ cells }) => cells)).toEqual(rows);
  expect(parse(text)).toEqual(rows);
});

test('RFC 4180 2.5 and 2.7, as we write them', () => {
  expect(csvText([['aaa', 'b"bb', 'ccc']])).toBe('"aaa","b""bb","ccc"\r\n');
});

test('what we write is read the same by another reader, and as we read it', () => {
  const cell = fc.oneof(
    fc.string({ unit: fc.constantFrom(...'ab",;|\t\r\n \'=-@é') }),
    fc.double({ noNaN: true, min: 0 }),
  );
  const table = fc
    .integer({ min: 2, max: 4 })
    .chain((width) => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1 }));
  fc.assert(
    fc.property(table, (rows) => {
      const texts = rows.map((cells) => cells.map((one) => (typeof one === 'string' ? guarded(one) : String(one))));
      const read = readRows(csvText(rows), ',');
      expect(parse(csvText(rows))).toEqual(texts);
      expect(read.ok && read.rows.map(({ cells }) => cells)).toEqual(texts);
    }),
    { numRuns: 300 },
  );
});
