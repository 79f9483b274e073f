import type { Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';
import { dayOf, type Zone } from '@/shared/time/zone';

/**
 * The only way to learn the time. Passed in; the engine gets a Day or an Instant. `steady` counts milliseconds from some
 * moment on and cannot be set.
 */
export type Clock = { now(): Instant; today(zone: Zone): Day; steady(): number; reading(): Reading };

/**
 * The time beside a steady count of whole milliseconds, by which it is seen how far the clock was moved. Counts of the same
 * name go on where they were, after a restart of the program too; counts of different names have nothing in common.
 */
type Reading = { now: Instant; steady: number; count: string };

type Count = { name: string; read: () => number };

/** A clock that reads the time from a given source. Throws RangeError when the source gives no time. */
export function clockAt(read: () => Date, steady?: () => number, count = ofThisProcess()): Clock {
  const now = (): Instant => instantOf(read().getTime());
  const reading = (): Reading => {
    const counted: Count = steady ? { name: count, read: steady } : sinceBoot();
    return { now: now(), steady: counted.read(), count: counted.name };
  };
  return { now, today: (zone) => dayOf(zone, now()), steady: steady ?? (() => performance.now()), reading };
}

/** A clock that stands still, at the start of a day or at an instant, and its count with it. For `--today`, `--now`, tests and pictures. */
export function clockPinnedTo(instant: string): Clock {
  const pinned = clockAt(() => new Date(instant));
  const count = ofThisProcess();
  return { ...pinned, reading: () => ({ now: pinned.now(), steady: 0, count }) };
}

let made = 0;

/** The name of a count that no other count has, in this process or another. */
function ofThisProcess(): string {
  made += 1;
  return `process ${performance.timeOrigin} ${made}`;
}

let count: Count | undefined;

/** The count of this machine: since it was started where it says which start that was, else since the program was. */
function sinceBoot(): Count {
  count ??= { name: bootName() ?? ofThisProcess(), read: () => Number(process.hrtime.bigint() / 1_000_000n) };
  return count;
}

/** Linux gives each start of the machine an id, and counts from it; time asleep is not in that count. Null elsewhere. */
function bootName(): string | null {
  try {
    const files = process.platform === 'linux' ? process.getBuiltinModule('node:fs') : null;
    return files && `boot ${files.readFileSync('/proc/sys/kernel/random/boot_id', 'utf8').trim()}`;
  } catch {
    return null;
  }
}

/** The time of this machine, unless BENCH_CLOCK pins it to an instant (for tests and pictures). */
export const clock: Clock = process.env.BENCH_CLOCK
  ? clockPinnedTo(process.env.BENCH_CLOCK)
  : clockAt(() => new Date());
