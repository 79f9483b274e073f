import 'server-only';
import { type ClockReading, looked } from '@/lib/engine/keepout/clock-doubt';
import { ALWAYS, keepLook, remember, watchedClock } from './clock-mark';
import { database } from './database';
import { inTurn } from './writer';

/**
 * See the clock before a spraying is recorded by it, so that a clock that is set back for a moment is not missed: what is
 * recorded then would open a bench too soon once the clock is right again, after a restart, too.
 */
export async function seeClock(reading: ClockReading): Promise<void> {
  const opened = await database();
  const before = watchedClock(opened);
  if (before === null) return;
  const trust = remember(opened, looked(before, reading, ALWAYS));
  if (trust.proven === before.proven && trust.doubt === before.doubt) return;
  await inTurn((opened) => keepLook(opened, trust, reading));
}
