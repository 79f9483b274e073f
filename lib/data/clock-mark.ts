import 'server-only';
import { type ClockDoubt, type ClockSigns, clockDoubt, MOST_AHEAD } from '@/lib/engine/keepout/clock-doubt';
import type { Instant } from '@/shared/time/instant';
import { type Database, database, type Rows } from './database';
import { toInstant, toStored } from './whole';

/** The rows of the mark: how far the clock has been seen, and whether it is in doubt. */
const [LATEST, DOUBTED] = ['latest', 'doubted'];

/** What the machine's clock shows, and what it cannot be set by. */
export type ClockReading = { now: Instant; steady: number };

/** The latest moment this clock was seen; where none was noted, the moment of the latest command. Null: neither. */
export async function clockMark(rows: Rows): Promise<Instant | null> {
  const row = await rows.clockMark.findUnique({ where: { id: LATEST } });
  const last = row ? row.at : (await rows.command.aggregate({ _max: { recordedAt: true } }))._max.recordedAt;
  return last === null ? null : toInstant(last);
}

/**
 * Whether this machine's clock is in doubt now. Throws when the mark cannot be read: then nobody knows.
 *
 * Takes   whether the program is only starting
 */
export async function doubtOfClock(reading: ClockReading, isStart = false): Promise<ClockDoubt | null> {
  const opened = await database();
  const doubted = await opened.reader.clockMark.findUnique({ where: { id: DOUBTED } });
  const signs: Omit<ClockSigns, 'anchor'> = {
    ...reading,
    mark: await clockMark(opened.reader),
    isDoubted: doubted !== null,
    isStart,
  };
  return clockDoubt({ ...signs, anchor: isStart ? null : (anchors.get(opened.file) ?? null) });
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

/** Note how far the clock has been seen, once it was found right. */
export async function markClock({ file, writer }: Database, { now, steady }: ClockReading): Promise<void> {
  const at = toStored(now);
  await writer.clockMark.upsert({ where: { id: LATEST }, create: { id: LATEST, at }, update: { at } });
  anchors.set(file, { at: now, steady });
}

/** Note that the clock is in doubt, so that starting anew settles nothing. The mark stays where it is. */
export async function noteDoubt({ writer }: Database, { now }: ClockReading): Promise<void> {
  const at = toStored(now);
  await writer.clockMark.upsert({ where: { id: DOUBTED }, create: { id: DOUBTED, at }, update: {} });
}

/** Take the clock as somebody has confirmed it: the mark is where it stands now, before or after what it was. */
export async function settleClock(rows: Rows, { now }: ClockReading): Promise<void> {
  const at = toStored(now);
  await rows.clockMark.upsert({ where: { id: LATEST }, create: { id: LATEST, at }, update: { at } });
  await rows.clockMark.deleteMany({ where: { id: DOUBTED } });
}

/** Count from a confirmed clock on, in this process. */
export async function anchorClock({ now, steady }: ClockReading): Promise<void> {
  anchors.set((await database()).file, { at: now, steady });
}

/** What is written moves the mark, unless it is so far ahead of it that the clock itself is to be looked at first. */
export async function followMark(rows: Rows, writtenAt: Instant): Promise<void> {
  const at = toStored(writtenAt);
  const near = { lt: at, gt: toStored(writtenAt - MOST_AHEAD) };
  await rows.clockMark.updateMany({ where: { id: LATEST, at: near }, data: { at } });
}

type Anchors = Map<string, NonNullable<ClockSigns['anchor']>>;

/** One for each database, kept where the pages find what the watch of this process knows. */
const anchors = anchorsIn(globalThis);

function anchorsIn(house: { clockAnchors?: Anchors } & typeof globalThis): Anchors {
  house.clockAnchors ??= new Map();
  return house.clockAnchors;
}
