import type { CalendarEvent } from '@/shared/ical/calendar-file';
import { addDays } from '@/shared/time/day';
import { type Instant, instantOf, isInstant } from '@/shared/time/instant';
import { showUntil } from '@/shared/time/show-day';
import { atClock, dayOf } from '@/shared/time/zone';
import type { Spraying } from '../ahead/plan';
import type { OpenSpraying } from '../ahead/turns-on-record';
import { counts } from '../keepout/counting';
import { reopensAfter } from '../keepout/reopening';
import { benchNames } from '../rules/in-words';
import type { Application, Bench, Shop } from '../shop';
import { type CalendarFacts, isDone, marksOf, nameOfSpraying, turnName, uidOf } from './calendar-facts';

/** A time in which people keep out of benches: as recorded, or as planned. Null: nobody knows until when. */
export type Closed = { benches: readonly Bench[]; startsAt: Instant; reopensAt: Instant | null };

/**
 * The time after a planned spraying in which people keep out, from its start.
 *
 * Takes   the same spraying with its open benches when it is due: then nobody knows, and it lasts into the days ahead;
 *         and every closed time
 */
export function plannedKeepOut(
  shop: Shop,
  facts: CalendarFacts,
  spraying: Spraying,
  due: OpenSpraying | null,
  all: readonly Closed[],
): CalendarEvent {
  const { program, recipe, startsAt, endsAt } = spraying;
  const isDue = due !== null;
  const benches = due?.open ?? program.benches;
  const reopensAt = isDue ? null : spraying.reopensAt;
  // Long before it is sprayed, a bar through every later day would hide the others; its words say that nobody knows.
  const barEnd = isDue ? daysAhead(shop, facts) : atClock(shop.zone, addDays(dayOf(shop.zone, endsAt), 1), 0);
  return {
    // Of a turn that was done on some of its benches, the record has the name of the turn.
    uid: uidOf('keep-out', `${nameOfSpraying(spraying)}${isDone(spraying) ? '/rest' : ''}`, facts),
    ...told(shop, { benches, startsAt, reopensAt }, barEnd, all),
    description: `${recipe.name}, ${isDue ? 'due and not recorded' : 'as planned'}. ${zoneOf(shop)} ${BOARD}`,
    cancelled: false,
    ...marksOf(shop, facts, isDue ? spraying : null),
  };
}

/** The same after a spraying on record. One that was planned keeps the name that it had as a plan. */
export function recordedKeepOut(
  shop: Shop,
  facts: CalendarFacts,
  record: Application,
  all: readonly Closed[],
): CalendarEvent {
  const { id, benches, recipe } = record;
  const closed = { benches, startsAt: startOf(shop, facts, record), reopensAt: reopensAfter(record) };
  const stands = counts(record);
  const words = told(shop, closed, daysAhead(shop, facts), all);
  return {
    uid: uidOf('keep-out', turnNameOf(shop, id) ?? `record/${encodeURIComponent(id)}`, facts),
    ...(stands ? words : { ...words, summary: `Entered in error: ${recipe.name} on ${benchNames(benches)}` }),
    description: `${recipe.name}, ${stands ? 'as recorded' : 'entered in error and confirmed as such'}. ${zoneOf(shop)} ${BOARD}`,
    cancelled: !stands,
    ...marksOf(shop, facts, null),
  };
}

/** Nobody knows of any bench: said once, through the day. */
export function doubtEvent(shop: Shop, facts: CalendarFacts): CalendarEvent {
  const { zone } = shop;
  return {
    uid: uidOf('keep-out', 'every-bench', facts),
    startsAt: atClock(zone, facts.today, 0),
    endsAt: daysAhead(shop, facts),
    summary: 'Not known: KEEP OUT of every bench',
    description: `The clock or the records of this shop are in doubt. ${BOARD}`,
    cancelled: false,
    ...marksOf(shop, facts, null),
  };
}

const BOARD = 'The keep-out board decides, and the label governs.';
const zoneOf = ({ zone }: Shop): string => `Times in words are those of ${zone}.`;

/** What nobody knows the end of is shown through the week ahead, anew every day. */
const daysAhead = ({ zone }: Shop, { today }: CalendarFacts): Instant => atClock(zone, addDays(today, WEEK), 0);
const WEEK = 7;

/** A start that cannot be read counts from the beginning of the day. */
const startOf = ({ zone }: Shop, { today }: CalendarFacts, { startedAt }: Application): Instant =>
  isInstant(startedAt) ? startedAt : atClock(zone, today, 0);

function turnNameOf({ programs }: Shop, application: string): string | null {
  for (const { id, changes } of programs) {
    const done = changes.find((change) => change.kind === 'done' && change.application === application);
    if (done) return turnName(id, done.on);
  }
  return null;
}

function told({ zone }: Shop, closed: Closed, barEnd: Instant, all: readonly Closed[]) {
  const { benches, startsAt, reopensAt } = closed;
  if (reopensAt === null) {
    const endsAt = barEnd > startsAt ? barEnd : instantOf(startsAt + MINUTE);
    return { startsAt, endsAt, summary: `Not known: KEEP OUT of ${benchNames(benches)}` };
  }
  const longer = benches.filter((bench) => isLonger(bench, reopensAt, all));
  const until = showUntil(reopensAt, zone, dayOf(zone, startsAt));
  const also = longer.length === 0 ? '' : ` (${benchNames(longer)} longer)`;
  return { startsAt, endsAt: reopensAt, summary: `KEEP OUT until ${until}: ${benchNames(benches)}${also}` };
}

const MINUTE = 60_000;

/** Whether something else keeps a bench closed past the end of a closed time that has begun before that end. */
const isLonger = ({ id }: Bench, until: Instant, all: readonly Closed[]): boolean =>
  all.some(
    ({ benches, startsAt, reopensAt }) =>
      startsAt <= until && (reopensAt === null || reopensAt > until) && benches.some((bench) => bench.id === id),
  );
