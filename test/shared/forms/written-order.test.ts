import { describe, expect, test } from 'vitest';
import {
  listedTogether,
  type OrderRow,
  placedAmong,
  readWritten,
  type WrittenOrder,
  writtenAgain,
  writtenIn,
  writtenWords,
} from '@/shared/forms/written-order';

const row = (offer: string, which = 0): OrderRow => ({ offer, which, name: offer.toUpperCase() });
const ROWS = [row('a'), row('b'), row('b', 1)];
/** As a form sends it: every field, what is blank too. */
const fields = (typed: Record<string, string>, rows = ROWS) => ({
  ...Object.fromEntries(
    rows.flatMap((_, at) => [
      [`lines[${at}].count`, ''],
      [`lines[${at}].price`, ''],
    ]),
  ),
  ...{ placedOn: '2026-03-31', expectedOn: '', freight: '', note: '' },
  ...typed,
});
const FIRST = { placedOn: '2026-03-31', 'lines[1].count': '2' };
const begun = fields(FIRST);

const kept = (typed: Record<string, string>, more: Partial<WrittenOrder> = {}): WrittenOrder => {
  const written = writtenIn(ROWS, FIRST, { ...begun, ...typed });
  if (!written) throw new Error('nothing was written');
  return {
    ...{ address: '/buy/orders/new?supplier=s', shop: 'shop', supplier: { id: 's', name: 'S' } },
    ...{ standing: '', writtenOn: '2026-03-31', ...written, ...more },
  };
};

describe('what is kept of an order that is being written', () => {
  test('nothing, as long as it is as it began', () => {
    expect(writtenIn(ROWS, FIRST, begun)).toBeNull();
  });

  test('what is typed otherwise, even where nobody can read it, and what was cleared', () => {
    const now = { ...begun, 'lines[0].count': 'half', 'lines[1].count': '', note: 'by the back door' };
    expect(writtenIn(ROWS, FIRST, now)).toEqual({
      lines: [
        { offer: 'a', which: 0, name: 'A', count: 'half', price: undefined },
        { offer: 'b', which: 0, name: 'B', count: '', price: undefined },
      ],
      aside: { note: 'by the back door' },
      ordered: [{ offer: 'a', count: 'half', price: '', name: 'A' }],
    });
  });

  test('a day that is as it began is not kept, so that it is today when the order is found again tomorrow', () => {
    expect(writtenIn(ROWS, FIRST, { ...begun, note: 'x' })?.aside).toEqual({ note: 'x' });
  });
});

describe('putting it back', () => {
  const typed = { 'lines[0].count': '3', 'lines[2].price': '1.50', 'lines[1].count': '', freight: '0' };

  test('every field has again what was typed in it', () => {
    expect(writtenAgain(kept(typed), ROWS)).toEqual({ fields: typed, gone: [] });
  });

  test('it goes to the rows of its offers, whatever came before them since', () => {
    const rows = [row('new'), row('b'), row('b', 1), row('a')];
    expect(writtenAgain(kept(typed), rows).fields).toEqual({
      ...{ 'lines[3].count': '3', 'lines[2].price': '1.50', 'lines[1].count': '' },
      freight: '0',
    });
  });

  test('what is no longer offered is said, with how many of it were wanted', () => {
    const { fields: again, gone } = writtenAgain(kept(typed), [row('b')]);
    expect(again).toEqual({ 'lines[0].count': '', freight: '0' });
    expect(gone).toEqual(['3 × A', 'B']);
  });

  test('it is read back from where it was kept, and anything else is nothing', () => {
    expect(readWritten(JSON.stringify(kept(typed)))).toEqual(JSON.parse(JSON.stringify(kept(typed))));
    for (const text of [null, '', '{}', 'null', '[1]', JSON.stringify({ ...kept(typed), lines: 'x' })]) {
      expect(readWritten(text)).toBeNull();
    }
  });
});

describe('what it asks for', () => {
  const placed = [
    { offer: 'b', count: '2' },
    { offer: 'a', count: '3' },
  ];

  test('it is done with when all of its packs are placed, in whichever order and however they are written', () => {
    const one = kept({ 'lines[0].count': ' 03', 'lines[2].count': '0' });
    expect(placedAmong([one], placed)).toEqual([one]);
    expect(placedAmong([one], placed.slice(1))).toEqual([]);
    expect(placedAmong([one], [...placed, ...placed])).toEqual([]);
    expect(placedAmong([kept({ 'lines[0].count': '4' })], placed)).toEqual([]);
  });

  test('of several, the one that was placed is done with, or all when they were placed together', () => {
    const [one, other] = [kept({ 'lines[0].count': '3' }), kept({ 'lines[0].count': '1', 'lines[1].count': '' })];
    expect(placedAmong([other, one], placed)).toEqual([one]);
    expect(placedAmong([other, one], [...placed, { offer: 'a', count: '1' }])).toEqual([other, one]);
    expect(placedAmong([other, one], [{ offer: 'a', count: '2' }])).toEqual([]);
  });

  test('it is told in words, or as nothing yet', () => {
    expect(writtenWords(kept({ 'lines[0].count': '3' }))).toBe('3 × A; 2 × B');
    expect(writtenWords(kept({ 'lines[1].count': '' }))).toBe('nothing yet');
  });

  test('several new ones are one list, without those that change an order that is placed', () => {
    const one = kept({ 'lines[0].count': '3', 'lines[0].price': ' 9.50 ' });
    const other = kept({ 'lines[0].count': '1' });
    const changed = kept({ 'lines[0].count': '7' }, { standing: 'f'.repeat(64) });
    expect(Object.fromEntries(listedTogether([one, changed, other]))).toEqual({
      ...{ 'lines[0].offer': 'a', 'lines[0].count': '3', 'lines[0].price': '9.50' },
      ...{ 'lines[1].offer': 'b', 'lines[1].count': '4', 'lines[1].price': '' },
      ...{ 'lines[2].offer': 'a', 'lines[2].count': '1', 'lines[2].price': '' },
    });
    expect(listedTogether([changed])).toEqual([]);
  });

  test('what cannot be read is handed to the list as it was typed', () => {
    const lists = listedTogether([kept({ 'lines[1].count': 'half' }), kept({ 'lines[1].count': '3' })]);
    expect(Object.fromEntries(lists)).toMatchObject({ 'lines[0].count': 'half + 3' });
  });
});
