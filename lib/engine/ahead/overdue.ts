import { fraction } from '@/shared/quantity/exact';
import { wholeUp } from '@/shared/quantity/rounding';
import { MINUTES_IN_DAY } from '@/shared/time/clock-time';
import { addDays, type Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import { longestRei } from '../keepout/reopening';
import type { Shop } from '../shop';
import { type OpenSpraying, openSprayings } from './turns-on-record';

/** So many days a spraying that was missed is asked about. After that, its next turn is nearer. */
const DAYS_ASKED = 7;

/** So many days a spraying that was missed stands among those that somebody is to say something of. */
const DAYS_MISSED = 60;

/**
 * The planned sprayings before today that are still open: done, skipped or moved by nobody. They stand until somebody says
 * what became of them; the earliest first.
 */
export const missedSprayings = (shop: Shop, today: Day): readonly OpenSpraying[] =>
  openSprayings(shop, addDays(today, -DAYS_MISSED), addDays(today, -1));

/** The planned sprayings of the last days, not of today, that are still open. In the order in which they were due. */
export const overdueSprayings = (shop: Shop, today: Day): readonly OpenSpraying[] =>
  openSprayings(shop, addDays(today, -DAYS_ASKED), addDays(today, -1));

/**
 * The planned sprayings that were to begin before a moment and are still open: somebody may be at it, or may have sprayed
 * and not told. Asked about as long as the missed ones, and at least until the bench would have reopened.
 *
 * Gives    as `overdueSprayings`, with those of the day
 */
export function unrecordedSprayings(shop: Shop, now: Instant): OpenSpraying[] {
  const today = dayOf(shop.zone, now);
  const asked = addDays(today, -DAYS_ASKED);
  return openSprayings(shop, addDays(today, -daysAsked(shop)), today).filter(
    ({ date, startsAt, reopensAt }) => startsAt <= now && (date >= asked || (reopensAt !== null && reopensAt > now)),
  );
}

/** How many days back a planned spraying may have begun that still keeps people out. */
export const daysAsked = (shop: Shop): number => Math.max(DAYS_ASKED, longestClosing(shop));

/** How many days back a planned spraying may have begun that still keeps a bench closed. */
function longestClosing({ programs }: Shop): number {
  const minutes = programs.flatMap(({ recipes, duration }) =>
    recipes.map((recipe) => duration + (longestRei(recipe) ?? 0)),
  );
  return wholeUp<number>(fraction(BigInt(Math.max(0, ...minutes)), MINUTES_OF_A_DAY)) + 1;
}

const MINUTES_OF_A_DAY = BigInt(MINUTES_IN_DAY);
