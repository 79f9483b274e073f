import 'server-only';
import { plainInstant } from '@/lib/engine/exchange/plain-text';
import type { ShopFile } from '@/shared/shop-file/contract';
import { readDay } from '@/shared/time/day';
import { type Instant, isInstant, readInstant } from '@/shared/time/instant';
import { byOwner } from './by-owner';
import type { Rows } from './database';
import { parsed } from './saving';
import { small, toStored, toStoredOrNull } from './whole';
import type { Stamp } from './writer';

type FileUnderWay = NonNullable<ShopFile['underWay']>[number];
type Passed = FileUnderWay['passed'];

/** What is told of a spraying that was begun and is not on record yet. */
export type UnderWayLine = {
  spraying: string;
  kind: 'going' | 'never';
  recipe: string;
  /** Ids as they were sent; a bench that is gone may be among them. None: it may be any. */
  benches: readonly string[];
  planned: { program: string; on: string } | null;
  startedAt: Instant;
  endedAt: Instant | null;
  closedUntil: Instant | null;
  reiMinutes: number | null;
  by: string | null;
  passed: Passed;
  reason: string | null;
};

type Row = Awaited<ReturnType<Rows['underWay']['findMany']>>[number];

type Beside = Pick<ShopFile, 'recipes' | 'benches' | 'applications'>;

/** The sprayings of a shop that were begun and are not on record yet. Takes the shop as far as it could be read, without them. */
export const underWayOf = async (rows: Rows, shopId: string, beside: Beside): Promise<FileUnderWay[]> =>
  underWayFrom(await rows.underWay.findMany({ where: { shopId }, orderBy: { number: 'asc' } }), beside);

/**
 * The same out of its rows, as a shop file tells them. Of each counts every bench that was named, the earliest start and
 * the latest end. A record takes its benches out of the spraying with its id; what the record does not name stays closed
 * until somebody says what became of it.
 *
 * Takes    what was told, in its order
 * Gives    a recipe that is gone as null, which keeps people out without an end; a bench that is gone is left out, and
 *          without any bench left it may have been on any
 */
export function underWayFrom(lines: readonly Row[], { recipes, benches, applications }: Beside): FileUnderWay[] {
  if (lines.length === 0) return [];
  const ofSpraying = byOwner(lines, ({ sprayingId }) => sprayingId);
  const records = new Map(applications.map((record) => [record.id, new Set(record.benches)]));
  const known = { recipes: idsOf(recipes), benches: idsOf(benches) };
  return [...new Set(lines.map(({ sprayingId }) => sprayingId))].flatMap((id) =>
    inForce(id, ofSpraying(id), records.get(id) ?? null, known),
  );
}

type Known = { recipes: ReadonlySet<string>; benches: ReadonlySet<string> };

const idsOf = (things: readonly { id: string }[]): ReadonlySet<string> => new Set(things.map(({ id }) => id));

function inForce(id: string, lines: Row[], recorded: ReadonlySet<string> | null, known: Known): FileUnderWay[] {
  const newest = lines.at(-1);
  if (!newest || newest.kind === 'never') return [];
  const all = new Set(lines.flatMap(({ benches }) => textsIn(benches)));
  const there = [...all].filter((bench) => known.benches.has(bench));
  const benches = there.filter((bench) => !recorded?.has(bench));
  if (recorded && benches.length === 0) return [];
  const isKnown = known.recipes.has(newest.recipeId);
  const starts = lines.map(({ startedAt }) => Number(startedAt)).filter(isInstant);
  const end = latest(lines.map(({ endedAt }) => endedAt));
  const startedAt = starts.length > 0 ? Math.min(...starts) : 0;
  const isSound = isKnown && starts.length === lines.length && end !== null && end >= startedAt;
  return [
    {
      ...{ id, recipe: isKnown ? newest.recipeId : null, benches },
      ...plannedIn(newest),
      startedAt: plainInstant(startedAt as Instant),
      endedAt: isSound ? plainInstant(end) : null,
      closedUntil: momentOrNull(latest(lines.map(({ closedUntil }) => closedUntil))),
      reiMinutes: longest(lines),
      by: newest.sprayedBy,
      passed: passedIn(newest),
    },
  ];
}

/** Null as soon as one was not known: then the label as it is today says it. */
const longest = (lines: readonly Row[]): number | null =>
  lines.some(({ reiMinutes }) => reiMinutes === null)
    ? null
    : Math.max(...lines.map(({ reiMinutes }) => reiMinutes ?? 0));

function latest(moments: readonly (bigint | null)[]): Instant | null {
  const read = moments.flatMap((moment) => (moment !== null && isInstant(Number(moment)) ? [Number(moment)] : []));
  return read.length === 0 ? null : (Math.max(...read) as Instant);
}

const momentOrNull = (moment: Instant | null): string | null => (moment === null ? null : plainInstant(moment));

const textsIn = (json: unknown): string[] =>
  Array.isArray(json) ? json.filter((one): one is string => typeof one === 'string') : [];

function plannedIn({ programId, plannedOn }: Row): { program: string | null; on: FileUnderWay['on'] } {
  const on = plannedOn === null ? null : readDay(plannedOn);
  return programId !== null && on?.ok ? { program: programId, on: on.value } : { program: null, on: null };
}

const passedIn = ({ passed }: Row): Passed =>
  (Array.isArray(passed) ? passed : []).flatMap((one: unknown) => {
    const { rule, reason } = typeof one === 'object' && one !== null ? (one as Record<string, unknown>) : {};
    return typeof rule === 'string' && typeof reason === 'string' ? [{ rule, reason }] : [];
  });

/** Writes down what is told of a spraying that is under way, unless it was told the same before. */
export async function tellUnderWay(rows: Rows, stamp: Stamp, line: UnderWayLine): Promise<void> {
  const { shopId, commandId, actor } = stamp;
  stamp.touched.addOutside();
  const before = await rows.underWay.findFirst({
    where: { shopId, sprayingId: line.spraying },
    orderBy: { number: 'desc' },
  });
  const told = columnsOf(line);
  if (before && saysTheSame(before, told)) return;
  const keys = { shopId, sprayingId: line.spraying, number: small((before?.number ?? 0) + 1) };
  await rows.underWay.create({ data: { ...keys, ...told, actor, commandId, recordedAt: toStored(stamp.recordedAt) } });
}

const columnsOf = (line: UnderWayLine) => ({
  ...{ kind: line.kind, recipeId: line.recipe, benches: [...line.benches] },
  ...{ programId: line.planned?.program ?? null, plannedOn: line.planned?.on ?? null },
  ...{ startedAt: toStored(line.startedAt), endedAt: toStoredOrNull(line.endedAt) },
  ...{ closedUntil: toStoredOrNull(line.closedUntil), reiMinutes: line.reiMinutes },
  ...{ sprayedBy: line.by, passed: line.passed, reason: line.reason },
});

const saysTheSame = (before: Row, told: ReturnType<typeof columnsOf>): boolean =>
  textOf({ ...before, passed: passedIn(before) }) === textOf(told);

const textOf = (line: Omit<ReturnType<typeof columnsOf>, 'kind' | 'benches'> & { kind: string; benches: unknown }) =>
  JSON.stringify([
    ...[line.kind, line.recipeId, textsIn(line.benches), line.programId, line.plannedOn, `${line.startedAt}`],
    ...[`${line.endedAt}`, `${line.closedUntil}`, line.reiMinutes, line.sprayedBy, line.passed, line.reason],
  ]);

/** Brings in what a file tells of sprayings under way. One that the shop knows already stays as it is told there. */
export async function saveUnderWay(rows: Rows, stamp: Stamp, told: readonly FileUnderWay[]): Promise<void> {
  if (told.length === 0) return;
  const { shopId } = stamp;
  const lines = await rows.underWay.findMany({ where: { shopId }, select: { sprayingId: true } });
  const records = await rows.application.findMany({ where: { shopId }, select: { id: true } });
  const known = new Set([...lines.map(({ sprayingId }) => sprayingId), ...records.map(({ id }) => id)]);
  for (const { id, program, on, startedAt, endedAt, closedUntil, recipe, ...one } of told) {
    if (known.has(id)) continue;
    await tellUnderWay(rows, stamp, {
      ...one,
      ...{ spraying: id, kind: 'going', reason: null, recipe: recipe ?? GONE },
      planned: program !== null && on !== null ? { program, on } : null,
      startedAt: parsed(readInstant(startedAt)),
      endedAt: endedAt === null ? null : parsed(readInstant(endedAt)),
      closedUntil: closedUntil === null ? null : parsed(readInstant(closedUntil)),
    });
  }
}

/** No recipe has this id. */
const GONE = ' ';
