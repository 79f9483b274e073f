import type { Instant } from '@/shared/time/instant';

/** Why a machine's clock opens no bench until somebody has looked at it. */
export type ClockDoubt = 'behind' | 'leapt' | 'long-gap' | 'unconfirmed';

/** What there is to tell by whether a clock is right. */
export type ClockSigns = {
  now: Instant;
  /** Milliseconds that count on whatever the clock is set to. */
  steady: number;
  /** The latest moment at which this clock was seen, or something was written; null: never. */
  mark: Instant | null;
  /** Whether it was doubted before, and nobody has confirmed it since. */
  isDoubted: boolean;
  /** Both counts as this process last found them right; null when it has only begun. */
  anchor: { at: Instant; steady: number } | null;
  /** Whether the program is only starting, so that nobody has watched the clock since the mark. */
  isStart: boolean;
};

const MINUTE = 60_000;
const MOST_BEHIND = 2 * MINUTE;
/** As far as a clock may move against the steady count, or be found ahead of its mark while it is watched. */
export const MOST_AHEAD = 10 * MINUTE;
const LONGEST_UNWATCHED = 24 * 60 * MINUTE;

/**
 * Whether a clock can be wrong. An interval that is measured by a wrong clock ends too soon, so whoever doubts it keeps
 * people out.
 *
 *   behind       it shows more than 2 minutes before the mark: it was set back
 *   leapt        it went ahead more than 10 minutes further than time passed
 *   long-gap     nobody watched it for more than 24 hours before this start
 *   unconfirmed  it was doubted before
 *
 * Gives   null when nothing speaks against it; a clock seen for the first time is taken as it is
 */
export function clockDoubt({ now, steady, mark, isDoubted, anchor, isStart }: ClockSigns): ClockDoubt | null {
  if (isDoubted) return 'unconfirmed';
  if (mark !== null && now < mark - MOST_BEHIND) return 'behind';
  if (anchor !== null && now - anchor.at - (steady - anchor.steady) > MOST_AHEAD) return 'leapt';
  return isStart && mark !== null && now - mark > LONGEST_UNWATCHED ? 'long-gap' : null;
}
