import 'server-only';
import type { Clock } from '@/lib/clock';
import { doubtOfClock, markClock, noteDoubt } from '@/lib/data/clock-mark';
import { inTurn } from '@/lib/data/writer';
import type { ClockDoubt } from '@/lib/engine/keepout/clock-doubt';

/**
 * Look at the machine's clock once: note how far it was seen, or that it is in doubt.
 *
 * Takes   whether the program is only starting
 * Gives   why it is in doubt; null when it is not
 */
export async function lookAtClock(clock: Clock, isStart = false): Promise<ClockDoubt | null> {
  const reading = { now: clock.now(), steady: clock.steady() };
  const doubt = await doubtOfClock(reading, isStart);
  await inTurn((opened) => (doubt === null ? markClock(opened, reading) : noteDoubt(opened, reading)));
  return doubt;
}

const A_MINUTE = 60_000;

/** Look at the clock now and every minute, as long as the program runs. A look that fails is tried again by the next. */
export async function watchClock(clock: Clock): Promise<void> {
  const look = (isStart: boolean) =>
    lookAtClock(clock, isStart).catch((error) => console.error('The clock could not be looked at:', error));
  await look(true);
  setInterval(() => look(false), A_MINUTE).unref();
}
