import type { CalendarEvent } from '@/shared/ical/calendar-file';
import { addDays, type Day } from '@/shared/time/day';
import { type Instant, isInstant } from '@/shared/time/instant';
import { atClock } from '@/shared/time/zone';
import { unrecordedSprayings } from '../ahead/overdue';
import type { Spraying } from '../ahead/plan';
import { horizonEnd, sprayingsBetween } from '../ahead/sprayings';
import { countingApplications, sprayedIn } from '../keepout/counting';
import { reopensAfter } from '../keepout/reopening';
import type { Application, Shop } from '../shop';
import { type CalendarFacts, isDone } from './calendar-facts';
import { type Closed, doubtEvent, plannedKeepOut, recordedKeepOut } from './keep-out-events';
import { changedTurnEvents, sprayingEvent } from './spraying-events';

/** So many days back the calendar still tells what was planned, left out and recorded. */
const DAYS_BACK = 30;

/**
 * The sprayings of a shop and the times in which people keep out of its benches, as events of a calendar.
 *
 * Takes   the shop, how it stands, and how many weeks ahead to look
 * Gives   for every planned spraying one event for itself and one for the keep-out after it, under the same names wherever
 *         it is moved to; what was skipped, and a record entered in error, as cancelled for thirty days; for every record
 *         the keep-out after it, longer than thirty days when it still keeps people out. Past sprayings that nobody
 *         recorded keep people out here as they do on the board
 * Units   instants; every end is the interval's own, and nothing is shortened
 */
export function shopCalendar(shop: Shop, facts: CalendarFacts, weeks: number): CalendarEvent[] {
  const [from, to] = [addDays(facts.today, -DAYS_BACK), horizonEnd(facts.today, weeks)];
  const due = unrecordedSprayings(shop, facts.now);
  const planned = plannedAnd(due, sprayingsBetween(shop, from, to));
  const dueOf = (spraying: Spraying) => due.find((one) => isSame(one, spraying)) ?? null;
  const keepingOut = planned.filter((one) => one.startsAt > facts.now || dueOf(one) !== null);
  const all: Closed[] = [
    ...countingApplications(shop).map(closedBy),
    ...keepingOut.map((one) => {
      const open = dueOf(one)?.open;
      return open ? { ...one, benches: open, reopensAt: null } : { ...one, benches: one.program.benches };
    }),
  ];
  const records = sprayedIn(shop).filter((record) => isTold(record, atClock(shop.zone, from, 0), facts.now));
  return [
    ...(facts.inDoubt ? [doubtEvent(shop, facts)] : []),
    // A turn that was done on some of its benches has its event among those of the changes.
    ...planned.filter((one) => !isDone(one)).map((one) => sprayingEvent(shop, facts, one, dueOf(one) !== null)),
    ...changedTurns(shop, facts, from, to),
    ...keepingOut.map((one) => plannedKeepOut(shop, facts, one, dueOf(one), all)),
    ...records.map((record) => recordedKeepOut(shop, facts, record, all)),
  ];
}

const isSame = (one: Spraying, other: Spraying): boolean =>
  one.program.id === other.program.id && one.occurrence === other.occurrence;

/** What is due may have begun before the days that are told. */
const plannedAnd = (due: Spraying[], planned: Spraying[]): Spraying[] => [
  ...due.filter((one) => !planned.some((other) => isSame(one, other))),
  ...planned,
];

const closedBy = (record: Application): Closed => ({
  benches: record.benches,
  startsAt: record.startedAt,
  reopensAt: reopensAfter(record),
});

/** A record is told while it is of the last days, while it still keeps people out, and when its start cannot be read. */
function isTold(record: Application, from: Instant, now: Instant): boolean {
  const until = reopensAfter(record);
  return !isInstant(record.startedAt) || record.startedAt >= from || until === null || until > now;
}

const changedTurns = (shop: Shop, facts: CalendarFacts, from: Day, to: Day): CalendarEvent[] =>
  shop.programs.flatMap(({ id, changes }) =>
    changes.filter(({ on }) => on >= from && on <= to).flatMap((change) => changedTurnEvents(shop, facts, id, change)),
  );
