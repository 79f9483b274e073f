import { expect, test } from 'vitest';
import { labelDoubts } from '@/lib/engine/rules/label-doubts';
import { type Fields, product, smallShop } from './small-shop';

const doubts = (label: Fields, rest: Fields = {}): string[] =>
  smallShop({ products: [product('p1', label, { shelfLife: { unopenedDays: 730 }, ...rest })] }).products.flatMap(
    labelDoubts,
  );

test.each([
  { word: 'DANGER', hours: 47.9, doubted: true },
  { word: 'DANGER', hours: 48, doubted: false },
  { word: 'Danger - Poison', hours: 24, doubted: true },
  { word: 'WARNING', hours: 23.9, doubted: true },
  { word: 'WARNING', hours: 24, doubted: false },
  { word: 'caution', hours: 4, doubted: false },
  { word: 'caution', hours: 3.9, doubted: true },
  { word: null, hours: 0, doubted: false },
  { word: 'ATTENTION', hours: 0, doubted: false },
  { word: 'DANGER', hours: null, doubted: false },
])('$hours hours under $word', ({ word, hours, doubted }) => {
  expect(doubts({ signalWord: word, reiHours: hours })).toHaveLength(doubted ? 1 : 0);
});

test('a word on a nutrient or an acid says nothing of an interval', () => {
  expect(doubts({ signalWord: 'DANGER', reiHours: 0 }, { kind: 'pH adjuster' })).toEqual([]);
});

test('a short interval is told with the usual one, and nothing is changed', () => {
  expect(doubts({ signalWord: 'WARNING', reiHours: 4 })).toEqual([
    'People keep out for 4 h is short for a label that says WARNING: 24 h is usual. Read it again.',
  ]);
});

const captan = { kind: 'fungicide', contents: [{ substance: 'captan', amount: 50, basis: '% w/w' }] };

test.each([
  { modes: ['FRAC M04'], doubt: null },
  { modes: ['Group M04'], doubt: null },
  { modes: ['m4'], doubt: null },
  { modes: ['frac m04', 'FRAC 11'], doubt: null },
  {
    modes: [],
    doubt: 'No mode of action is entered for Product p1; FRAC M04 is published for what is in it. Look on its label.',
  },
  {
    modes: ['FRAC 4'],
    doubt: 'FRAC 4 is entered for Product p1, and FRAC M04 is published for what is in it. Read it again.',
  },
])('$modes entered for captan', ({ modes, doubt }) => {
  expect(doubts({ modes }, captan)).toEqual(doubt === null ? [] : [doubt]);
});

test('no group is asked of what is not classified', () => {
  const oil = { contents: [{ substance: 'mineral oil', amount: 80, basis: '% w/w' }] };
  expect(doubts({ modes: [] }, oil)).toEqual([]);
});

test.each([
  { days: 2928, doubted: false },
  { days: 2929, doubted: true },
])('it keeps $days days', ({ days, doubted }) => {
  expect(doubts({}, { shelfLife: { unopenedDays: days } })).toHaveLength(doubted ? 1 : 0);
  expect(doubts({}, { shelfLife: { openedDays: days } })).toHaveLength(doubted ? 1 : 0);
});

test('a number whose scheme neither the text nor the kind of the product tells is asked about', () => {
  const asks = ['Write which scheme mode group 4A of Product p1 is from: IRAC, FRAC or HRAC.'];
  expect(doubts({ modes: ['4a'] }, { kind: 'other' })).toEqual(asks);
  expect(doubts({ modes: ['4a'] })).toEqual([]);
  expect(doubts({ modes: ['IRAC 4a'] }, { kind: 'other' })).toEqual([]);
});
