import 'server-only';
import type { Clock } from '@/lib/clock';
import { seeClock } from '@/lib/data/see-clock';
import { type Telling, takeTelling } from '@/lib/data/take-telling';
import type { Outcome } from '@/shared/outcome';

export type TellSpraying = Telling;

/**
 * Tell the shop that a spraying was begun, or that its last plant is sprayed. Its benches are closed from then on: without
 * an end until there is one, and then by the longest interval of the recipe. Amounts and all else come with its record.
 * What closes a bench is never refused: a bench or a recipe that is gone is kept as it was sent, and a start that is still
 * to come, by a clock that is ahead, counts from now.
 *
 * Told of an end only after its interval is over, for a bench that is kept out of without a known end, it keeps that bench
 * closed for the interval from now on.
 *
 * Refuses  'not-found' when there is no such shop
 */
export async function tellSpraying(told: TellSpraying, clock: Clock): Promise<Outcome<{ spraying: string }>> {
  await seeClock(clock.reading());
  return takeTelling(told, clock.now());
}
