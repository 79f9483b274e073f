import { MINUTES_IN_DAY } from '@/shared/time/clock-time';
import { dayFromNumber, dayNumber } from '@/shared/time/day';
import { addMinutes, type Instant, instantOf } from '@/shared/time/instant';
import { atClock, dayOf, type Zone } from '@/shared/time/zone';
import { type Openings, openingsBetween, type Span } from './opening-hours';

/** Starts that keep a bench's closed time clear of opening hours. Null: there is none. */
export type ClearStarts = {
  /** The nearest one before the planned start. */
  before: Instant | null;
  /** The nearest one after it. */
  after: Instant | null;
  /** The next opening after the planned start, and the latest clear start that reopens in time for it. */
  inTime: { opening: Instant; start: Instant | null } | null;
};

/** How far a start is looked for, either way. */
export const SEARCH_DAYS = 14;

/**
 * When a spraying could start instead, so that customers never meet its closed time.
 *
 *   a start is clear when [start, start + closed time) overlaps no opening
 *
 * Takes   the planned closed time, the shop's openings and zone, and the earliest start that is still to come
 * Gives   nothing further away than 14 days, and nothing before the earliest start
 * Units   elapsed time; every start is exact, so that one minute more would overlap
 */
export function clearStarts(openings: Openings, zone: Zone, planned: Span, earliest: Instant): ClearStarts {
  const day = dayNumber(dayOf(zone, planned.from));
  const [firstDay, lastDay] = [Math.max(day - LOOK_DAYS, FIRST_DAY), day + LOOK_DAYS];
  const joined = openingsBetween(openings, firstDay, lastDay);
  const edge = (number: number): Instant => atClock(zone, dayFromNumber(number), 0);
  const gaps = gapsBetween(joined, { from: edge(firstDay), to: edge(lastDay + 1) });
  const length = planned.to - planned.from;
  const first = latest(earliest, addMinutes(planned.from, -SEARCH_DAYS * MINUTES_IN_DAY));
  const last = addMinutes(planned.from, SEARCH_DAYS * MINUTES_IN_DAY);
  const opening = joined.find(({ from }) => from > planned.from)?.from ?? null;
  return {
    before: latestStart(gaps, length, first, planned.from),
    after: earliestStart(gaps, length, planned.from, last),
    inTime: opening === null ? null : { opening, start: startInTime(gaps, length, first, opening) },
  };
}

/** Days looked at: the search, and enough beyond it that the gap in which a start at its edge lies is whole. */
const LOOK_DAYS = SEARCH_DAYS + 16;
/** The first day number whose moments exist in every zone. */
const FIRST_DAY = 2;

const latest = (a: Instant, b: Instant): Instant => (a > b ? a : b);

/** The times between one opening and the next, in order: in holidays, too, from the first day looked at to the last. */
function gapsBetween(openings: Span[], looked: Span): Span[] {
  const gaps: Span[] = [];
  let { from } = looked;
  for (const opening of openings) {
    if (from < opening.from) gaps.push({ from, to: opening.from });
    from = opening.to;
  }
  if (from < looked.to) gaps.push({ from, to: looked.to });
  return gaps;
}

function latestStart(gaps: Span[], length: number, first: Instant, before: Instant): Instant | null {
  for (const gap of gaps.toReversed()) {
    const start = lastStartIn(gap, length);
    if (start >= gap.from && start < before) return start >= first ? start : null;
  }
  return null;
}

function earliestStart(gaps: Span[], length: number, after: Instant, last: Instant): Instant | null {
  for (const gap of gaps) {
    const start = latest(gap.from, after);
    if (start > after && start <= lastStartIn(gap, length)) return start <= last ? start : null;
  }
  return null;
}

function startInTime(gaps: Span[], length: number, first: Instant, opening: Instant): Instant | null {
  const gap = gaps.find(({ to }) => to === opening);
  if (!gap) return null;
  const start = lastStartIn(gap, length);
  return start >= gap.from && start >= first ? start : null;
}

/** The last start in a gap whose closed time ends with the gap, even if that lies before the gap begins. */
const lastStartIn = (gap: Span, length: number): Instant => instantOf(gap.to - length);
