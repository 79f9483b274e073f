import { expect, test } from 'vitest';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { benchStates } from '@/lib/views/bench-states';
import { reasonsOf } from '@/lib/views/keep-out-words';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { SMALL } from '../commands/small-shop';
import { parsedOrThrow } from '../data/any-shop-file';

const NOON = Date.UTC(2026, 2, 31, 12);
const HOUR = 3_600_000;
/** Two benches; one of them has a record that begins at noon. */
const shop = shopOfFile(
  parsedOrThrow({
    ...SMALL,
    benches: [...SMALL.benches, { id: 'c', name: 'Other bench', plants: [] }],
    programs: [],
    applications: [
      { id: 'a', recipe: 'r', benches: ['b'], startedAt: '2026-03-31T12:00:00Z', endedAt: '2026-03-31T12:30:00Z' },
    ],
  }),
);
const states = (now: number) => benchStates(shop, instantOf(now), { doubt: null, lag: null });
const words = (now: number) => states(now).map(({ state }) => state);

test('a record that begins after now keeps people out of its benches, not known until when', () => {
  expect(words(NOON - 1)).toEqual(['unknown', 'open']);
  expect(words(NOON - 300 * 24 * HOUR)).toEqual(['unknown', 'open']);
  expect(words(NOON)).toEqual(['closed', 'open']);
  expect(words(NOON + 13 * HOUR)).toEqual(['open', 'open']);
  const [bench] = states(NOON - HOUR);
  const told =
    bench && reasonsOf(bench, { zone: shop.zone, today: Day.parse('2026-03-31'), now: instantOf(NOON - HOUR) });
  expect(told).toEqual([
    'Recipe is on record as begun Tue 31 March 08:00, which is still to come: put the record or the clock right',
  ]);
});

test('the document of a shop file counts only what has begun, as its contract says', () => {
  expect(keepOut(shop, instantOf(NOON - 1)).map(({ state }) => state)).toEqual(['open', 'open']);
});
