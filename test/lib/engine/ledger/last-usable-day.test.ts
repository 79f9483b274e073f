import { expect, test } from 'vitest';
import { type Keeping, lastUsableDay, lastUsableDayNumber } from '@/lib/engine/ledger/last-usable-day';
import { Day } from '@/shared/time/day';

const day = (text: string | null) => (text === null ? null : Day.parse(text));

const bottle = (from: { unopened?: number; opened?: number; expires?: string; openedOn?: string }): Keeping => ({
  receivedOn: Day.parse('2026-03-01'),
  openedOn: day(from.openedOn ?? null),
  expiresOn: day(from.expires ?? null),
  product: { shelfLife: { unopenedDays: from.unopened ?? null, openedDays: from.opened ?? null } },
});

test.each([
  { name: 'the printed expiry counts', from: { expires: '2027-01-31' }, last: '2027-01-31' },
  { name: 'the unopened life counts from the day it came', from: { unopened: 30 }, last: '2026-03-31' },
  {
    name: 'a printed expiry outweighs the unopened life',
    from: { unopened: 30, expires: '2026-09-01' },
    last: '2026-09-01',
  },
  {
    name: 'an opened life that ends first',
    from: { expires: '2027-01-31', opened: 21, openedOn: '2026-03-05' },
    last: '2026-03-26',
  },
  {
    name: 'an expiry that ends first',
    from: { expires: '2026-03-10', opened: 21, openedOn: '2026-03-05' },
    last: '2026-03-10',
  },
  {
    name: 'both end on one day',
    from: { expires: '2026-03-26', opened: 21, openedOn: '2026-03-05' },
    last: '2026-03-26',
  },
  {
    name: 'an opened life that nobody knows ends nothing',
    from: { unopened: 30, openedOn: '2026-03-05' },
    last: '2026-03-31',
  },
  { name: 'an opened life alone', from: { opened: 7, openedOn: '2026-03-05' }, last: '2026-03-12' },
  { name: 'an opened life of a shut bottle has not begun', from: { opened: 7 }, last: null },
  { name: 'nothing known', from: {}, last: null },
  {
    name: 'no days at all once opened: that day still',
    from: { opened: 0, openedOn: '2026-03-05' },
    last: '2026-03-05',
  },
])('last usable day: $name', ({ from, last }) => {
  expect(lastUsableDay(bottle(from))).toBe(last);
});

test('a bottle that is to be opened on a day is asked about without opening it', () => {
  expect(lastUsableDay(bottle({ unopened: 300, opened: 10 }), Day.parse('2026-04-01'))).toBe('2026-04-11');
});

test('a bottle whose life nobody knows lasts for ever in the walk', () => {
  expect(lastUsableDayNumber(bottle({}))).toBe(Number.POSITIVE_INFINITY);
});
