import { expect, test } from 'vitest';
import { type Keeping, lastUsableDay } from '@/lib/engine/ledger/last-usable-day';
import { labelDoubts } from '@/lib/engine/rules/label-doubts';
import { unknownExpiry } from '@/lib/engine/rules/unknown-expiry';
import { day, planOf, product, smallShop } from '../lib/engine/rules/small-shop';

/*
 * How long things keep against what is published. `seen` was read in a copy of the source; `memory` was recalled and not
 * looked up again. Sources differ from two years to eight, so that no life is ever filled in: one that nobody entered is
 * unknown, and says so.
 */

const kept = (
  receivedOn: string,
  unopenedDays: number | null,
  openedDays: number | null,
  openedOn: string | null = null,
) =>
  lastUsableDay({
    ...{ receivedOn: day(receivedOn), openedOn: openedOn === null ? null : day(openedOn), expiresOn: null },
    product: { shelfLife: { unopenedDays, openedDays } },
  } satisfies Keeping);

test('X02 (seen, FAO, www.fao.org/docrep/V8966E/V8966e02.htm): two years from 15 January 2025 end on 15 January 2027', () => {
  expect(kept('2025-01-15', 730, null)).toBe('2027-01-15');
});

test('X05 (seen, "Is that pesticide too old?", pctonline.com/article/is-that-pesticide-too-old): two years shut, one once opened', () => {
  expect(kept('2025-01-15', 730, 365)).toBe('2027-01-15');
  expect(kept('2025-01-15', 730, 365, '2025-06-01')).toBe('2026-06-01');
  // Opening it late lengthens nothing.
  expect(kept('2025-01-15', 730, 365, '2026-12-01')).toBe('2027-01-15');
});

/*
 * X01: two years (UF/IFAS Bradford County, bradford.ifas.ufl.edu/pesticide_shelf_life.shtml; Cornell PSEP, "Shelf Life of
 * Pesticides"); X03: two to eight (Penn State Extension column, www.donnan.com/pesticide-storage.htm); both seen.
 */
test('X01 and X03 (seen): where nobody entered a life, none is assumed, and somebody is asked', () => {
  expect(kept('2025-01-15', null, null)).toBeNull();
  const plan = planOf({ products: [product('p1', {}, { shelfLife: {} })] });
  expect(unknownExpiry(plan).map(({ severity, product: its }) => [severity, its])).toEqual([['note', 'p1']]);
});

test.each([
  { id: 'X01', years: 2, doubted: false },
  { id: 'X06', years: 3, doubted: false },
  { id: 'X06', years: 4, doubted: false },
  { id: 'X03', years: 8, doubted: false },
  { id: 'X03', years: 9, doubted: true },
])(
  '$id (seen, as above; X06 Cornell PSEP: captan 3, thiram 4): $years years are read twice: $doubted',
  ({ years, doubted }) => {
    const { products } = smallShop({ products: [product('p1', {}, { shelfLife: { unopenedDays: years * 365 } })] });
    expect(products.flatMap(labelDoubts).length > 0).toBe(doubted);
  },
);

/*
 * A multi-dose vial is used for 28 days from its opening, or until its printed date if that is sooner: USP <797> and CDC
 * (memory), with the dates of tables published for it, calculator7.snowdaycalculatornow.com, 2019-2020 and 2022 (seen).
 */
test.each([
  { opened: '2019-01-01', last: '2019-01-29' },
  { opened: '2019-12-05', last: '2020-01-02' },
  { opened: '2020-02-01', last: '2020-02-29' },
  { opened: '2020-02-15', last: '2020-03-14' },
  { opened: '2020-12-10', last: '2021-01-07' },
  { opened: '2022-03-01', printed: '2023-01-31', last: '2022-03-29' },
  { opened: '2022-11-15', printed: '2022-12-01', last: '2022-12-01' },
  { opened: '2022-12-20', printed: '2024-05-30', last: '2023-01-17' },
])('28 days from $opened, printed $printed: $last (seen)', ({ opened, printed, last }) => {
  const container = {
    ...{ receivedOn: day('2018-12-01'), openedOn: day(opened), expiresOn: printed === undefined ? null : day(printed) },
    product: { shelfLife: { unopenedDays: null, openedDays: 28 } },
  } satisfies Keeping;
  expect(lastUsableDay(container)).toBe(last);
});
