import { DateTime } from 'luxon';

/*
 * Who has to stay out, worked out from the rules alone: plain numbers, another library for dates, none of the program's own
 * code. The rules:
 *
 *   a spraying on record closes its benches from its start until its end and the longest interval, as time really passes;
 *   what the label said then counts where it was longer; no end, or an interval that nobody knows: closed
 *   a planned spraying closes its benches from the moment it was to begin until it is told what became of it; where its
 *   interval is known, for seven days of the shop's calendar at most
 *   a record is the planned spraying that names it; else the nearest of its recipe that shares a bench, begun from an hour
 *   before the planned start to a day after it; each record is one spraying; an extra mix is none
 *   an amendment that opens a bench earlier changes nothing until it is confirmed
 *   another time zone moves nothing that has begun
 */

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

export type ModelProgram = { id: string; recipe: string; benches: string[]; start: number; every: number };
/** `written` is its start as it stands in the record, by the clock of then. */
type ModelVersion = {
  benches: string[];
  start: number;
  written: number;
  end: number | null;
  withdrawn: boolean;
};
export type ModelRecord = {
  id: string;
  recipe: string;
  isExtra: boolean;
  /** Minutes by the label when it was entered; null: unknown then. */
  rei: number | null;
  /** From the last one that is settled to the newest. */
  versions: ModelVersion[];
  /** Whether nobody knew its end when it was amended: so it stays until that is confirmed. */
  wasUnknown?: boolean;
};
type Told = { skipped: true } | { record: string };

export type Model = {
  zone: string;
  programs: ModelProgram[];
  labels: Record<string, number | null>;
  records: ModelRecord[];
  /** By program and day: where a turn was put, as an instant, and what became of it. */
  places: Record<string, number>;
  told: Record<string, Told>;
};

const FIRST = Date.parse('2026-03-07T00:00:00Z');
export const DAYS = Array.from({ length: 12 }, (_, at) => new Date(FIRST + at * DAY).toISOString().slice(0, 10));
const keyOf = (program: string, on: string): string => `${program} ${on}`;

const known = new Map<string, number>();

/** The instant at which the clock on the wall shows a time. */
export function wallTime(zone: string, day: string, minute: number): number {
  const key = `${zone} ${day} ${minute}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const [year, month, date] = day.split('-').map(Number);
  const at = DateTime.fromObject(
    { year: year ?? 0, month: month ?? 0, day: date ?? 0, hour: Math.floor(minute / 60), minute: minute % 60 },
    { zone },
  ).toMillis();
  known.set(key, at);
  return at;
}

export type ModelTurn = { key: string; program: ModelProgram; at: number; told: Told | null };

export const turnsOf = (model: Model): ModelTurn[] =>
  model.programs.flatMap((program) =>
    DAYS.filter((_, number) => number % program.every === 0).map((day) => {
      const key = keyOf(program.id, day);
      const at = model.places[key] ?? wallTime(model.zone, day, program.start);
      return { key, program, at, told: toldOf(model, key) };
    }),
  );

/** What became of a turn. One whose record was entered in error is to be done again, as long as that record stays so. */
function toldOf(model: Model, key: string): Told | null {
  const told = model.told[key] ?? null;
  if (told === null || 'skipped' in told) return told;
  const record = model.records.find(({ id }) => id === told.record);
  return record && !countsAtAll(record) ? null : told;
}

const countsAtAll = ({ versions }: ModelRecord): boolean => versions.some(({ withdrawn }) => !withdrawn);
/** Every bench that any version names which is not settled. */
export const benchesOf = ({ versions }: ModelRecord): string[] => versions.flatMap(({ benches }) => benches);
const startOf = ({ versions }: ModelRecord): number => Math.min(...versions.map(({ start }) => start));

/** Which turn each record is that names none. */
function nearest(model: Model, turns: ModelTurn[]): Map<string, string[]> {
  const named = new Set(Object.values(model.told).flatMap((told) => ('record' in told ? [told.record] : [])));
  const found = new Map<string, string[]>();
  for (const record of model.records) {
    if (named.has(record.id) || record.isExtra || !countsAtAll(record)) continue;
    const from = Math.min(...record.versions.map(({ written }) => written));
    let best: ModelTurn | null = null;
    for (const turn of turns) {
      if (turn.program.recipe !== record.recipe || from < turn.at - HOUR || from > turn.at + DAY) continue;
      if (!turn.program.benches.some((bench) => benchesOf(record).includes(bench))) continue;
      const [gap, least] = [Math.abs(turn.at - from), best ? Math.abs(best.at - from) : Number.POSITIVE_INFINITY];
      if (gap < least || (gap === least && best !== null && turn.at < best.at)) best = turn;
    }
    if (best) found.set(best.key, [...(found.get(best.key) ?? []), record.id]);
  }
  return found;
}

/** The turns with the benches on which nobody has said what became of them. */
export function openTurns(model: Model): OpenTurn[] {
  const known = worked.get(model);
  if (known) return known;
  const found = workOut(model);
  worked.set(model, found);
  return found;
}

type OpenTurn = ModelTurn & { open: string[] };
/** A model never changes: each step makes another. */
const worked = new WeakMap<Model, OpenTurn[]>();

function workOut(model: Model): OpenTurn[] {
  const turns = turnsOf(model);
  const near = nearest(model, turns);
  const records = new Map(model.records.map((record) => [record.id, record]));
  return turns.map((turn) => {
    if (turn.told && 'skipped' in turn.told) return { ...turn, open: [] };
    const its = [...(near.get(turn.key) ?? []), ...(turn.told ? [turn.told.record] : [])];
    const covered = its.flatMap((id) => {
      const record = records.get(id);
      return record && countsAtAll(record) ? benchesOf(record) : [];
    });
    return { ...turn, open: turn.program.benches.filter((bench) => !covered.includes(bench)) };
  });
}

/** Until when a record keeps people out of a bench; null: nobody knows. Nought: it does not. */
export function heldBy(model: Model, record: ModelRecord, bench: string): number | null {
  const here = record.versions.filter(({ benches, withdrawn }) => !withdrawn && benches.includes(bench));
  const isPending = record.versions.length > 1;
  // Whatever is open of an amendment keeps out whom any of its versions does.
  if (here.length === 0 || (!isPending && !countsAtAll(record))) return 0;
  const label = model.labels[record.recipe] ?? null;
  if (isPending && record.wasUnknown) return null;
  if (label === null || here.some(({ end }) => end === null)) return null;
  const rei = Math.max(label, record.rei ?? 0);
  return Math.max(...here.map(({ end }) => (end ?? 0) + rei * MINUTE));
}

/**
 * Why people have to stay out of a bench; null where nothing says so.
 *
 * Takes   the moment as time really passed, and as the clock of the shop shows it
 */
export function whyOut(model: Model, bench: string, real: number, shown: number): string | null {
  for (const record of model.records) {
    if (startOf(record) > real) continue;
    const until = heldBy(model, record, bench);
    if (until === null || until > real) return `record ${record.id} until ${until}`;
  }
  const due = openTurns(model).find(
    ({ at, open, program }) =>
      at <= shown && open.includes(bench) && (isEndless(model, program) || daysBetween(model, at, shown) <= DAYS_ASKED),
  );
  return due ? `turn ${due.key}` : null;
}

/** A missed spraying with a known interval is asked about for so many days. */
const DAYS_ASKED = 7;

const isEndless = ({ labels }: Model, { recipe }: ModelProgram): boolean => (labels[recipe] ?? null) === null;

const daysBetween = ({ zone }: Model, from: number, to: number): number => {
  const [a, b] = [from, to].map((at) => DateTime.fromMillis(at, { zone }).startOf('day'));
  return a && b ? Math.round(b.diff(a, 'days').days) : 0;
};

/** The same model with another version of a record. */
export const withRecord = (model: Model, record: ModelRecord): Model => ({
  ...model,
  records: model.records.map((one) => (one.id === record.id ? record : one)),
});

/** What became of turns, but for one of which it is no longer known. */
export const without = (told: Model['told'], key: string): Model['told'] =>
  Object.fromEntries(Object.entries(told).filter(([one]) => one !== key));

/** In how many minutes something begins or ends; and a minute to either side. */
export function stopsOf(model: Model, { real, shown }: { real: number; shown: number }): number[] {
  const benches = [...new Set(model.records.flatMap(benchesOf))];
  const ends = model.records.flatMap((record) =>
    benches.map((bench) => ((heldBy(model, record, bench) ?? 0) - real) / MINUTE),
  );
  const begins = turnsOf(model).map(({ at }) => (at - shown) / MINUTE);
  return [...ends, ...begins].flatMap((at) => [at - 1, at, at + 1]);
}

/** One of the turns of about now that are open on a bench that was sprayed; or the one that is named. */
export function turnFor(model: Model, shown: number, of: { benches: string[]; pick: number }, key: string | null) {
  const open = openTurns(model);
  if (key !== null) return open.find((turn) => turn.key === key) ?? null;
  const near = open.filter(
    (turn) => Math.abs(turn.at - shown) < 12 * HOUR && turn.open.some((one) => of.benches.includes(one)),
  );
  return near[of.pick % Math.max(1, near.length)] ?? null;
}

/** One of the turns of about now of which nobody has said anything. */
export function someTurn(model: Model, shown: number, pick: number): ModelTurn | null {
  const near = turnsOf(model).filter(({ at, told }) => told === null && Math.abs(at - shown) < 36 * HOUR);
  return near[pick % Math.max(1, near.length)] ?? null;
}
