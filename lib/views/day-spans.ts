import { type Day, weekdayOf } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { clockOf, type Zone } from '@/shared/time/zone';
import type { Shop } from '../engine/shop';
import type { Closing } from './closings';

/** From minute to minute of one day on the shop's clock. */
export type Span = [from: number, to: number];

/** One bench through one day: what a strip draws. */
export type DaySpans = { open: Span[]; spraying: Span[]; closed: Span[]; unknown: Span[] };

const DAY_ENDS = 24 * 60;

/**
 * How one bench stands through one day.
 *
 * Takes   the shop, the day, the closings of that bench, and whether customers can reach it
 * Gives   minutes of the shop's clock; a closing without a known end fills the rest of the day as unknown
 */
export function daySpans(shop: Shop, day: Day, closings: Closing[], customers: boolean): DaySpans {
  const clip = (from: Instant, to: Instant | null): Span[] => {
    const span: Span = [minuteOn(shop.zone, day, from), to === null ? DAY_ENDS : minuteOn(shop.zone, day, to)];
    return span[0] < span[1] ? [span] : [];
  };
  return {
    open: customers ? shop.openingHours[weekdayOf(day)] : [],
    spraying: closings.flatMap(({ startsAt, endsAt }) => (endsAt === null ? [] : clip(startsAt, endsAt))),
    closed: closings.flatMap(({ endsAt, reopensAt }) =>
      endsAt === null || reopensAt === null ? [] : clip(endsAt, reopensAt),
    ),
    unknown: closings.flatMap(({ startsAt, endsAt, reopensAt }) =>
      endsAt === null ? clip(startsAt, null) : reopensAt === null ? clip(endsAt, null) : [],
    ),
  };
}

/** The minute of a day at which an instant falls; 0 when it was before that day, 24:00 when it comes after. */
function minuteOn(zone: Zone, day: Day, instant: Instant): number {
  const at = clockOf(zone, instant);
  if (at.day < day) return 0;
  return at.day > day ? DAY_ENDS : at.minuteOfDay;
}
