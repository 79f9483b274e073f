import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { DELIMITERS, readRows } from '@/shared/csv/rows';
import { readTable } from '@/shared/csv/table';

const cells = (text: string, delimiter: (typeof DELIMITERS)[number] = ',') => {
  const read = readRows(text, delimiter);
  if (!read.ok) throw new Error(read.message);
  return read.rows.map((row) => row.cells);
};

test.each(['\r\n', '\n', '\r'])('lines end with %j, and the last may lack its end', (end) => {
  expect(cells(`a,b${end}c,d${end}`)).toEqual([
    ['a', 'b'],
    ['c', 'd'],
  ]);
  expect(cells(`a,b${end}c,d`)).toEqual([
    ['a', 'b'],
    ['c', 'd'],
  ]);
});

test('a line is counted where it begins in the file, also after cells that run over several', () => {
  const read = readRows('a\r\n"b\nb\r\nb\rb"\rc\n', ',');
  expect(read.ok && read.rows.map(({ line }) => line)).toEqual([1, 2, 6]);
});

test('a quote in a cell that does not begin with one is an ordinary character', () => {
  expect(cells('4" pot,a"b"\n')).toEqual([['4" pot', 'a"b"']]);
});

test('a quoted cell that never ends is refused where it begins', () => {
  expect(readRows('a,b\nc,"d\ne,f\n', ',')).toMatchObject({
    ok: false,
    line: 2,
    place: 1,
    message: /no quote ends it/,
  });
});

test('something behind a closing quote is refused with its line and cell', () => {
  expect(readRows('a,b\n"c"x,d\n', ',')).toMatchObject({
    ok: false,
    line: 2,
    place: 0,
    message: /Behind a closing quote/,
  });
});

test('another writer’s tables are read as it wrote them, whatever is in the cells', () => {
  const text = fc.string({ unit: fc.constantFrom(...'ab",;|\t\r\n \'=é') });
  const table = fc
    .integer({ min: 2, max: 4 })
    .chain((width) => fc.array(fc.array(text, { minLength: width, maxLength: width }), { minLength: 1 }));
  fc.assert(
    fc.property(
      table,
      fc.constantFrom(...DELIMITERS),
      fc.constantFrom('\r\n', '\n', '\r'),
      (rows, delimiter, newline) => {
        expect(cells(Papa.unparse(rows, { delimiter, newline, quotes: true }), delimiter)).toEqual(rows);
      },
    ),
    { numRuns: 300 },
  );
});

const isKnown = (name: string) => ['name', 'price'].includes(name.trim());

test.each([
  ['name,price\na;b;c;d,1\n', ','],
  ['name;price;x,y,z\n', ';'],
  ['name\tprice\n', '\t'],
  ['name|price\n', '|'],
  ['"name";"price"\n', ';'],
  ['one;two;three\n', ';'],
  ['\n\nname;price\n', ';'],
])('the delimiter of %j is %j', (text, delimiter) => {
  expect(readTable(text, isKnown)).toMatchObject({ ok: true, table: { delimiter } });
});

test('lines with nothing in them are left out, and the others keep their number', () => {
  const read = readTable('\uFEFF\nname,price\n,\n \na,1\n', isKnown);
  expect(read.ok && read.table.header).toEqual({ line: 2, cells: ['name', 'price'] });
  expect(read.ok && read.table.rows).toEqual([{ line: 5, cells: ['a', '1'] }]);
});

test.each([
  ['', /nothing in this file/],
  ['\n\n', /nothing in this file/],
  ['PK\u0003\u0004xyz', /workbook/],
  ['a\u0000b', /no text holds/],
])('%j is no list', (text, message) => {
  expect(readTable(text, isKnown)).toMatchObject({ ok: false, fault: { message: expect.stringMatching(message) } });
});
