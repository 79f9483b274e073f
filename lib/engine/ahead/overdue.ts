import { fraction } from '@/shared/quantity/exact';
import { wholeUp } from '@/shared/quantity/rounding';
import { MINUTES_IN_DAY } from '@/shared/time/clock-time';
import { addDays, type Day } from '@/shared/time/day';
import { type Instant, isInstant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import { countingApplications } from '../keepout/counting';
import { longestRei } from '../keepout/reopening';
import type { Application, Shop } from '../shop';
import type { Spraying } from './plan';
import { sprayingsBetween } from './sprayings';

/** So many days a spraying that was missed is asked about. After that, its next turn is nearer. */
const DAYS_ASKED = 7;

/**
 * The sprayings of the last days that were neither done nor skipped nor moved, and that no record covers.
 *
 * A record covers a spraying when it is of the same recipe, began on its day or later, and was on all of its benches.
 *
 * Gives    them in the order in which they were due, without draws and costs
 */
export const overdueSprayings = (shop: Shop, today: Day): Spraying[] =>
  notOnRecord(shop, sprayingsBetween(shop, addDays(today, -DAYS_ASKED), addDays(today, -1)));

/**
 * The sprayings that were to begin before a moment and of which nobody has said what became: somebody may be at it, or
 * may have sprayed and not told. Asked about as long as the missed ones, and at least until the bench would have reopened.
 *
 * Gives    as `overdueSprayings`, with those of the day
 */
export function unrecordedSprayings(shop: Shop, now: Instant): Spraying[] {
  const today = dayOf(shop.zone, now);
  const asked = addDays(today, -DAYS_ASKED);
  const due = sprayingsBetween(shop, addDays(today, -Math.max(DAYS_ASKED, longestClosing(shop))), today);
  return notOnRecord(
    shop,
    due.filter(
      ({ date, startsAt, reopensAt }) => startsAt <= now && (date >= asked || (reopensAt !== null && reopensAt > now)),
    ),
  );
}

/** How many days back a planned spraying may have begun that still keeps a bench closed. */
function longestClosing({ programs }: Shop): number {
  const minutes = programs.flatMap(({ recipes, duration }) =>
    recipes.map((recipe) => duration + (longestRei(recipe) ?? 0)),
  );
  return wholeUp<number>(fraction(BigInt(Math.max(0, ...minutes)), MINUTES_OF_A_DAY)) + 1;
}

const MINUTES_OF_A_DAY = BigInt(MINUTES_IN_DAY);

function notOnRecord(shop: Shop, sprayings: Spraying[]): Spraying[] {
  const records = countingApplications(shop);
  return sprayings.filter((spraying) => !records.some((record) => covers(shop, record, spraying)));
}

function covers({ zone }: Shop, { recipe, benches, startedAt }: Application, spraying: Spraying): boolean {
  const sprayed = new Set(benches.map(({ id }) => id));
  return (
    recipe.id === spraying.recipe.id &&
    isInstant(startedAt) &&
    dayOf(zone, startedAt) >= spraying.date &&
    spraying.program.benches.every(({ id }) => sprayed.has(id))
  );
}
