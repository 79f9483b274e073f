import { type Instant, LAST_INSTANT } from '@/shared/time/instant';
import { unrecordedSprayings } from '../ahead/overdue';
import type { OpenSpraying } from '../ahead/turns-on-record';
import type { Application, Bench, Shop } from '../shop';
import { type BenchState, keepOut } from './keep-out';
import { reiOf, reopensAfter } from './reopening';

/** A bench that a change of the shop opens earlier. */
export type EarlierOpening = {
  bench: Bench;
  /** Until when it would have stayed closed; null when nobody knew. */
  wasUntil: Instant | null;
  /** When it opens now: the moment of the change where it opens at once. */
  opensAt: Instant;
};

/** What the change may do without being asked about. */
export type Allowed = {
  /** A record entered now may end an interval that is over already: whoever writes records judges late ones apart. */
  atOnce: boolean;
};

/**
 * The benches that a change opens earlier than they would have opened without it: closed ones, and those of which nobody
 * knew. What nothing but time does is not asked about, nor what every spraying comes to:
 *
 *   a running spraying gets its end, and the bench reopens by it
 *   a planned spraying that was due gets its record, and the bench reopens by it
 *
 * Takes   the shop before and after the change, and the moment of it
 * Gives   in the order of the benches before; a bench that is gone counts as open
 */
export function earlierOpenings(before: Shop, after: Shop, now: Instant, { atOnce }: Allowed): EarlierOpening[] {
  const [were, are] = [statesAt(before, now), new Map(statesAt(after, now).map((state) => [state.bench.id, state]))];
  return were.flatMap((was) => {
    const is = are.get(was.bench.id);
    const opensAt = is ? openingOf(is, now) : now;
    if (opensAt >= openingOf(was, now)) return [];
    const isUsual = is !== undefined && (atOnce || opensAt > now) && isUsualEnd({ before, after }, was, opensAt);
    return isUsual ? [] : [{ bench: was.bench, wasUntil: was.state === 'closed' ? was.until : null, opensAt }];
  });
}

const statesAt = (shop: Shop, now: Instant): BenchState[] => keepOut(shop, now, unrecordedSprayings(shop, now));

/** When a bench opens if nothing more happens; the last moment there is where nobody knows. */
function openingOf({ state, until }: BenchState, now: Instant): Instant {
  if (state === 'open') return now;
  return state === 'closed' && until !== null ? until : LAST_INSTANT;
}

type Change = { before: Shop; after: Shop };

/** Whether nobody knew because a spraying was running or due, and all that happened is that it got its end or its record. */
function isUsualEnd({ before, after }: Change, was: BenchState, opensAt: Instant): boolean {
  if (was.state !== 'unknown') return false;
  const { bench, because, unrecorded } = was;
  const records = new Map(after.applications.map((record) => [record.id, record]));
  return (
    because.every((record) => isEnded(record, records.get(record.id), bench)) &&
    unrecorded.every((turn) => isRecorded({ before, after }, turn, bench)) &&
    knownUntil(before, bench) <= opensAt
  );
}

/** Whether nothing but the end of a record was missing, and now it has one, with an interval that is no shorter. */
function isEnded(was: Application, is: Application | undefined, bench: Bench): boolean {
  const [before, after] = [reiOf(was), is ? reiOf(is) : null];
  if (!is || was.endedAt !== null || is.endedAt === null || is.withdrawn) return false;
  return before !== null && after !== null && after >= before && is.startedAt <= was.startedAt && names(is, bench);
}

/** Whether a planned spraying has a record on a bench that had none of it before. */
function isRecorded({ before, after }: Change, { program, recipe }: OpenSpraying, bench: Bench): boolean {
  const had = new Set(before.applications.filter((record) => names(record, bench)).map(({ id }) => id));
  const done = new Set(
    after.programs
      .filter(({ id }) => id === program.id)
      .flatMap(({ changes }) => changes.map((one) => one.application)),
  );
  return after.applications.some(
    (record) =>
      !had.has(record.id) &&
      names(record, bench) &&
      !record.withdrawn &&
      (done.has(record.id) || (!record.isExtra && record.recipe.id === recipe.id)),
  );
}

const names = ({ benches }: Application, { id }: Bench): boolean => benches.some((bench) => bench.id === id);

/** The latest end that is known of a bench, whatever else nobody knows of it. */
function knownUntil({ applications }: Shop, bench: Bench): number {
  const ends = applications.filter((record) => names(record, bench)).map((record) => reopensAfter(record) ?? 0);
  return ends.reduce<number>((latest, end) => Math.max(latest, end), 0);
}
