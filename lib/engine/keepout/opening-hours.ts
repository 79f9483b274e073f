import { type Day, dayFromNumber, weekdayOf } from '@/shared/time/day';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { atClock, clockOf } from '@/shared/time/zone';
import type { Shop } from '../shop';

/** From one moment up to, but not including, another. */
export type Span = { from: Instant; to: Instant };

/** The shop's opening hours of any day as moments, worked out once a day and kept. */
export type Openings = {
  /** Whether the shop opens at all in a week. */
  ever: boolean;
  /** Takes a day number. Gives the day's openings in order. */
  on(day: number): readonly Span[];
};

type Hours = Pick<Shop, 'zone' | 'openingHours'>;

/**
 * When customers are in the shop, on the shop's clock, as moments.
 *
 * Takes   opening hours by weekday; a day has them from its own midnight to the next
 * Gives   for an opening that a clock change skips in part, what is left of it; for a closing time that comes twice,
 *         the second, because customers are kept out of a bench for as long as the clock may read opening hours
 */
export function openingsOf(shop: Hours): Openings {
  const kept = new Map<number, readonly Span[]>();
  const on = (day: number): readonly Span[] => {
    const known = kept.get(day);
    if (known) return known;
    const spans = spansOn(shop, day);
    kept.set(day, spans);
    return spans;
  };
  return { ever: Object.values(shop.openingHours).some((hours) => hours.length > 0), on };
}

function spansOn({ zone, openingHours }: Hours, number: number): Span[] {
  const day = dayFromNumber(number);
  return openingHours[weekdayOf(day)]
    .map(([from, to]) => ({ from: atClock(zone, day, from), to: closingAt(zone, day, to) }))
    .filter(({ from, to }) => from < to);
}

/** The last moment at which the clock of a day reads a time. These are the steps by which zones turn their clocks back. */
function closingAt(zone: Shop['zone'], day: Day, minute: number): Instant {
  const first = atClock(zone, day, minute);
  for (const step of [30, 60, 120]) {
    const later = addMinutes(first, step);
    const clock = clockOf(zone, later);
    if (clock.day === day && clock.minuteOfDay === minute) return later;
  }
  return first;
}

/**
 * The first opening that a closed time overlaps, or null when it overlaps none.
 *
 * Takes   from when until when, and the number of the day on which to begin looking: that of `from`, or an earlier one
 */
export function openingDuring(openings: Openings, { from, to }: Span, firstDay: number): Span | null {
  if (!openings.ever || from >= to) return null;
  for (let day = firstDay; day < firstDay + MOST_DAYS; day += 1) {
    const spans = openings.on(day);
    for (const span of spans) {
      if (span.from >= to) return null;
      if (span.to > from) return span;
    }
  }
  return null;
}

/** A shop that opens at all opens within any two weeks, even when a clock change swallows the one opening of a week. */
const MOST_DAYS = 16;

/**
 * The openings of some days in a row, those that touch joined to one: round the clock is one long opening.
 *
 * Takes   day numbers, both included
 */
export function openingsBetween(openings: Openings, first: number, last: number): Span[] {
  const joined: Span[] = [];
  for (let day = first; day <= last; day += 1) {
    for (const span of openings.on(day)) {
      const before = joined.at(-1);
      if (!before || span.from > before.to) joined.push({ ...span });
      else if (span.to > before.to) before.to = span.to;
    }
  }
  return joined;
}
