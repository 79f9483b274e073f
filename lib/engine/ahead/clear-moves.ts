import { dayNumber } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import { clearStarts } from '../keepout/clear-starts';
import { openingDuring, openingsOf } from '../keepout/opening-hours';
import type { Program, Shop } from '../shop';
import type { Spraying } from './plan';
import { turnsBetween } from './program-turns';

/** A start that would keep customers clear of a spraying's closed time, and which of the three it is. */
export type ClearMove = { why: 'before' | 'after' | 'in-time'; startsAt: Instant };

/**
 * Where a spraying that would be closed in opening hours could go instead: the nearest clear start before and after it,
 * and the latest that reopens in time for the next opening.
 *
 * Takes   the moment before which nothing can start any more
 * Gives   each start once; none for a spraying that no customer meets, or that nobody can say the end of; none on a day on
 *         which its program sprays already
 */
export function clearMoves(shop: Shop, spraying: Spraying, now: Instant): ClearMove[] {
  const { program, startsAt, reopensAt, date, occurrence } = spraying;
  if (reopensAt === null || !program.benches.some(({ customers }) => customers)) return [];
  const [openings, closed] = [openingsOf(shop), { from: startsAt, to: reopensAt }];
  if (!openingDuring(openings, closed, dayNumber(date))) return [];
  const { before, after, inTime } = clearStarts(openings, shop.zone, closed, now);
  const found: ClearMove[] = [];
  const offer = (why: ClearMove['why'], start: Instant | null | undefined) => {
    if (start == null || found.some(({ startsAt: known }) => known === start)) return;
    if (!sprays(program, dayOf(shop.zone, start), occurrence)) found.push({ why, startsAt: start });
  };
  offer('in-time', inTime?.start);
  offer('before', before);
  offer('after', after);
  return found.sort((a, b) => a.startsAt - b.startsAt);
}

/** Whether a program has another turn on a day than a certain one. */
export const sprays = (program: Program, day: Spraying['date'], except: number): boolean =>
  turnsBetween(program, day, day).some(({ index }) => index !== except);
