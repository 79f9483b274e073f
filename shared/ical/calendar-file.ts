import { civilOf } from '../time/civil';
import { type Instant, instantOf } from '../time/instant';
import { contentLine, textValue } from './content-line';

/** One event of a calendar. */
export type CalendarEvent = {
  /** The same for the same thing, however often it is moved or renamed. */
  uid: string;
  startsAt: Instant;
  endsAt: Instant;
  summary: string;
  description: string;
  cancelled: boolean;
  /** Higher each time that the event is another one than it was. */
  sequence: number;
  changedAt: Instant;
};

/**
 * A calendar file, as calendar programs subscribe to it. Times are in UTC, which every program reads and no change of
 * the clocks can shift; a program shows them on the clock of whoever looks.
 *
 * Takes   the name of the calendar, and its events; without any, the file says which zone it keeps, since one with
 *         nothing in it would be none
 * Rounds  a start down to the second and an end up to the next minute, as the words beside it have it
 * Source  RFC 5545; NAME and REFRESH-INTERVAL are RFC 7986, with the names beside them that older programs know
 */
export function calendarFile(name: string, events: readonly CalendarEvent[]): string {
  const head: Line[] = [
    ['BEGIN', 'VCALENDAR'],
    ['VERSION', '2.0'],
    ['PRODID', '-//Bench & Bottle//Sprayings//EN'],
    ['CALSCALE', 'GREGORIAN'],
    ['NAME', textValue(name)],
    ['X-WR-CALNAME', textValue(name)],
    ['REFRESH-INTERVAL;VALUE=DURATION', REFRESH],
    ['X-PUBLISHED-TTL', REFRESH],
  ];
  const body = events.length === 0 ? UTC_ITSELF : events.flatMap(eventLines);
  return [...head, ...body, ['END', 'VCALENDAR'] as const]
    .map(([property, value]) => contentLine(property, value))
    .join('');
}

type Line = readonly [property: string, value: string];

/** How often a program should ask anew. */
const REFRESH = 'PT15M';

const UTC_ITSELF: Line[] = [
  ['BEGIN', 'VTIMEZONE'],
  ['TZID', 'Etc/UTC'],
  ['BEGIN', 'STANDARD'],
  ['DTSTART', '19700101T000000'],
  ['TZOFFSETFROM', '+0000'],
  ['TZOFFSETTO', '+0000'],
  ['END', 'STANDARD'],
  ['END', 'VTIMEZONE'],
];

const eventLines = (event: CalendarEvent): Line[] => [
  ['BEGIN', 'VEVENT'],
  ['UID', textValue(event.uid)],
  // A file that is no message says with both of these when the event was last another one.
  ['DTSTAMP', utcTime(event.changedAt)],
  ['LAST-MODIFIED', utcTime(event.changedAt)],
  ['SEQUENCE', String(event.sequence)],
  ['DTSTART', utcTime(event.startsAt)],
  ...endLine(event),
  ['SUMMARY', textValue(event.summary)],
  ['DESCRIPTION', textValue(event.description)],
  ['STATUS', event.cancelled ? 'CANCELLED' : 'CONFIRMED'],
  // Nobody is busy because a bench is closed.
  ['TRANSP', 'TRANSPARENT'],
  ['END', 'VEVENT'],
];

/** An end must come after its start; what lasts no time has none. */
function endLine({ startsAt, endsAt }: CalendarEvent): Line[] {
  const end = wholeMinute(endsAt);
  return end > startsAt ? [['DTEND', utcTime(end)]] : [];
}

const DAY = 86_400_000;
const MINUTE = 60_000;

/** The minute that has not begun before an instant. */
const wholeMinute = (instant: Instant): Instant => {
  const past = instant % MINUTE;
  return past === 0 ? instant : instantOf(instant + MINUTE - past);
};

/** An instant as a date and a time in UTC: "20260303T231500Z". Rounds down to the second. */
export function utcTime(instant: Instant): string {
  const rest = instant % DAY;
  const { year, month, dayOfMonth } = civilOf((instant - rest) / DAY);
  const seconds = (rest - (rest % 1_000)) / 1_000;
  const [hour, minute] = [(seconds - (seconds % 3_600)) / 3_600, ((seconds % 3_600) - (seconds % 60)) / 60];
  const two = (part: number) => String(part).padStart(2, '0');
  const date = `${String(year).padStart(4, '0')}${two(month)}${two(dayOfMonth)}`;
  return `${date}T${two(hour)}${two(minute)}${two(seconds % 60)}Z`;
}
