import type { Day } from '@/shared/time/day';
import { type Instant, readInstant } from '@/shared/time/instant';
import { dayOf, type Zone } from '@/shared/time/zone';

/**
 * The only way to learn the time. Passed in; the engine gets a Day or an Instant. `steady` counts milliseconds from some
 * moment on and cannot be set, so what it and `now` say apart is how far somebody, or something, has moved the clock.
 */
export type Clock = { now(): Instant; today(zone: Zone): Day; steady(): number };

/** A clock that reads the time from a given source. Throws RangeError when the source gives no time. */
export function clockAt(read: () => Date, steady: () => number = () => performance.now()): Clock {
  const now = (): Instant => {
    const reading = readInstant(read().toISOString());
    if (!reading.ok) throw new RangeError(reading.message);
    return reading.value;
  };
  return { now, today: (zone) => dayOf(zone, now()), steady };
}

/** A clock that stands still, at the start of a day or at an instant. For `--today`, `--now`, tests and pictures. */
export function clockPinnedTo(instant: string): Clock {
  return clockAt(() => new Date(instant));
}

/** The time of this machine, unless BENCH_CLOCK pins it to an instant (for tests and pictures). */
export const clock: Clock = process.env.BENCH_CLOCK
  ? clockPinnedTo(process.env.BENCH_CLOCK)
  : clockAt(() => new Date());
