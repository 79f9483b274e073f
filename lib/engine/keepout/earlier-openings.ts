import { addMinutes, type Instant, instantOf, LAST_INSTANT } from '@/shared/time/instant';
import { unrecordedSprayings } from '../ahead/overdue';
import { ownDay } from '../ahead/program-turns';
import type { OpenSpraying } from '../ahead/turns-on-record';
import type { Application, Bench, Shop } from '../shop';
import { counts, sprayedIn } from './counting';
import { keepOut } from './keep-out';
import { notEndedBy } from './record-index';
import { reiOf, reopensAfter } from './reopening';

/** A bench that a change of the shop opens earlier, or would open earlier if nothing else kept it closed. */
export type EarlierOpening = {
  bench: Bench;
  /** Until when it would have stayed closed; null when nobody knew. */
  wasUntil: Instant | null;
  /** Until when it stays closed now by what was changed: the moment of the change where that keeps nobody out any more. */
  opensAt: Instant;
  /** Whether something else keeps people out longer than that. */
  isKeptClosed: boolean;
};

/** What a change may do without being asked about. */
export type Allowed = {
  /** A record entered now may end an interval that is over already: whoever writes records judges late ones apart. */
  atOnce: boolean;
};

/**
 * The benches that a change opens earlier. Each record and each due spraying that keeps people out is looked at by itself,
 * so that one which goes unnoticed behind another is not gone once the other ends. Not asked about is what every spraying
 * comes to:
 *
 *   a running spraying gets its end, and the bench reopens by it
 *   a planned spraying that was due gets its record, and the bench reopens by it
 *
 * Takes   the shop before and after the change, and the moment of it
 * Gives   in the order of the benches before; a bench that is gone counts as open
 */
export function earlierOpenings(before: Shop, after: Shop, now: Instant, { atOnce }: Allowed): EarlierOpening[] {
  const change = { before, after, now, atOnce };
  const open = unrecordedSprayings(after, now);
  const due = { were: unrecordedSprayings(before, now), are: turnsOpen(open) };
  const states = new Map(keepOut(after, now, open).map((state) => [state.bench.id, state]));
  const isNow = (record: Application, bench: Bench) => {
    // A spraying that was begun has the id of its record, which may name a part of its benches.
    const same = sprayedIn(after).filter(({ id }) => id === record.id);
    return same.find((one) => counts(one) && names(one, bench)) ?? same[0];
  };
  // What has ended keeps nobody out, so nothing can shorten it.
  const held = notEndedBy(sprayedIn(before), now).map(({ application }) => application);
  return before.benches.flatMap((bench) => {
    const shortened = [
      ...held.flatMap((record) => recordShortened(change, record, isNow(record, bench), bench)),
      ...due.were.flatMap((turn) => turnShortened(change, turn, due.are, bench)),
    ];
    if (shortened.length === 0) return [];
    const was = Math.max(...shortened.map((one) => one.was));
    const is = Math.max(...shortened.map((one) => one.is));
    const { state = 'open', until = null } = states.get(bench.id) ?? {};
    const isKeptClosed = state === 'unknown' || (until !== null && until > is);
    return [{ bench, wasUntil: was === LAST_INSTANT ? null : instantOf(was), opensAt: instantOf(is), isKeptClosed }];
  });
}

type Change = { before: Shop; after: Shop; now: Instant; atOnce: boolean };

/** Until when something kept people out and keeps them out now; the last moment there is where nobody knows. */
type Shortened = { was: Instant; is: Instant };

function recordShortened(
  { now, atOnce }: Change,
  was: Application,
  is: Application | undefined,
  bench: Bench,
): Shortened[] {
  const before = holdOf(was, bench, now);
  const after = is ? holdOf(is, bench, now) : now;
  if (after >= before) return [];
  const isUsual = is !== undefined && isEnded({ was, is, now }, bench) && (atOnce || after > now);
  return isUsual ? [] : [{ was: before, is: after }];
}

function holdOf(record: Application, bench: Bench, now: Instant): Instant {
  if (!counts(record) || !names(record, bench)) return now;
  const until = reopensAfter(record) ?? LAST_INSTANT;
  return until > now ? until : now;
}

type Ended = { was: Application; is: Application; now: Instant };

/** Whether nothing but the end of a record was missing, and now it has one, with an interval that is no shorter. */
function isEnded({ was, is, now }: Ended, bench: Bench): boolean {
  const [before, after] = [reiOf(was), reiOf(is)];
  if (was.endedAt !== null || is.endedAt === null || !counts(is) || before === null || after === null) return false;
  const isNoShorter = (reopensAfter(is) ?? LAST_INSTANT) >= addMinutes(is.endedAt, before);
  return isNoShorter && (is.startedAt <= was.startedAt || is.startedAt <= now) && names(is, bench);
}

function turnShortened(change: Change, turn: OpenSpraying, open: ReadonlySet<string>, bench: Bench): Shortened[] {
  const isHere = turn.open.some(({ id }) => id === bench.id);
  if (!isHere || open.has(turnKey(turn, bench.id))) return [];
  const { now, atOnce } = change;
  const ends = newRecords(change, turn, bench).map((record) => holdOf(record, bench, now));
  const is = instantOf(Math.max(now, ...ends));
  const isUsual = ends.length > 0 && (atOnce || is > now);
  return isUsual ? [] : [{ was: LAST_INSTANT, is }];
}

const turnsOpen = (turns: readonly OpenSpraying[]): ReadonlySet<string> =>
  new Set(turns.flatMap((turn) => turn.open.map(({ id }) => turnKey(turn, id))));

/** A planned spraying on one bench, by the day on which its program has it. */
const turnKey = ({ program, date, occurrence }: OpenSpraying, bench: string): string =>
  JSON.stringify([program.id, ownDay(program, date, occurrence), bench]);

/** The records that a bench had none of before the change, and that may be of a planned spraying. */
function newRecords({ before, after }: Change, { program, recipe }: OpenSpraying, bench: Bench): Application[] {
  const had = new Set(
    sprayedIn(before)
      .filter((record) => names(record, bench))
      .map(({ id }) => id),
  );
  const done = new Set(
    after.programs
      .filter(({ id }) => id === program.id)
      .flatMap(({ changes }) => changes.map((one) => one.application)),
  );
  const isOf = (record: Application) => done.has(record.id) || (!record.isExtra && record.recipe.id === recipe.id);
  return sprayedIn(after).filter(
    (record) => !had.has(record.id) && counts(record) && names(record, bench) && isOf(record),
  );
}

/** A record that names no bench may have been on any. */
const names = ({ benches }: Application, { id }: Bench): boolean =>
  benches.length === 0 || benches.some((bench) => bench.id === id);
