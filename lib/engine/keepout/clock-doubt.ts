import { fraction } from '@/shared/quantity/exact';
import { wholeDown } from '@/shared/quantity/rounding';
import { type Instant, instantOf } from '@/shared/time/instant';

/*
 * Whether a machine's clock can be wrong, and how much of the time it shows has provably passed. Pure: plain data in,
 * plain data out. `lib/data/clock-mark.ts` keeps the data between two looks and across restarts.
 */

/**
 * Why a clock opens no bench until somebody has confirmed it.
 *
 *   behind       more than 2 minutes before the latest moment it was seen at, or behind the steady count: it was set back
 *   leapt        more than 10 minutes further ahead than time passed, in one step or in many
 *   long-gap     nobody watched it for more than 24 hours
 *   unwatched    nobody watched it for more than 10 minutes while an interval was running
 *   restored     a backup was put back: what was sprayed after it is not on record
 *   unconfirmed  it was doubted before, and nobody has confirmed it since
 */
export type ClockDoubt = 'behind' | 'leapt' | 'long-gap' | 'unwatched' | 'restored' | 'unconfirmed';

/** What a clock shows, and a count of whole milliseconds that cannot be set. Counts of different names have nothing in common. */
export type ClockReading = { now: Instant; steady: number; count: string };

/**
 * What is known of a clock from one look to the next. An offset is its time minus the steady count, in milliseconds: it
 * stays the same as long as nothing moves the clock.
 */
export type ClockTrust = {
  /** The latest moment at which the clock was seen, or something was written, while it was not in doubt. */
  mark: Instant;
  /** What it showed at the last look. */
  last: Instant;
  /** Which steady count the offsets belong to. */
  count: string;
  /** The offset that is trusted, and what the count showed when it last followed the clock. */
  anchor: number;
  renewed: number;
  /** The offset at the last look, give or take a second. */
  level: number;
  /** The lowest offset since no interval waited to end: so much of the clock's time has provably passed. */
  proven: number;
  /** When the clock last went ahead of the proven time: what ended later is not held back. */
  since: Instant;
  doubt: ClockDoubt | null;
};

/** By how many milliseconds whatever ended by `since` is held back. Null: nothing is. */
export type ClockLag = { ms: number; since: Instant } | null;

/**
 * Whether an interval waits to end, so that a clock that is ahead would open a bench too soon.
 *
 * Takes   the proven time, what the clock shows, and until when a spraying must have ended to count
 */
export type Waiting = (proven: Instant, now: Instant, since: Instant) => boolean;

const MINUTE = 60_000;
export const MOST_BEHIND = 2 * MINUTE;
/** As far as a clock may get ahead of the steady count altogether, or go on unwatched while an interval runs. */
export const MOST_AHEAD = 10 * MINUTE;
const LONGEST_UNWATCHED = 24 * 60 * MINUTE;
/**
 * So long a small lag stays although no interval waits: a label or an amendment may make one longer that has ended, and it
 * must still be held back.
 */
const KEPT_FOR = 7 * 24 * 60 * MINUTE;
/** One part in ten thousand, 8.6 seconds a day: honest clocks differ by less. */
const HONEST_DRIFT = 10_000n;
/** The count of a database that was only just made, before any program watched its clock. */
export const NEVER_WATCHED = 'never';
/** Two readings taken one after the other differ by less. */
const JITTER = 1_000;

/** A clock that is taken as it is, because it is seen for the first time. */
export function trusted({ now, steady, count }: ClockReading): ClockTrust {
  const offset = now - steady;
  const offsets = { anchor: offset, level: offset, proven: offset };
  return { mark: now, last: now, count, ...offsets, renewed: steady, since: now, doubt: null };
}

/**
 * What is known of a clock after one more look.
 *
 * Takes   what was known before (null: nothing, and then the clock is taken as it is), what it shows, and whether an
 *         interval waits to end; that is asked only where it matters
 * Gives   the doubt, once there is one, until somebody confirms the clock
 */
export function looked(before: ClockTrust | null, reading: ClockReading, isWaiting: Waiting): ClockTrust {
  if (before === null) return trusted(reading);
  const seen = before.count === reading.count ? watched(before, reading) : started(before, reading, isWaiting);
  const lag = lagOf(seen);
  if (seen.doubt !== null || lag === null) return seen;
  const { now } = reading;
  if (lag.ms <= MOST_AHEAD && now - lag.since < KEPT_FOR) return seen;
  return isWaiting(instantOf(now - lag.ms), now, lag.since) ? seen : { ...seen, proven: seen.level };
}

/** By how much the proven time is behind the clock. */
export function lagOf({ level, proven, since }: ClockTrust): ClockLag {
  const ms = level - proven;
  return ms > JITTER ? { ms, since } : null;
}

/**
 * Take a clock as somebody has confirmed it.
 *
 * Takes   whether it was right before the doubt, too: then the computer slept, or was off. Else it was wrong and has been
 *         set: what ended before is held back by as much as it was set ahead
 * Gives   no doubt. What was recorded while the clock was set back is held back in any case
 */
export function confirmed(before: ClockTrust | null, reading: ClockReading, wasRight: boolean): ClockTrust {
  const fresh = trusted(reading);
  if (before === null) return fresh;
  const { anchor, proven } = before.count === reading.count ? before : carriedOver(before, reading);
  const right = wasRight ? Math.min(anchor, fresh.level) : fresh.level;
  return { ...fresh, proven: fresh.level - Math.max(0, right - proven) };
}

/** Whether whoever confirms a clock has to say if it was right before: it went ahead, and that has two reasons. */
export const wentAhead = ({ level, anchor }: Pick<ClockTrust, 'level' | 'anchor'>): boolean =>
  level - anchor > MOST_AHEAD;

/** A look by the same count: it knows how far the clock was moved. */
function watched(before: ClockTrust, { now, steady }: ClockReading): ClockTrust {
  const offset = now - steady;
  const isNear = Math.abs(offset - before.level) <= JITTER;
  const seen = {
    ...before,
    ...{ last: now, proven: Math.min(before.proven, offset), level: isNear ? before.level : offset },
    since: isNear || offset < before.level ? before.since : now,
  };
  if (before.doubt !== null) return seen;
  const doubt = moved(before, now, offset - before.anchor);
  if (doubt !== null) return { ...seen, doubt };
  return { ...seen, ...renewed(before, steady, offset), mark: later(before.mark, now) };
}

function moved({ mark }: ClockTrust, now: Instant, drift: number): ClockDoubt | null {
  if (now < mark - MOST_BEHIND || drift < -MOST_BEHIND) return 'behind';
  return drift > MOST_AHEAD ? 'leapt' : null;
}

const later = (one: Instant, other: Instant): Instant => (one > other ? one : other);

/** The anchor follows the clock, no faster than honest clocks differ. */
function renewed({ anchor, renewed: at }: ClockTrust, steady: number, offset: number) {
  const passed = steady - at;
  if (passed < MINUTE) return { anchor, renewed: at };
  const most = wholeDown<number>(fraction(BigInt(passed), HONEST_DRIFT));
  return { anchor: anchor + Math.max(-most, Math.min(most, offset - anchor)), renewed: steady };
}

/** The first look by another count: nobody knows how much time has passed since the last one. */
function started(before: ClockTrust, reading: ClockReading, isWaiting: Waiting): ClockTrust {
  const { now, steady } = reading;
  const carried = carriedOver(before, reading);
  if (carried.doubt !== null) return carried;
  // By the proven time none of the gap has passed.
  const gap = Math.max(0, now - before.last);
  const isNew = before.count === NEVER_WATCHED && gap <= MOST_AHEAD;
  const seen = { ...carried, proven: carried.proven - (isNew ? 0 : gap) };
  const inDoubt = (doubt: ClockDoubt) => ({ ...seen, anchor: seen.anchor - (now - before.last), doubt });
  if (now < before.mark - MOST_BEHIND) return inDoubt('behind');
  if (gap > LONGEST_UNWATCHED) return inDoubt('long-gap');
  if (gap > MOST_AHEAD && isWaiting(instantOf(seen.proven + steady), now, now)) return inDoubt('unwatched');
  return { ...seen, mark: later(before.mark, now) };
}

/** The same knowledge by another count: how far the clock had fallen below what was trusted stays known. */
function carriedOver(before: ClockTrust, { now, steady, count }: ClockReading): ClockTrust {
  const level = now - steady;
  const { doubt } = before;
  // The clock may have been set between two runs; if it was in doubt then, what was recorded meanwhile is still wrong.
  const anchor = doubt === null ? level : level + Math.min(0, before.anchor - before.level);
  const proven = doubt === null ? level + before.proven - before.level : anchor + before.proven - before.anchor;
  const offsets = { level, anchor, proven: Math.min(proven, anchor) };
  return { ...before, last: now, count, renewed: steady, since: now, ...offsets };
}
