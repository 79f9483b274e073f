import { expect, test } from 'vitest';
import { mayGoOn } from '@/lib/engine/record/retention';
import { Day } from '@/shared/time/day';

test.each([
  ['2026-03-31', 2, '2028-03-31'],
  ['2026-03-31', 7, '2033-03-31'],
  ['2026-12-31', 2, '2028-12-31'],
  // A leap day to a year without one, and to one with.
  ['2024-02-29', 2, '2026-03-01'],
  ['2024-02-29', 4, '2028-02-29'],
  ['2096-02-29', 4, '2100-03-01'],
  // Fewer than two years are two.
  ['2026-03-31', 0, '2028-03-31'],
  ['2026-03-31', 1, '2028-03-31'],
])('a record of %s is kept %i years, until %s', (ended, years, until) => {
  expect(mayGoOn(Day.parse(ended), years)).toBe(until);
});
