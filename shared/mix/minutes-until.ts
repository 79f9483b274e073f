import { exact, fraction } from '../quantity/exact';
import { wholeDown } from '../quantity/rounding';
import type { Instant } from '../time/instant';

/** Whole minutes from now until then, none once it is past. Rounds down, since time to work in may never read longer. */
export function minutesUntil(then: Instant, now: Instant): number {
  return then <= now ? 0 : wholeDown(fraction(exact(then - now).over, MINUTE));
}

const MINUTE = 60_000n;
