import { dayNumber } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import type { Spraying } from '../engine/ahead/plan';
import { openingsBetween, openingsOf } from '../engine/keepout/opening-hours';
import type { Shop } from '../engine/shop';

/**
 * How a spraying's closed time meets the opening hours of benches that customers can reach.
 *
 *   unseen     no customer can reach any of its benches
 *   unknown    nobody can say when it reopens
 *   during     closed while the shop is open
 *   before     reopens so many minutes before the next opening, which is at `opensAt`
 *   no-hours   the shop does not open in the week after it
 */
export type Reopening =
  | { kind: 'unseen' | 'unknown' | 'during' | 'no-hours' }
  | { kind: 'before'; minutes: number; opensAt: Instant };

const MINUTE = 60_000;
const A_WEEK = 7;

export function reopeningOf(shop: Shop, { program, startsAt, reopensAt }: Spraying): Reopening {
  if (!program.benches.some(({ customers }) => customers)) return { kind: 'unseen' };
  if (reopensAt === null) return { kind: 'unknown' };
  const dayAt = (instant: Instant) => dayNumber(dayOf(shop.zone, instant));
  const openings = openingsBetween(openingsOf(shop), dayAt(startsAt) - 1, dayAt(reopensAt) + A_WEEK);
  if (openings.some(({ from, to }) => from < reopensAt && to > startsAt)) return { kind: 'during' };
  const next = openings.find(({ from }) => from >= reopensAt);
  return next
    ? { kind: 'before', minutes: (next.from - reopensAt) / MINUTE, opensAt: next.from }
    : { kind: 'no-hours' };
}
