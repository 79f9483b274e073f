import { expect, test } from 'vitest';
import {
  type ClockReading,
  type ClockTrust,
  confirmed,
  lagOf,
  looked,
  NEVER_WATCHED,
  trusted,
  wentAhead,
} from '@/lib/engine/keepout/clock-doubt';
import { instantOf } from '@/shared/time/instant';

const NOON = Date.UTC(2026, 3, 14, 12);
const [MINUTE, HOUR] = [60_000, 3_600_000];
/** A reading so long after noon: by the clock, and by the count. */
const reading = (wall: number, steady = wall, count = 'one'): ClockReading => ({
  ...{ now: instantOf(NOON + wall), steady: 5_000 + steady, count },
});
const nothingWaits = () => false;
const intervalWaits = () => true;
const seenAtNoon = trusted(reading(0));

/** One look after another: the last thing that is known. */
const after = (readings: ClockReading[], waiting = intervalWaits, before: ClockTrust | null = seenAtNoon) =>
  readings.reduce<ClockTrust>((trust, one) => looked(trust, one, waiting), before ?? trusted(reading(0)));

test.each([
  { why: 'shows what the count shows', one: reading(MINUTE), doubt: null },
  { why: 'is 2 minutes behind its mark', one: reading(-2 * MINUTE, 0), doubt: null },
  { why: 'is a millisecond more behind', one: reading(-2 * MINUTE - 1, 0), doubt: 'behind' },
  { why: 'fell 2 minutes behind the count', one: reading(0, 2 * MINUTE), doubt: null },
  { why: 'fell a millisecond further behind it', one: reading(0, 2 * MINUTE + 1), doubt: 'behind' },
  { why: 'went 10 minutes further than time passed', one: reading(11 * MINUTE, MINUTE), doubt: null },
  { why: 'went a millisecond further', one: reading(11 * MINUTE + 1, MINUTE), doubt: 'leapt' },
  { why: 'went on while the machine slept for an hour', one: reading(HOUR, 0), doubt: 'leapt' },
  { why: 'was not looked at for a day, and the count went on', one: reading(25 * HOUR), doubt: null },
])('a clock that $why: $doubt', ({ one, doubt }) => {
  expect(after([one]).doubt).toBe(doubt);
});

const minutes = (count: number, wallPerMinute: number) =>
  Array.from({ length: count }, (_, at) => reading(Math.floor((at + 1) * wallPerMinute), (at + 1) * MINUTE));

test.each([
  { name: '9.5 minutes ahead each minute', each: 10.5 * MINUTE, looks: 2, doubt: 'leapt' },
  { name: '1 minute back each minute', each: 0, looks: 3, doubt: 'behind' },
  { name: 'a second ahead each minute', each: MINUTE + 1_000, looks: 620, doubt: 'leapt' },
  { name: '20 parts in a million ahead for ten weeks', each: MINUTE + 1.2, looks: 70 * 1_440, doubt: null },
  { name: '20 parts in a million behind for ten weeks', each: MINUTE - 1.2, looks: 70 * 1_440, doubt: null },
])('steps add up: $name is $doubt', ({ each, looks, doubt }) => {
  expect(after(minutes(looks, each)).doubt).toBe(doubt);
});

test('a step that is too small to be doubted holds back what ended before it, and nothing that ended later', () => {
  const ahead = after([reading(9 * MINUTE, 0)]);
  expect(ahead).toMatchObject({ doubt: null });
  expect(lagOf(ahead)).toEqual({ ms: 9 * MINUTE, since: NOON + 9 * MINUTE });
  expect(lagOf(after([reading(9 * MINUTE, 0), reading(10 * MINUTE, MINUTE)]))).toEqual(lagOf(ahead));
});

test('a small step stays known for seven days, because an interval that has ended may be made longer', () => {
  const ahead = reading(9 * MINUTE, 0);
  const later = (passed: number) => after([ahead, reading(9 * MINUTE + passed, passed)], nothingWaits);
  expect(lagOf(after([ahead], nothingWaits))?.ms).toBe(9 * MINUTE);
  expect(lagOf(later(7 * 24 * HOUR - 1))?.ms).toBe(9 * MINUTE);
  expect(lagOf(later(7 * 24 * HOUR))).toBeNull();
});

test('a clock that was set back for a moment holds back what was recorded then', () => {
  const trust = after([reading(-MINUTE, 0), reading(MINUTE)]);
  expect(trust.doubt).toBeNull();
  expect(lagOf(trust)?.ms).toBe(MINUTE);
});

test.each([
  { gap: 10 * MINUTE, waits: true, doubt: null, lag: 10 * MINUTE },
  { gap: 10 * MINUTE + 1, waits: true, doubt: 'unwatched', lag: 10 * MINUTE + 1 },
  { gap: 5 * HOUR, waits: true, doubt: 'unwatched', lag: 5 * HOUR },
  { gap: 23 * HOUR, waits: true, doubt: 'unwatched', lag: 23 * HOUR },
  { gap: 23 * HOUR, waits: false, doubt: null, lag: undefined },
  { gap: 24 * HOUR + 1, waits: false, doubt: 'long-gap', lag: 24 * HOUR + 1 },
  { gap: 2 * 365 * 24 * HOUR, waits: false, doubt: 'long-gap', lag: 2 * 365 * 24 * HOUR },
  { gap: -2 * MINUTE, waits: true, doubt: null, lag: undefined },
  { gap: -2 * MINUTE - 1, waits: false, doubt: 'behind', lag: undefined },
])('a start by another count $gap ms later, an interval waiting $waits: $doubt', ({ gap, waits, doubt, lag }) => {
  const started = after([reading(gap, 0, 'two')], () => waits);
  expect(started.doubt).toBe(doubt);
  expect(lagOf(started)?.ms).toBe(lag);
});

test('a shop that was made a moment ago holds nothing back at its first look', () => {
  const made = { ...seenAtNoon, count: NEVER_WATCHED };
  expect(lagOf(looked(made, reading(5 * MINUTE, 0), intervalWaits))).toBeNull();
  expect(looked(made, reading(5 * HOUR, 0), intervalWaits).doubt).toBe('unwatched');
});

test('a start by the same count knows how much time has passed', () => {
  expect(after([reading(30 * HOUR)])).toMatchObject({ doubt: null });
  expect(lagOf(after([reading(30 * HOUR)]))).toBeNull();
  expect(after([reading(5 * HOUR, 0)]).doubt).toBe('leapt');
});

test('a doubt stays until somebody confirms the clock', () => {
  const doubted = after([reading(5 * HOUR, 0), reading(MINUTE), reading(HOUR)]);
  expect(doubted.doubt).toBe('leapt');
  expect(looked(doubted, reading(2 * HOUR, 2 * HOUR, 'two'), nothingWaits).doubt).toBe('leapt');
  expect(confirmed(doubted, reading(HOUR), true)).toMatchObject({ doubt: null, mark: NOON + HOUR });
});

test('who confirms says whether the clock was right before it went ahead', () => {
  const asleep = after([reading(5 * HOUR, 0)]);
  expect(wentAhead(asleep)).toBe(true);
  expect(lagOf(confirmed(asleep, reading(5 * HOUR, 0), true))).toBeNull();
  expect(lagOf(confirmed(asleep, reading(5 * HOUR, 0), false))?.ms).toBe(5 * HOUR);
  const off = after([reading(5 * HOUR, 0, 'two')]);
  expect(wentAhead(off)).toBe(true);
  expect(lagOf(confirmed(off, reading(5 * HOUR, 0, 'two'), true))).toBeNull();
  expect(lagOf(confirmed(off, reading(5 * HOUR, 0, 'two'), false))?.ms).toBe(5 * HOUR);
});

test('what was recorded while the clock was set back is held back once it is set right', () => {
  const back = after([reading(-5 * HOUR, 0), reading(-4 * HOUR, HOUR)]);
  expect(back.doubt).toBe('behind');
  const right = looked(back, reading(HOUR), intervalWaits);
  expect(wentAhead(right)).toBe(false);
  expect(lagOf(confirmed(right, reading(HOUR), true))?.ms).toBe(5 * HOUR);
  // The program was started anew, and the clock set, in between.
  const anew = looked(back, reading(HOUR, 0, 'two'), intervalWaits);
  expect(lagOf(confirmed(anew, reading(HOUR, 0, 'two'), true))?.ms).toBe(5 * HOUR);
});
