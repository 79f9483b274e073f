import { addDays, type Day, dayNumber } from '@/shared/time/day';
import { addMinutes, type Instant, isInstant } from '@/shared/time/instant';
import { atClock, clockOf } from '@/shared/time/zone';
import type { Spraying } from '../ahead/plan';
import type { Application, Bench, Shop } from '../shop';
import { sprayedIn } from './counting';
import { openingsOf } from './opening-hours';
import { notEndedBy } from './record-index';
import { reopensAfter } from './reopening';

/** From one minute of a local day to another, counted from its midnight as time passes. */
export type MinuteSpan = [from: number, to: number];

/** One bench through one day. */
export type BenchStrip = {
  bench: Bench;
  /** Opening hours, where customers can reach the bench. */
  open: MinuteSpan[];
  spraying: MinuteSpan[];
  /** Kept out of after spraying, until a known moment. */
  closed: MinuteSpan[];
  /** Kept out of with no known end: to the end of the day, and on every later day. */
  unknown: MinuteSpan[];
};

/** All benches through one day of the shop's calendar, for strips on one shared clock. */
export type DayStrips = {
  day: Day;
  /** How long the day is: 1,440, or less or more when the clocks change in it. */
  minutes: number;
  /** What is special about it, where the shop has hours of their own for it. */
  special: { name: string | null; hours: readonly [from: number, to: number][] } | null;
  /** Where each full hour of the clock stands; a skipped one is missing, a repeated one comes twice. */
  hours: { clock: number; at: number }[];
  benches: BenchStrip[];
};

/**
 * What happens at each bench on one day: opening hours, spraying and keep-out, as recorded and as planned.
 *
 * Takes   the shop, the planned sprayings (those of days before too, since an interval may reach into the day), the day
 * Gives   spans clipped to the day, in order of start; the state of a bench right now is keepOut's to say, not this one's
 * Units   minutes passed since the day's midnight, not rounded
 */
export function dayStrips(shop: Shop, sprayings: readonly Spraying[], day: Day): DayStrips {
  const span = { from: atClock(shop.zone, day, 0), to: atClock(shop.zone, addDays(day, 1), 0) };
  const closures = closuresByBench(sprayedIn(shop), sprayings, span);
  const open = openingsOf(shop)
    .on(dayNumber(day))
    .flatMap(({ from, to }) => clip(span, from, to));
  return {
    day,
    minutes: minutesFrom(span.from, span.to),
    special: shop.specialDays.get(day) ?? null,
    hours: hoursOf(shop, span),
    benches: shop.benches.map((bench) => stripOf(bench, open, closures.get(bench.id) ?? [], span)),
  };
}

/** A bench being sprayed, and the time after it. Null: nobody knows. */
type Closure = { startsAt: Instant; endsAt: Instant | null; reopensAt: Instant | null };
type DaySpan = { from: Instant; to: Instant };

function closuresByBench(applications: Application[], sprayings: readonly Spraying[], day: DaySpan) {
  const found = new Map<string, Closure[]>();
  const put = (benches: Bench[], closure: Closure) => {
    if (closure.startsAt >= day.to || (closure.reopensAt !== null && closure.reopensAt <= day.from)) return;
    for (const { id } of benches) {
      const closures = found.get(id);
      if (closures) closures.push(closure);
      else found.set(id, [closure]);
    }
  };
  for (const { application } of notEndedBy(applications, day.from)) put(application.benches, recorded(application));
  for (const { program, startsAt, endsAt, reopensAt } of sprayings)
    put(program.benches, { startsAt, endsAt, reopensAt });
  for (const closures of found.values()) closures.sort((a, b) => a.startsAt - b.startsAt);
  return found;
}

/** An end that cannot be, before the start or no moment at all, is as good as none. */
function recorded(application: Application): Closure {
  const { startedAt, endedAt } = application;
  const ended = endedAt !== null && isInstant(endedAt) && endedAt >= startedAt ? endedAt : null;
  return { startsAt: startedAt, endsAt: ended, reopensAt: reopensAfter({ ...application, endedAt: ended }) };
}

const stripOf = (bench: Bench, open: MinuteSpan[], closures: Closure[], day: DaySpan): BenchStrip => ({
  bench,
  open: bench.customers ? open : [],
  spraying: closures.flatMap(({ startsAt, endsAt }) => (endsAt === null ? [] : clip(day, startsAt, endsAt))),
  closed: closures.flatMap(({ endsAt, reopensAt }) =>
    endsAt === null || reopensAt === null ? [] : clip(day, endsAt, reopensAt),
  ),
  unknown: closures.flatMap(({ startsAt, endsAt, reopensAt }) =>
    reopensAt === null ? clip(day, endsAt ?? startsAt, day.to) : [],
  ),
});

/** The part of a span that lies in a day. A start that cannot be read counts from midnight. */
function clip(day: DaySpan, from: Instant, to: Instant): MinuteSpan[] {
  const start = from > day.from ? from : day.from;
  const end = to < day.to ? to : day.to;
  return start < end ? [[minutesFrom(day.from, start), minutesFrom(day.from, end)]] : [];
}

const MINUTE = 60_000;
const minutesFrom = (from: Instant, to: Instant): number => (to - from) / MINUTE;

/** Read off the clock quarter by quarter, because no zone's clock changes by less. */
function hoursOf({ zone }: Shop, span: DaySpan): { clock: number; at: number }[] {
  const hours: { clock: number; at: number }[] = [];
  for (let at = 0; at < minutesFrom(span.from, span.to); at += 15) {
    const { minuteOfDay } = clockOf(zone, addMinutes(span.from, at));
    if (minuteOfDay % 60 === 0) hours.push({ clock: minuteOfDay, at });
  }
  return hours;
}
