import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type FoundBy, findIn } from '@/lib/engine/search/rank';

const thing = (name: string, codes: string[] = [], also: string[] = []): FoundBy => ({ name, codes, also });
const found = (things: FoundBy[], typed: string) => findIn(things, typed, (one) => one).map(({ thing }) => thing.name);

test('an exact code comes before a name, a name before its beginning, then words, parts, and what is beside it', () => {
  const shelf = [
    thing('Bottle of something', [], ['in the oil shed']),
    thing('Boiler cleaner'),
    thing('Light oil'),
    thing('Oil of neem'),
    thing('Oil'),
    thing('Grease', ['oil']),
  ];
  expect(found(shelf, 'OIL')).toEqual([
    'Grease',
    'Oil',
    'Oil of neem',
    'Light oil',
    'Boiler cleaner',
    'Bottle of something',
  ]);
});

test('every word must be answered, in any order, whatever its accents', () => {
  const shelf = [thing('Light oil 98 %'), thing('Light oil 80 %'), thing('Café light')];
  expect(found(shelf, '98 light')).toEqual(['Light oil 98 %']);
  expect(found(shelf, 'light')).toEqual(['Light oil 80 %', 'Light oil 98 %', 'Café light']);
  expect(found(shelf, 'cafe')).toEqual(['Café light']);
  expect(found(shelf, 'light nothing')).toEqual([]);
});

test('a number with a point is one word, and nothing typed finds nothing', () => {
  const shelf = [thing('Spinosad 0.5 %'), thing('Spinosad 5 %')];
  expect(found(shelf, '0.5')).toEqual(['Spinosad 0.5 %']);
  expect(found(shelf, '  ')).toEqual([]);
});

test('a thing is found by its own name and by each of its codes, and first by no one else’s part of them', () => {
  const words = fc.string({ minLength: 1, maxLength: 12 }).filter((text) => text.trim() !== '');
  fc.assert(
    fc.property(words, fc.array(words, { maxLength: 3 }), (name, codes) => {
      for (const typed of [name, ...codes])
        expect(findIn([thing(name, codes)], typed, (one) => one)[0]?.rank).toBeLessThanOrEqual(1);
    }),
    { numRuns: 50 },
  );
});
