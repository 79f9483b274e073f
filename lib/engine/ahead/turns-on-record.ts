import { addDays, type Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { countingApplications, sprayedIn } from '../keepout/counting';
import { recordsBegun } from '../keepout/record-index';
import type { Application, Bench, Program, Shop } from '../shop';
import type { Plan, Spraying } from './plan';
import { type AnyTurn, anyTurnsBetween, ownDay } from './program-turns';
import { sprayingsOfTurns } from './sprayings';

/** A planned spraying, and those of its benches of which nobody has said what became of them. */
export type OpenSpraying = Spraying & { open: readonly Bench[] };

const HOUR = 3_600_000;
/** A record that names no turn may begin so long before the planned start, or after it, and still be of that turn. */
const MOST_EARLY = HOUR;
const MOST_LATE = 24 * HOUR;
/** Turns so many days to either side are looked at, because one of them may be nearer to a record. */
const DAYS_BESIDE = 2;

/**
 * The planned sprayings from one day to another with benches that are still open: neither recorded nor left out. Every
 * page, alert and calendar asks this one function whether a planned spraying is done.
 *
 *   a turn that is done    covers the benches on its record; all of them when it names none, or when a reason says why
 *                          the others were left out
 *   a turn that is skipped is open on no bench
 *   a record without a turn covers the one turn that is nearest: of its recipe, with one of its benches, planned to begin
 *                          at most an hour after the record began, and at most a day before. On each bench a turn takes
 *                          one record, the nearest; any other covers nothing
 *   an extra mix           covers no turn
 *   what was begun         covers the benches that it names, like a record
 *
 * Takes   the first and the last day, both included
 * Gives   in the order of their starts. What is in doubt stays open, and so keeps people out
 */
export function openSprayings(shop: Shop, from: Day, to: Day): readonly OpenSpraying[] {
  const spans = known.get(shop) ?? new Map<string, readonly OpenSpraying[]>();
  known.set(shop, spans);
  const span = `${from} ${to}`;
  const found = spans.get(span) ?? openBetween(shop, from, to);
  if (spans.size >= MOST_KEPT) spans.clear();
  spans.set(span, found);
  return found;
}

/** Boards, pages and alerts ask about the same few days of the same shop, which nobody changes, again and again. */
const known = new WeakMap<Shop, Map<string, readonly OpenSpraying[]>>();
const MOST_KEPT = 16;

/**
 * The same for some programs of the shop alone. Takes all programs that share a recipe, since their turns compete for its
 * records.
 */
export function openBetween(shop: Shop, from: Day, to: Day, programs = shop.programs): OpenSpraying[] {
  const turns = turnsWithRecords(shop, programs, from, to);
  const nearest = nearestRecords(shop, turns);
  return turns
    .filter(({ date }) => date >= from && date <= to)
    .flatMap((turn) => {
      const open = openBenches(turn, [...(nearest.get(turn) ?? []), ...underWayOf(shop, turn)]);
      const { became: _, record: __, ...spraying } = turn;
      return open.length > 0 ? [{ ...spraying, open }] : [];
    })
    .sort((a, b) => a.startsAt - b.startsAt);
}

/** The benches on which one turn of a program is still open. Takes the day on which it is now. */
export const openBenchesOf = (shop: Shop, program: Program, date: Day, occurrence: number): readonly Bench[] =>
  openSprayings(shop, date, date).find((one) => one.program === program && one.occurrence === occurrence)?.open ?? [];

/** The sprayings of a plan that are still open on some bench. Only those of today can be on record already. */
export function stillToSpray({ shop, sprayings }: Pick<Plan, 'shop' | 'sprayings'>, today: Day): Spraying[] {
  const open = new Set(openSprayings(shop, today, today).map(turnKey));
  return sprayings.filter((one) => one.date !== today || open.has(turnKey(one)));
}

const turnKey = ({ program, occurrence }: Spraying): string => `${occurrence} ${program.id}`;

type TurnWithRecord = Spraying & { became: AnyTurn['became']; record: Application | null };

function turnsWithRecords(shop: Shop, programs: readonly Program[], from: Day, to: Day): TurnWithRecord[] {
  const records = new Map(
    countingApplications({ applications: shop.applications }).map((record) => [record.id, record]),
  );
  return programs.flatMap((program) => {
    const turns = anyTurnsBetween(program, addDays(from, -DAYS_BESIDE), addDays(to, DAYS_BESIDE));
    return sprayingsOfTurns(shop, program, turns).map((spraying, at) => {
      const became = turns[at]?.became ?? null;
      return { ...spraying, became, record: records.get(became?.application ?? '') ?? null };
    });
  });
}

/** The records that each turn may take, out of those that name no turn. */
function nearestRecords(shop: Shop, turns: readonly TurnWithRecord[]): Map<TurnWithRecord, Application[]> {
  const found = new Map<TurnWithRecord, Application[]>();
  const [from, to] = reachOf(turns);
  if (from > to) return found;
  const named = new Set([
    ...shop.programs.flatMap(({ changes }) => changes.map(({ application }) => application)),
    ...(shop.underWay ?? []).flatMap(({ id, planned }) => (planned ? [id] : [])),
  ]);
  const ofRecipe = turnsByRecipe(turns);
  for (const record of recordsBegun(sprayedIn(shop), from, to)) {
    if (record.isExtra || named.has(record.id)) continue;
    const near = (ofRecipe.get(record.recipe.id) ?? []).filter((turn) => isNear(turn, record));
    const [nearest] = near.sort((a, b) => distance(a, record) - distance(b, record) || a.startsAt - b.startsAt);
    if (nearest) found.set(nearest, [...(found.get(nearest) ?? []), record]);
  }
  return found;
}

/** From when on and before when a record may have begun that is near to one of the turns. */
function reachOf(turns: readonly TurnWithRecord[]): [from: Instant, before: Instant] {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { startsAt } of turns) [first, last] = [Math.min(first, startsAt), Math.max(last, startsAt)];
  return [(first - MOST_EARLY) as Instant, (last + MOST_LATE + 1) as Instant];
}

function turnsByRecipe(turns: readonly TurnWithRecord[]): Map<string, TurnWithRecord[]> {
  const found = new Map<string, TurnWithRecord[]>();
  for (const turn of turns) {
    const same = found.get(turn.recipe.id);
    if (same) same.push(turn);
    else found.set(turn.recipe.id, [turn]);
  }
  return found;
}

const isNear = ({ startsAt, program }: TurnWithRecord, { startedAt, benches }: Application): boolean =>
  startedAt >= startsAt - MOST_EARLY &&
  startedAt <= startsAt + MOST_LATE &&
  program.benches.some(({ id }) => benches.some((bench) => bench.id === id));

const distance = ({ startsAt }: Spraying, { startedAt }: Application): number => Math.abs(startsAt - startedAt);

/** What was begun of a turn and is not on record yet. */
const underWayOf = ({ underWay = [] }: Shop, { program, date, occurrence }: Spraying): Application[] =>
  underWay.filter(({ planned }) => planned?.program === program.id && planned.on === ownDay(program, date, occurrence));

function openBenches({ program, became, record }: TurnWithRecord, nearest: readonly Application[]): Bench[] {
  if (became?.kind === 'skipped') return [];
  const isSettled = became?.kind === 'done' && (became.application === null || became.reason !== null);
  if (isSettled) return [];
  const covered = new Set(
    [...(record ? [record] : []), ...nearest].flatMap(({ benches }) => benches.map(({ id }) => id)),
  );
  return program.benches.filter(({ id }) => !covered.has(id));
}
