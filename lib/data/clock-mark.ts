import 'server-only';
import {
  type ClockDoubt,
  type ClockReading,
  type ClockTrust,
  looked,
  MOST_AHEAD,
  MOST_BEHIND,
  NEVER_WATCHED,
  type Waiting,
} from '@/lib/engine/keepout/clock-doubt';
import { type Instant, instantOf } from '@/shared/time/instant';
import { type Told, withOthers } from './clock-of-others';
import { type Database, database, type Rows } from './database';
import { checkWhole, damageFound } from './found-damage';
import { alone } from './one-process';
import { toInstant, toStored, toWhole } from './whole';

/*
 * What is known of this machine's clock. It is kept in memory from one look to the next, and in rows for the next start:
 * each moment and offset under its name, the doubt and the steady count with theirs.
 */

const LATEST = 'latest';
const DOUBTED = 'doubted';
const COUNT = 'count';
/** The moment of the last command in a backup that was put back, until somebody has confirmed what came after it. */
const KEPT_UNTIL = 'kept until';

/** What is known of this machine's clock now; of one that this process does not watch, only what the rows say. */
export async function trustOfClock(reading: ClockReading): Promise<Pick<ClockTrust, 'doubt'> & Partial<ClockTrust>> {
  const opened = await database();
  const before = known.get(keyOf(opened));
  if (before === 'starting') return { doubt: 'unwatched' };
  if (before) {
    const own = remember(opened, looked(before, reading, ALWAYS));
    return remember(opened, await withOthers(opened, opened.reader, own, reading, toldBy));
  }
  const stored = await storedTrust(opened.reader);
  if (stored === null) return { doubt: null };
  return { doubt: stored.doubt ?? (reading.now < stored.mark - MOST_BEHIND ? 'behind' : null) };
}

/** Between two looks of the watch nothing is set free. */
export const ALWAYS: Waiting = () => true;

/** What this process knows of the clock; null where it does not watch it, or has not looked yet. */
export function watchedClock(opened: Database): ClockTrust | null {
  const trust = known.get(keyOf(opened));
  return trust === undefined || trust === 'starting' ? null : trust;
}

/** What is known of the clock from before; for a program that is only starting, what the last one left in the rows. */
export async function trustBefore(isStart: boolean): Promise<ClockTrust | null> {
  const opened = await database();
  return (isStart ? null : watchedClock(opened)) ?? storedTrust(opened.reader);
}

/** From now on this process watches the clock: until its first look nobody knows anything. */
export async function startWatch(): Promise<void> {
  known.set(keyOf(await database()), 'starting');
}

/** Keep what is known of the clock in memory. Gives it. */
export function remember(opened: Database, trust: ClockTrust): ClockTrust {
  known.set(keyOf(opened), trust);
  return trust;
}

/** What the rows say of the clock in one question, for whoever asks again and again. */
async function toldBy(rows: Rows): Promise<Told> {
  const named = { OR: [{ id: { startsWith: DOUBTED } }, { id: 'last' }] };
  const marks = new Map((await rows.clockMark.findMany({ where: named })).map(({ id, at }) => [id, at]));
  const last = marks.get('last');
  return { doubt: storedDoubt([...marks.keys()]), last: last === undefined ? null : toWhole(last) };
}

/**
 * Keep what one look at the clock has shown, with what other processes have told, in memory and in the rows.
 *
 * Gives    what is known then
 */
export async function keepLook(opened: Database, own: ClockTrust, reading: ClockReading): Promise<ClockTrust> {
  const trust = await opened.writer.$transaction(async (rows) => {
    await alone(rows, 'clock');
    const all = await withOthers(opened, rows, own, reading, toldBy);
    await storeTrust(rows, all);
    return all;
  });
  return remember(opened, trust);
}

/** Keep what is known of the clock in the rows, for the next start. */
export async function storeTrust(rows: Rows, trust: ClockTrust): Promise<void> {
  await alone(rows, 'clock');
  const { mark, last, since, anchor, level, proven, renewed, count, doubt } = trust;
  const whole = { [LATEST]: mark, last, since, anchor, level, proven, [`${COUNT} ${count}`]: renewed };
  const named = { ...whole, ...(doubt && { [`${DOUBTED} ${doubt}`]: last }) };
  const isRestored = doubt === 'restored';
  await rows.clockMark.deleteMany({ where: isRestored ? { id: { not: KEPT_UNTIL } } : {} });
  await rows.clockMark.createMany({ data: Object.entries(named).map(([id, at]) => ({ id, at: toStored(at) })) });
}

/**
 * Note that a backup was put back: whatever was sprayed after it is not on record, so the clock opens no bench until
 * somebody has confirmed that everything since is entered.
 */
export async function noteRestored(rows: Rows): Promise<void> {
  const written = await latestCommand(rows, true);
  if (written === null) return;
  await rows.clockMark.deleteMany({ where: { OR: [{ id: { startsWith: DOUBTED } }, { id: KEPT_UNTIL }] } });
  const [doubt, until] = [`${DOUBTED} restored`, KEPT_UNTIL];
  await rows.clockMark.createMany({ data: [doubt, until].map((id) => ({ id, at: written })) });
}

/** The moment of the last command in the backup that was put back; null when that is confirmed, or none was. */
export async function keptUntil(): Promise<Instant | null> {
  const { reader } = await database();
  const row = await reader.clockMark.findUnique({ where: { id: KEPT_UNTIL } });
  return row && toInstant(row.at);
}

/**
 * Whether the stored marks speak of a backup that was put back: by a mark that is there, or by one that was changed or is
 * gone. Marks that nobody can read may have spoken of one.
 */
export async function speakOfRestored(): Promise<boolean> {
  const opened = await database();
  const names = await opened.reader.clockMark.findMany({ select: { id: true } }).catch(() => null);
  const found = (await damageFound()) ?? (await checkWhole(opened));
  const damaged = found.rows.flatMap(({ table, row }) => (table === 'ClockMark' ? [row] : []));
  const spoken = [...(names ?? []).map(({ id }) => id), ...damaged];
  return names === null || [`${DOUBTED} restored`, KEPT_UNTIL].some((name) => spoken.includes(name));
}

/** Make the marks anew for a database of which it is still to be confirmed what was sprayed after its backup. */
export async function storeRestored(rows: Rows, trust: ClockTrust, until: Instant | null): Promise<void> {
  await rows.clockMark.deleteMany();
  await storeTrust(rows, { ...trust, doubt: 'restored' });
  if (until !== null) await rows.clockMark.create({ data: { id: KEPT_UNTIL, at: toStored(until) } });
}

/** Forget the seals of the stored marks before they are made anew: nothing of them counts any more, damaged or not. */
export const forgetMarks = (rows: Rows): Promise<unknown> =>
  rows.rowSeal.deleteMany({ where: { tableName: 'ClockMark' } });

/** What the rows say; before there were any, the moment of the latest command is the mark. Null: neither. */
async function storedTrust(rows: Rows): Promise<ClockTrust | null> {
  const marks = new Map((await rows.clockMark.findMany()).map(({ id, at }) => [id, at]));
  const latest = marks.get(LATEST) ?? null;
  const written = await latestCommand(rows, latest === null);
  if (latest === null && written === null) return null;
  const mark = instantOf(Math.max(...[latest, written].flatMap((at) => (at === null ? [] : toInstant(at)))));
  const at = (name: string, fallback: number): number => toWhole(marks.get(name) ?? toStored(fallback));
  const [counted = ''] = [...marks.keys()].filter((id) => id.startsWith(`${COUNT} `));
  return {
    ...{ mark, last: instantOf(at('last', mark)), since: instantOf(at('since', mark)) },
    ...{ anchor: at('anchor', 0), level: at('level', 0), proven: at('proven', 0), renewed: at(counted, 0) },
    count: latest === null ? NEVER_WATCHED : counted.slice(COUNT.length + 1),
    doubt: storedDoubt([...marks.keys()]),
  };
}

/**
 * The latest moment at which a command was written. What was written before the clock was last confirmed, by a clock that
 * was ahead then, no longer counts.
 */
async function latestCommand(rows: Rows, isFirst: boolean): Promise<bigint | null> {
  const { _max } = await rows.clockConfirmation.aggregate({ _max: { markAt: true } });
  const where = isFirst || _max.markAt === null ? {} : { recordedAt: { gt: _max.markAt } };
  return (await rows.command.aggregate({ where, _max: { recordedAt: true } }))._max.recordedAt;
}

const DOUBTS: readonly ClockDoubt[] = ['behind', 'leapt', 'long-gap', 'unwatched', 'restored'];

function storedDoubt(ids: readonly string[]): ClockDoubt | null {
  const doubted = ids.find((id) => id === DOUBTED || id.startsWith(`${DOUBTED} `));
  if (doubted === undefined) return null;
  return DOUBTS.find((doubt) => doubted === `${DOUBTED} ${doubt}`) ?? 'unconfirmed';
}

/** Who said that the clock is right, of when it showed what: the latest ten, the newest first. */
export async function confirmationsOfClock() {
  const { reader } = await database();
  const lines = await reader.clockConfirmation.findMany({ orderBy: { recordedAt: 'desc' }, take: 10 });
  return lines.map(({ id, actor, nowAt, markAt }) => ({
    id,
    actor,
    nowAt: toInstant(nowAt),
    markAt: toInstant(markAt),
  }));
}

/** What is written moves the mark, unless it is so far ahead of it that the clock itself is to be looked at first. */
export async function followMark(rows: Rows, writtenAt: Instant): Promise<void> {
  const at = toStored(writtenAt);
  const near = { lt: at, gt: toStored(writtenAt - MOST_AHEAD) };
  await rows.clockMark.updateMany({ where: { id: LATEST, at: near }, data: { at } });
}

type Known = Map<string, ClockTrust | 'starting'>;

/** One for each database, kept where the pages find what the watch of this process knows. */
const known = knownIn(globalThis);

function knownIn(house: { clocksKnown?: Known } & typeof globalThis): Known {
  house.clocksKnown ??= new Map();
  return house.clocksKnown;
}

const keyOf = ({ file, inode }: Database): string => `${inode} ${file}`;
