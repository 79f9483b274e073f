import { fraction } from '@/shared/quantity/exact';
import { wholeUp } from '@/shared/quantity/rounding';
import { LONGEST_HORIZON } from '@/shared/shop-file/limits';
import { MINUTES_IN_DAY } from '@/shared/time/clock-time';
import { addDays, type Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import { longestRei } from '../keepout/reopening';
import type { Program, Shop } from '../shop';
import { anyTurnsBetween } from './program-turns';
import { type OpenSpraying, openBetween, openSprayings } from './turns-on-record';

/** A forgotten spraying with a known interval is asked about for so many days. After that, its next turn is nearer. */
const DAYS_ASKED = 7;

/**
 * The planned sprayings before today that are still open: done, skipped or moved by nobody. They stand until somebody says
 * what became of them, however long ago they were; the earliest first.
 */
export function missedSprayings(shop: Shop, today: Day): readonly OpenSpraying[] {
  const first = firstUnsaid(shop, addDays(today, -1));
  return first === null ? [] : openSprayings(shop, first, addDays(today, -1));
}

/** The first day up to another of which some turn has no line that says what became of it. Null: all of them have one. */
function firstUnsaid({ programs }: Shop, last: Day): Day | null {
  const days = programs.flatMap((program) => {
    const [first = last] = firstDays(program).sort();
    return anyTurnsBetween(program, first, last).find(({ became }) => became === null)?.day ?? [];
  });
  return days.sort()[0] ?? null;
}

/** The first day on which any program of the shop sprays; today where none has begun. */
export const firstPlanned = ({ programs }: Pick<Shop, 'programs'>, today: Day): Day =>
  programs.flatMap(firstDays).sort()[0] ?? today;

/** The planned sprayings of the last days, not of today, that are still open. In the order in which they were due. */
export const overdueSprayings = (shop: Shop, today: Day): readonly OpenSpraying[] =>
  openSprayings(shop, addDays(today, -DAYS_ASKED), addDays(today, -1));

/**
 * The planned sprayings that were to begin before a moment and are still open: somebody may be at it, or may have sprayed
 * and not told. A bench is kept out of for the days asked, and at least until it would have reopened: where an interval
 * is unknown, until somebody says what became of it or enters the interval.
 *
 * Gives    as `overdueSprayings`, with those of the day; of older ones with an unknown interval the latest of each bench
 */
export function unrecordedSprayings(shop: Shop, now: Instant): OpenSpraying[] {
  const today = dayOf(shop.zone, now);
  const asked = addDays(today, -DAYS_ASKED);
  const recent = openSprayings(shop, addDays(today, -daysAsked(shop)), today).filter(
    ({ date, startsAt, reopensAt }) => startsAt <= now && (date >= asked || reopensAt === null || reopensAt > now),
  );
  return [...withoutEnd(shop, lastForgotten(shop, today)), ...recent];
}

/** The last day that is too long ago to be looked at turn by turn. */
const lastForgotten = (shop: Shop, today: Day): Day => addDays(today, -daysAsked(shop) - 1);

const known = new WeakMap<Shop, { last: Day; found: OpenSpraying[] }>();

/** Open sprayings up to a day whose interval nobody knows, so that they never end. */
function withoutEnd(shop: Shop, last: Day): OpenSpraying[] {
  const before = known.get(shop);
  if (before?.last === last) return before.found;
  const found = lookBack(shop, last);
  known.set(shop, { last, found });
  return found;
}

/** The first stretch that is looked back at, in days; each further one is twice as long. */
const FIRST_STRETCH = 28;

/** Looks back from a day until each bench has one, which is enough to keep people out of it, or to the first turn. */
function lookBack(shop: Shop, last: Day): OpenSpraying[] {
  const programs = shop.programs.filter(({ recipes }) => recipes.some((recipe) => longestRei(recipe) === null));
  const first = programs.flatMap(firstDays).sort()[0] ?? null;
  const left = new Set(programs.flatMap(({ benches }) => benches.map(({ id }) => id)));
  const found: OpenSpraying[] = [];
  let [to, days] = [last, FIRST_STRETCH];
  while (first !== null && to >= first && left.size > 0) {
    const from = addDays(to, 1 - days);
    for (const turn of openBetween(shop, from, to, programs).reverse()) {
      if (turn.reopensAt !== null || !turn.open.some(({ id }) => left.has(id))) continue;
      found.push(turn);
      for (const { id } of turn.open) left.delete(id);
    }
    [to, days] = [addDays(from, -1), Math.min(2 * days, LONGEST_HORIZON)];
  }
  return found.reverse();
}

/** The days on or after which a program has its turns. */
const firstDays = ({ startsOn, changes }: Program): Day[] => [
  startsOn,
  ...changes.flatMap(({ movedTo }) => (movedTo === null ? [] : [movedTo])),
];

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
