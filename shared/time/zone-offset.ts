import { Temporal } from 'temporal-polyfill';
import { civilNumber } from './civil';

/*
 * How far the clocks of a zone are from UTC, fast enough for a plan that asks a hundred thousand times. The offset at
 * each UTC midnight is read from the platform's zone tables once and kept. Where it is the same at the midnights around,
 * no clock changes in between and the rest is plain addition. Only days near a change are worked out in full.
 */

const DAY = 86_400_000;
const MINUTE = 60_000;
/** A zone's memory is emptied when it holds this many entries, about a century of days: it must not grow for ever. */
const MOST_KEPT = 40_000;
/** A house holds a few shops. The names of zones may be spelled in many ways, so these are not kept for ever either. */
const MOST_ZONES = 200;

type Table = {
  format: Intl.DateTimeFormat;
  /** By UTC day number: the offset at its first moment. */
  atMidnight: Map<number, number>;
  /** By local day number: the offset that holds all through and around it, or null where the clock changes. */
  around: Map<number, number | null>;
  /** By local minute since 1970: moments near a clock change. */
  nearChange: Map<number, number>;
};

const tables = new Map<string, Table>();

/** Whether the platform knows a zone by this name. */
export function isKnownZone(name: string): boolean {
  // Offsets such as "+02:00" are taken by some platforms as names, but they know nothing of summer time.
  if (!/^[A-Za-z]/.test(name)) return false;
  try {
    tableOf(name);
    return true;
  } catch {
    return false;
  }
}

/**
 * What to add to a moment in UTC to get the time on the wall.
 *
 * Takes   a known zone, and milliseconds since 1970 in UTC
 * Units   milliseconds; whole seconds, because a few zones once ran by a half minute
 * Throws  RangeError when the zone is unknown
 */
export function offsetAt(zone: string, moment: number): number {
  const table = tableOf(zone);
  const day = Math.floor(moment / DAY);
  const offset = midnightOffset(table, day);
  return offset === midnightOffset(table, day + 1) ? offset : readOffset(table, moment);
}

/**
 * The moment at which the clocks of a zone show a time of a day. A skipped time moves forward by what was skipped, a
 * repeated one means the first.
 *
 * Takes   a known zone, the local day's number, and minutes since its midnight, up to 1,440
 * Gives   milliseconds since 1970 in UTC
 */
export function momentAt(zone: string, day: number, minute: number): number {
  const table = tableOf(zone);
  let offset = table.around.get(day);
  if (offset === undefined) {
    offset = offsetAround(table, day);
    keep(table.around, day, offset);
  }
  return offset === null ? momentNearChange(table, zone, day * 1_440 + minute) : day * DAY + minute * MINUTE - offset;
}

function tableOf(zone: string): Table {
  const known = tables.get(zone);
  if (known) return known;
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  const table: Table = { format, atMidnight: new Map(), around: new Map(), nearChange: new Map() };
  if (tables.size >= MOST_ZONES) tables.clear();
  tables.set(zone, table);
  return table;
}

/** No zone is further than 14 h ahead of UTC or 12 h behind, so a local day lies within three UTC days. */
function offsetAround(table: Table, day: number): number | null {
  const offset = midnightOffset(table, day);
  const steady = [day - 1, day + 1, day + 2].every((near) => midnightOffset(table, near) === offset);
  return steady ? offset : null;
}

function midnightOffset(table: Table, day: number): number {
  const known = table.atMidnight.get(day);
  if (known !== undefined) return known;
  const offset = readOffset(table, day * DAY);
  keep(table.atMidnight, day, offset);
  return offset;
}

/** Written as "03/08/2026, 01:59:30". */
const WALL = /^(\d\d)\/(\d\d)\/(\d+), (\d\d):(\d\d):(\d\d)$/;

function readOffset(table: Table, moment: number): number {
  const second = Math.floor(moment / 1_000) * 1_000;
  const written = table.format.format(second);
  const parts = WALL.exec(written);
  if (!parts) throw new RangeError(`zone: this platform writes a time as ${written}`);
  const [, month, dayOfMonth, year, hours, minutes, seconds] = parts.map(Number);
  const day = civilNumber(year ?? 0, month ?? 0, dayOfMonth ?? 0);
  return day * DAY + ((hours ?? 0) * 3_600 + (minutes ?? 0) * 60 + (seconds ?? 0)) * 1_000 - second;
}

function momentNearChange(table: Table, zone: string, localMinute: number): number {
  const known = table.nearChange.get(localMinute);
  if (known !== undefined) return known;
  const wall = Temporal.Instant.fromEpochMilliseconds(localMinute * MINUTE)
    .toZonedDateTimeISO('UTC')
    .toPlainDateTime();
  const moment = wall.toZonedDateTime(zone, { disambiguation: 'compatible' }).epochMilliseconds;
  keep(table.nearChange, localMinute, moment);
  return moment;
}

function keep<V>(memory: Map<number, V>, key: number, value: V): void {
  if (memory.size >= MOST_KEPT) memory.clear();
  memory.set(key, value);
}
