import { IANAZone } from 'luxon';
import { rrulestr } from 'rrule';

/* Days as text, such as "2026-03-02", and instants as milliseconds since 1970, in UTC. */

const DAY_MS = 86_400_000;
const WEEKDAYS = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];

const startOf = (day: string): number => Date.parse(`${day}T00:00:00Z`);
export const dayAfter = (day: string, days: number): string =>
  new Date(startOf(day) + days * DAY_MS).toISOString().slice(0, 10);
export const daysBetween = (from: string, until: string): number => (startOf(until) - startOf(from)) / DAY_MS;
export const weekdayOf = (day: string): string => WEEKDAYS[new Date(startOf(day)).getUTCDay()] ?? '';

/** Minutes since midnight of "17:30"; "24:00" is the end of the day. */
export const minutesOf = (time: string): number => {
  const [hours, minutes] = time.split(':').map(Number);
  return (hours ?? 0) * 60 + (minutes ?? 0);
};

const offsets = new Map<string, number>();

/** How far the clock of a zone is ahead of UTC, in ms. It changes on quarters of an hour, and each is looked up once. */
function offsetAt(zone: string, instant: number): number {
  const key = `${zone} ${Math.floor(instant / 900_000)}`;
  const known = offsets.get(key) ?? IANAZone.create(zone).offset(instant) * 60_000;
  offsets.set(key, known);
  return known;
}

/**
 * The instant at which a clock of a zone shows a time of a day. A time that comes twice means the first; one that a clock
 * change skips moves forward by the skipped hour.
 */
export function instantAt(zone: string, day: string, minutes: number): number {
  const shown = startOf(day) + minutes * 60_000;
  const before = offsetAt(zone, shown - DAY_MS);
  const after = offsetAt(zone, shown + DAY_MS);
  const fitting = [before, after]
    .map((one) => shown - one)
    .filter((instant) => instant + offsetAt(zone, instant) === shown);
  return fitting.length > 0 ? Math.min(...fitting) : shown - before;
}

/** The day that a zone's calendar shows at an instant. */
export const dayAt = (zone: string, instant: number): string =>
  new Date(instant + offsetAt(zone, instant)).toISOString().slice(0, 10);

/** An instant in ISO 8601 with its offset, whole seconds. */
export function instantText(zone: string, instant: number): string {
  const offset = offsetAt(zone, instant) / 60_000;
  const shown = new Date(instant + offset * 60_000).toISOString().slice(0, 19);
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0');
  return `${shown}${offset < 0 ? '-' : '+'}${two(Math.abs(offset) / 60)}:${two(Math.abs(offset) % 60)}`;
}

/** The days of a repeat from its first day up to another, both included. */
export function daysOf(repeat: string | null, startsOn: string, last: string): string[] {
  if (repeat === null) return startsOn <= last ? [startsOn] : [];
  const stamp = startsOn.replaceAll('-', '');
  const rule = rrulestr(`DTSTART:${stamp}T000000Z\nRRULE:${repeat};WKST=MO`);
  return rule
    .between(new Date(startOf(startsOn)), new Date(startOf(last)), true)
    .map((date) => date.toISOString().slice(0, 10));
}

/** The latest working day on which an order arrives, so many working days later, on a day or before it. */
export function latestOrder(arrival: string, leadDays: number, isWorking: (day: string) => boolean): string {
  let day = arrival;
  while (!isWorking(day)) day = dayAfter(day, -1);
  for (let left = leadDays; left > 0; left--) {
    do day = dayAfter(day, -1);
    while (!isWorking(day));
  }
  return day;
}
