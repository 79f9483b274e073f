import { expect, test } from 'vitest';
import { type ClockSigns, clockDoubt } from '@/lib/engine/keepout/clock-doubt';
import { type Instant, instantOf } from '@/shared/time/instant';

const NOON = Date.UTC(2026, 3, 14, 12);
const [SECOND, MINUTE, HOUR] = [1_000, 60_000, 3_600_000];
const at = (shift: number): Instant => instantOf(NOON + shift);
const signs = (rest: Partial<ClockSigns>): ClockSigns => ({
  ...{ now: at(0), steady: 5_000, mark: at(-MINUTE), isDoubted: false, anchor: null, isStart: false },
  ...rest,
});
/** Watched a minute ago. */
const anchor = { at: at(-MINUTE), steady: 5_000 - MINUTE };

test.each([
  { why: 'nothing speaks against it', rest: { anchor }, doubt: null },
  { why: 'it was never seen before', rest: { mark: null, isStart: true }, doubt: null },
  { why: 'it is 2 minutes behind its mark', rest: { mark: at(2 * MINUTE) }, doubt: null },
  { why: 'it is a millisecond more behind', rest: { mark: at(2 * MINUTE + 1) }, doubt: 'behind' },
  { why: 'it went 10 minutes further than time passed', rest: { anchor, now: at(10 * MINUTE) }, doubt: null },
  { why: 'it went a millisecond further', rest: { anchor, now: at(10 * MINUTE + 1) }, doubt: 'leapt' },
  { why: 'a machine slept for an hour, and time with it', rest: { anchor, now: at(HOUR) }, doubt: 'leapt' },
  {
    why: 'an hour passed on both counts',
    rest: { anchor, now: at(HOUR), steady: 5_000 + HOUR },
    doubt: null,
  },
  { why: 'nobody watched it for 24 hours before a start', rest: { isStart: true, mark: at(-24 * HOUR) }, doubt: null },
  {
    why: 'nobody watched it a millisecond longer',
    rest: { isStart: true, mark: at(-24 * HOUR - 1) },
    doubt: 'long-gap',
  },
  { why: 'a start comes two years ahead', rest: { isStart: true, mark: at(-730 * 24 * HOUR) }, doubt: 'long-gap' },
  { why: 'the same gap, found while it runs', rest: { mark: at(-25 * HOUR) }, doubt: null },
  { why: 'it was doubted before', rest: { isDoubted: true, anchor }, doubt: 'unconfirmed' },
  { why: 'it stands still while time passes', rest: { anchor, steady: 5_000 + 9 * HOUR }, doubt: null },
  { why: 'it is a second behind', rest: { now: at(-MINUTE - SECOND) }, doubt: null },
])('a clock when $why: $doubt', ({ rest, doubt }) => {
  expect(clockDoubt(signs(rest))).toBe(doubt);
});
