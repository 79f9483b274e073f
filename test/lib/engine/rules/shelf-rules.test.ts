import { expect, test } from 'vitest';
import { lotExpired } from '@/lib/engine/rules/lot-expired';
import { unknownExpiry } from '@/lib/engine/rules/unknown-expiry';
import { planOf, product } from './small-shop';

const lot = (rest: object) => ({ id: 'l1', product: 'p1', pack: '1 L', receivedOn: '2026-01-05', ...rest });
const shelf = (rest: object, shelfLife: object = {}) =>
  planOf({ products: [product('p1', {}, { shelfLife })], lots: [lot(rest)] });

test.each([
  { why: 'its last day is today', rest: { expiresOn: '2026-03-02' }, fires: false },
  { why: 'its last day was yesterday', rest: { expiresOn: '2026-03-01' }, fires: true },
  { why: 'it is empty', rest: { expiresOn: '2026-03-01', remaining: '0 mL' }, fires: false },
  { why: 'its opened life ended yesterday', rest: { openedOn: '2026-02-01', expiresOn: '2027-01-01' }, fires: true },
])('a lot is expired or not: $why', ({ rest, fires }) => {
  expect(lotExpired(shelf(rest, { openedDays: 28 }))).toMatchObject(
    fires
      ? [{ severity: 'warn', rule: 'lot-expired', on: '2026-03-02', program: null, benches: [], product: 'p1' }]
      : [],
  );
});

test('several containers of a lot are one flag, with what is left in all of them', () => {
  expect(lotExpired(shelf({ count: 3, expiresOn: '2026-03-01' }))).toMatchObject([
    {
      message:
        '3 containers of Product p1, 1 L, received Mon 5 January: Sun 1 March was the last usable day, and 3.00 L is left. It may not be used: discard it and note that, or correct its dates.',
    },
  ]);
});

test.each([
  { why: 'nothing is known', rest: {}, life: {}, fires: true },
  { why: 'only the opened life is known, and it is shut', rest: {}, life: { openedDays: 30 }, fires: true },
  {
    why: 'only the opened life is known, and it is open',
    rest: { openedOn: '2026-02-20' },
    life: { openedDays: 30 },
    fires: false,
  },
  { why: 'an expiry is printed on it', rest: { expiresOn: '2026-03-01' }, life: {}, fires: false },
  { why: 'the product has a shelf life', rest: {}, life: { unopenedDays: 10 }, fires: false },
  { why: 'it is empty', rest: { remaining: '0 mL' }, life: {}, fires: false },
])('a last usable day is known or not: $why', ({ rest, life, fires }) => {
  expect(unknownExpiry(shelf(rest, life))).toMatchObject(
    fires
      ? [{ severity: 'note', rule: 'unknown-expiry', on: '2026-03-02', program: null, benches: [], product: 'p1' }]
      : [],
  );
});
