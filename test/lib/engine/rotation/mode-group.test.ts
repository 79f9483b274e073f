import fc from 'fast-check';
import { expect, test } from 'vitest';
import { modeGroupsIn, mostInARow } from '@/lib/engine/rotation/mode-group';
import type { ProductKind } from '@/lib/engine/shop';
import { runs } from '../../../runs';

const groups = (text: string, kind: ProductKind = 'other') => modeGroupsIn(text, kind).map(({ group }) => group);

test.each<[text: string, kind: ProductKind, group: string[]]>([
  ['IRAC 3A', 'other', ['IRAC 3']],
  ['IRAC 3B', 'other', ['IRAC 3']],
  ['irac5', 'other', ['IRAC 5']],
  [' IRAC  Group 4 a ', 'other', ['IRAC 4']],
  ['Group 4C insecticide', 'other', ['IRAC 4']],
  ['GROUP 11 FUNGICIDE', 'other', ['FRAC 11']],
  ['5', 'insecticide', ['IRAC 5']],
  ['05', 'insecticide/miticide', ['IRAC 5']],
  ['5', 'fungicide', ['FRAC 5']],
  ['5', 'other', ['5']],
  ['FRAC M5', 'other', ['FRAC M05']],
  ['frac m 05', 'other', ['FRAC M05']],
  ['FRACM5', 'other', ['FRAC M05']],
  ['M-05', 'insecticide', ['FRAC M05']],
  ['P7', 'other', ['FRAC P07']],
  ['FRAC BM 2', 'other', ['FRAC BM02']],
  ['FRAC 16.1', 'other', ['FRAC 16']],
  ['FRAC 11A', 'other', ['FRAC 11']],
  ['IRAC 11A', 'other', ['IRAC 11']],
  ['FRAC 3 (DMI)', 'other', ['FRAC 3']],
  ['UNF', 'fungicide', ['IRAC UN']],
  ['IRAC unknown', 'other', ['IRAC UN']],
  ['frac: nc', 'other', ['FRAC NC']],
  ['NC', 'insecticide', ['FRAC NC']],
  ['FRAC not classified', 'other', ['FRAC NC']],
  ['FRAC unknown', 'other', ['FRAC U']],
  ['HRAC 9', 'other', ['HRAC 9']],
  ['HRAC G', 'other', ['HRAC 9']],
  ['WSSA 9', 'other', ['HRAC 9']],
  ['HRAC K3', 'other', ['HRAC 15']],
  ['IRAC 3A + 27', 'other', ['IRAC 3', 'IRAC 27']],
  ['FRAC 7 and FRAC 11', 'other', ['FRAC 7', 'FRAC 11']],
  ['N-1A', 'other', ['IRAC N-1']],
  ['Pyrethroid  of some kind', 'other', ['pyrethroid of some kind']],
])('%j on a product of kind %s is %j', (text, kind, group) => {
  expect(groups(text, kind)).toEqual(group);
});

test.each(['', '  ', 'none', 'N/A', 'n.a.', 'not classified', 'unknown', '-', 'no group'])('%j is no group', (text) => {
  expect(groups(text)).toEqual([]);
});

test('a group is written with its sub-group, as its scheme does', () => {
  const written = (text: string) => modeGroupsIn(text, 'other').map((one) => one.text);
  expect(written('irac 4a')).toEqual(['IRAC 4A']);
  expect(written('frac m5')).toEqual(['FRAC M05']);
  expect(written('hrac k3')).toEqual(['HRAC K3']);
  expect(written(' Something new ')).toEqual(['Something new']);
});

test.each([
  { text: 'IRAC 5', most: 3 },
  { text: 'FRAC 3', most: 3 },
  { text: 'FRAC 11', most: 1 },
  { text: 'IRAC 11', most: 3 },
  { text: 'FRAC 4', most: 1 },
  { text: 'IRAC 4A', most: 3 },
  { text: 'IRAC 8D', most: Number.POSITIVE_INFINITY },
  { text: 'FRAC 8', most: 3 },
  { text: 'IRAC 13', most: Number.POSITIVE_INFINITY },
  { text: 'IRAC UNM', most: Number.POSITIVE_INFINITY },
  { text: 'FRAC M5', most: Number.POSITIVE_INFINITY },
  { text: 'FRAC U12', most: Number.POSITIVE_INFINITY },
  { text: 'FRAC NC', most: Number.POSITIVE_INFINITY },
  { text: 'FRAC BM02', most: Number.POSITIVE_INFINITY },
  { text: 'FRAC P07', most: 3 },
  { text: 'HRAC 0', most: Number.POSITIVE_INFINITY },
  { text: 'HRAC Z', most: Number.POSITIVE_INFINITY },
  { text: 'something', most: 3 },
])('$text may come $most times in a row where the shop allows 3', ({ text, most }) => {
  expect(modeGroupsIn(text, 'other').map((one) => mostInARow(one, 3))).toEqual([most]);
});

test('spelling never makes another group of one', () => {
  const scheme = fc.constantFrom('IRAC', 'FRAC', 'HRAC');
  const code = fc.tuple(fc.constantFrom('', 'M', 'P'), fc.integer({ min: 1, max: 53 }));
  const spelling = fc.record({
    space: fc.constantFrom('', ' ', '  ', ' group ', ': ', ' Code '),
    zeros: fc.constantFrom('', '0'),
    inner: fc.constantFrom('', ' '),
    around: fc.constantFrom('', ' '),
    isUpper: fc.boolean(),
  });
  fc.assert(
    fc.property(scheme, code, spelling, (named, [letter, number], { space, zeros, inner, around, isUpper }) => {
      const between = letter !== '' && space === '' ? ' ' : space;
      const text = `${around}${named}${between}${letter}${letter === '' ? '' : inner}${zeros}${number}${around}`;
      const spelt = isUpper ? text.toUpperCase() : text.toLowerCase();
      expect(groups(spelt)).toEqual(groups(`${named} ${letter}${number}`));
      expect(groups(spelt)).toHaveLength(1);
    }),
    { numRuns: runs(100, 2000) },
  );
});

test('no text breaks it, and each group found is found again in its own text', () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[A-Z]{0,5} ?[A-Z]{0,2}\d{0,3}[A-Z]?$/)), (text) => {
      for (const { group, text: own, scheme } of modeGroupsIn(text, 'insecticide')) {
        const again = modeGroupsIn(own, 'insecticide');
        if (scheme !== null && /^[IFH]RAC /.test(own)) expect(again.map((one) => one.group)).toEqual([group]);
      }
    }),
    { numRuns: runs(300, 5000) },
  );
});
