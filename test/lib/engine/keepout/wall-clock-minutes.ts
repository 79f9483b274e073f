import { DateTime } from 'luxon';
import type { Shop } from '@/lib/engine/shop';

/*
 * When a shop is open, written from the rule alone and with another calendar: a minute is open when the clock on the
 * wall reads a time from an opening until before its end. Slow and plain, to check the real one against.
 */

export type OpeningHours = Shop['openingHours'];
export type SpecialDays = Shop['specialDays'];

export const MINUTE = 60_000;
export const MINUTES_IN_DAY = 1_440;
export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;

/** What wall and calendar of a zone show, minute by minute, for some days from a midnight on. */
export type Wall = {
  zone: string;
  from: number;
  dates: string[];
  dateAt: Uint16Array;
  weekdays: Uint8Array;
  clocks: Uint16Array;
};

/** Read quarter by quarter, since no zone changes its clocks at any other time. */
export function wallOf(zone: string, firstDay: string, days: number): Wall {
  const start = DateTime.fromISO(firstDay, { zone });
  const minutes = days * MINUTES_IN_DAY;
  const wall: Wall = {
    ...{ zone, from: start.toMillis(), dates: [], dateAt: new Uint16Array(minutes) },
    ...{ weekdays: new Uint8Array(minutes), clocks: new Uint16Array(minutes) },
  };
  for (let quarter = 0; quarter < minutes; quarter += 15) {
    const now = start.plus({ minutes: quarter });
    const { weekday, hour, minute } = now;
    const date = now.toISODate() ?? '';
    if (wall.dates.at(-1) !== date) wall.dates.push(date);
    for (let more = 0; more < 15; more += 1) {
      wall.dateAt[quarter + more] = wall.dates.length - 1;
      wall.weekdays[quarter + more] = weekday - 1;
      wall.clocks[quarter + more] = hour * 60 + minute + more;
    }
  }
  return wall;
}

/**
 * Whether any minute of a span is an open one, for spans of whole minutes on the wall.
 *
 * Takes   how far before and after a moment those spans will lie, in days
 */
export function openingsOn(wall: Wall, hours: OpeningHours, special: SpecialDays, around: number, days: number) {
  const byWeekday = WEEKDAYS.map((name) => hours[name]);
  const own = new Map([...special].map(([date, its]): [string, [number, number][]] => [date, its.hours]));
  const byDate = wall.dates.map((date) => own.get(date));
  const first = (around - wall.from) / MINUTE - days * MINUTES_IN_DAY;
  const openBefore = new Int32Array(2 * days * MINUTES_IN_DAY + 1);
  for (let at = 0; at < openBefore.length - 1; at += 1) {
    const clock = wall.clocks[first + at] ?? 0;
    const today = byDate[wall.dateAt[first + at] ?? 0] ?? byWeekday[wall.weekdays[first + at] ?? 0] ?? [];
    const open = today.some(([opens, closes]) => clock >= opens && clock < closes);
    openBefore[at + 1] = (openBefore[at] ?? 0) + (open ? 1 : 0);
  }
  const before = (moment: number): number => {
    const found = openBefore[(moment - wall.from) / MINUTE - first];
    if (found === undefined) throw new RangeError('outside the wall that was read');
    return found;
  };
  return (start: number, end: number): boolean => before(end) > before(start);
}

/** Weeks around changes of the clocks, in zones that change at different hours, by half an hour, and never. */
export const CHANGES: [zone: string, on: string][] = [
  ['America/New_York', '2026-03-08'],
  ['America/New_York', '2026-11-01'],
  ['Europe/London', '2026-03-29'],
  ['Europe/London', '2026-10-25'],
  ['Australia/Lord_Howe', '2026-04-05'],
  ['Australia/Lord_Howe', '2026-10-04'],
  ['America/Santiago', '2026-04-04'],
  ['America/Santiago', '2026-09-06'],
  ['Asia/Tokyo', '2026-03-08'],
];
