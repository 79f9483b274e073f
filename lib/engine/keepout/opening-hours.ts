import { MINUTES_IN_DAY } from '@/shared/time/clock-time';
import { dayFromNumber, dayNumber, weekdayOf } from '@/shared/time/day';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { atClock, clockOf, dayOf, type Zone } from '@/shared/time/zone';
import type { Shop } from '../shop';

/** From one moment up to, but not including, another. */
export type Span = { from: Instant; to: Instant };

/** The shop's opening hours of any day as moments, worked out once a day and kept. */
export type Openings = {
  zone: Zone;
  /** Whether the shop opens at all, on any weekday or on a day of its own hours. */
  ever: boolean;
  /** Takes a day number. Gives the day's openings in order. */
  on(day: number): readonly Span[];
};

type Hours = Pick<Shop, 'zone' | 'openingHours' | 'specialDays'>;

/**
 * When customers are in the shop, as moments: while the clock on its wall reads opening hours.
 *
 * Takes   opening hours by weekday, which a day has from its own midnight to the next; and days with hours of their own,
 *         which hold instead of those of the weekday, none meaning closed
 * Gives   on a day when the clocks change, what is left of an opening of which a part is skipped, and again the part that
 *         is repeated
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
  const special = [...shop.specialDays.values()].map(({ hours }) => hours);
  return {
    zone: shop.zone,
    ever: [...Object.values(shop.openingHours), ...special].some((hours) => hours.length > 0),
    on,
  };
}

function spansOn({ zone, openingHours, specialDays }: Hours, number: number): Span[] {
  const day = dayFromNumber(number);
  const hours = specialDays.get(day)?.hours ?? openingHours[weekdayOf(day)];
  if (hours.length === 0) return [];
  const [start, end] = [atClock(zone, day, 0), atClock(zone, day, MINUTES_IN_DAY)];
  if (addMinutes(start, MINUTES_IN_DAY) !== end) return readOffTheWall(zone, hours, start, end);
  return hours.map(([from, to]) => ({ from: addMinutes(start, from), to: addMinutes(start, to) }));
}

/** Read quarter by quarter, because zones change their clocks at no other time. */
function readOffTheWall(zone: Zone, hours: [from: number, to: number][], start: Instant, end: Instant): Span[] {
  const spans: Span[] = [];
  for (let quarter = start; quarter < end; quarter = addMinutes(quarter, QUARTER)) {
    const { minuteOfDay: now } = clockOf(zone, quarter);
    for (const [opens, closes] of hours) {
      const [from, to] = [Math.max(opens, now), Math.min(closes, now + QUARTER)];
      if (from < to) join(spans, { from: addMinutes(quarter, from - now), to: addMinutes(quarter, to - now) });
    }
  }
  return spans;
}

const QUARTER = 15;

/** Put a span at the end of a list of earlier ones; where it touches the last, the two become one. */
function join(spans: Span[], span: Span): void {
  const last = spans.at(-1);
  if (!last || span.from > last.to) spans.push({ ...span });
  else if (span.to > last.to) last.to = span.to;
}

/**
 * The first opening that a closed time overlaps, or null when it overlaps none.
 *
 * Takes   from when until when, and the number of the day on which to begin looking: that of `from`, or an earlier one
 */
export function openingDuring(openings: Openings, { from, to }: Span, firstDay: number): Span | null {
  if (!openings.ever || from >= to) return null;
  const lastDay = dayNumber(dayOf(openings.zone, to));
  for (let day = firstDay; day <= lastDay; day += 1) {
    for (const span of openings.on(day)) {
      if (span.from >= to) return null;
      if (span.to > from) return span;
    }
  }
  return null;
}

/**
 * The openings of some days in a row, those that touch joined to one: round the clock is one long opening.
 *
 * Takes   day numbers, both included
 */
export function openingsBetween(openings: Openings, first: number, last: number): Span[] {
  const joined: Span[] = [];
  for (let day = first; day <= last; day += 1) for (const span of openings.on(day)) join(joined, span);
  return joined;
}
