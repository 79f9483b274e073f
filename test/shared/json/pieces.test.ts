import fc from 'fast-check';
import { expect, test } from 'vitest';
import { jsonPieces } from '@/shared/json/pieces';
import { runs } from '@/test/runs';

/* Written in pieces, a document is the same text as written at once. */

test('whatever a document says, its pieces are the text that JSON.stringify gives', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 6 }), fc.nat(60), (value, times) => {
      const documents = [value, { list: Array(times).fill(value), gone: undefined }, [[value, undefined]]];
      for (const document of documents) expect([...jsonPieces(document)].join('')).toBe(JSON.stringify(document));
    }),
    { numRuns: runs(200, 20_000) },
  );
});

test('a piece is never much longer than 65,536 characters, however long the document', () => {
  const list = Array.from({ length: 50_000 }, (_, at) => ({ at, name: 'x'.repeat(20), list: [1, 2, { a: at }] }));
  const pieces = [...jsonPieces({ list })];
  expect(pieces.length).toBeGreaterThan(30);
  expect(Math.max(...pieces.map(({ length }) => length))).toBeLessThan(70_000);
});
