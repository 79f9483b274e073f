import { type Reading, read, unreadable } from '../outcome';
import { asTyped } from './as-typed';
import { type Day, readCalendarDay, type Weekday } from './day';
import { type Instant, readCalendarInstant } from './instant';
import type { Frequency, RepeatWeekday } from './recurrence';

/** What the parts of a repeat say, each read by itself. */
export type RepeatParts = {
  frequency: Frequency | null;
  interval: number | null;
  weekdays: RepeatWeekday[];
  daysOfMonth: number[];
  count: number | null;
  until: Day | null;
  untilAt: Instant | null;
};

const KNOWN = 'FREQ, INTERVAL, BYDAY, BYMONTHDAY, COUNT and UNTIL';
const MOST = 99_999;

/** The parts of a repeat. Takes its text in capitals; refuses the first part that cannot be read, by name. */
export function readRepeatParts(text: string): Reading<RepeatParts> {
  let parts: RepeatParts = {
    frequency: null,
    interval: null,
    weekdays: [],
    daysOfMonth: [],
    count: null,
    until: null,
    untilAt: null,
  };
  const seen = new Set<string>();
  for (const part of text.split(';')) {
    const [name = '', value, ...rest] = part.split('=');
    if (value === undefined || rest.length > 0 || name === '') {
      return unreadable(
        `${asTyped(part)} is no part of a repeat. Write NAME=VALUE pairs joined by semicolons: ${KNOWN}.`,
      );
    }
    if (seen.has(name)) return unreadable(`${asTyped(name)} is given twice. Give it once.`);
    seen.add(name);
    const reading = readPart(name, value);
    if (!reading.ok) return reading;
    parts = { ...parts, ...reading.value };
  }
  return read(parts);
}

function readPart(name: string, value: string): Reading<Partial<RepeatParts>> {
  switch (name) {
    case 'FREQ':
      return readFrequency(value);
    case 'INTERVAL':
    case 'COUNT':
      return readCount(name, value);
    case 'BYDAY':
      return readList(value, readWeekday, (weekdays) => ({ weekdays }));
    case 'BYMONTHDAY':
      return readList(value, readDayOfMonth, (daysOfMonth) => ({ daysOfMonth }));
    case 'UNTIL':
      return readUntil(value);
    case 'WKST':
      return unreadable('WKST is not known here: weeks begin on Monday. Leave it out.');
    default:
      return unreadable(
        name.startsWith('RRULE:') || name.startsWith('DTSTART')
          ? `${asTyped(name)} does not belong here. Write the rule alone, such as FREQ=WEEKLY;BYDAY=TU.`
          : `${asTyped(name)} is not known here. A repeat may hold ${KNOWN}.`,
      );
  }
}

const FREQUENCIES = new Map<string, Frequency>([
  ['DAILY', 'daily'],
  ['WEEKLY', 'weekly'],
  ['MONTHLY', 'monthly'],
]);

function readFrequency(value: string): Reading<Partial<RepeatParts>> {
  const frequency = FREQUENCIES.get(value);
  if (frequency) return read({ frequency });
  const instead = value === 'YEARLY' ? ' Once a year is FREQ=MONTHLY;INTERVAL=12.' : '';
  return unreadable(`FREQ=${value.slice(0, 40)} is not known here. Write DAILY, WEEKLY or MONTHLY.${instead}`);
}

function readCount(name: 'INTERVAL' | 'COUNT', value: string): Reading<Partial<RepeatParts>> {
  const number = /^\d{1,9}$/.test(value) ? Number(value) : 0;
  if (number < 1 || number > MOST) {
    return unreadable(`${name} cannot be ${asTyped(value)}. Write a whole number from 1 to ${MOST}.`);
  }
  return read(name === 'COUNT' ? { count: number } : { interval: number });
}

/** A list with commas. What is named twice counts once, as the days of a set do. */
function readList<T>(
  value: string,
  readOne: (text: string) => Reading<T>,
  named: (list: T[]) => Partial<RepeatParts>,
): Reading<Partial<RepeatParts>> {
  const list: T[] = [];
  for (const text of value.split(',')) {
    const reading = readOne(text);
    if (!reading.ok) return reading;
    list.push(reading.value);
  }
  return read(named(list));
}

const WEEKDAY_CODES = new Map<string, Weekday>([
  ['MO', 'mon'],
  ['TU', 'tue'],
  ['WE', 'wed'],
  ['TH', 'thu'],
  ['FR', 'fri'],
  ['SA', 'sat'],
  ['SU', 'sun'],
]);

function readWeekday(text: string): Reading<RepeatWeekday> {
  const parts = /^([+-]?\d{1,2})?([A-Z]{2})$/.exec(text);
  const weekday = WEEKDAY_CODES.get(parts?.[2] ?? '');
  if (!weekday)
    return unreadable(`BYDAY cannot hold ${asTyped(text)}. Write MO, TU, WE, TH, FR, SA or SU, with commas between.`);
  if (parts?.[1] === undefined) return read({ weekday, nth: null });
  const nth = Number(parts[1]);
  if (nth !== 0 && Math.abs(nth) <= 5) return read({ weekday, nth });
  return unreadable(
    `BYDAY cannot hold ${asTyped(text)}: a month has at most five of a day. Number from 1 to 5, or from -1 to -5.`,
  );
}

function readDayOfMonth(text: string): Reading<number> {
  const number = /^[+-]?\d{1,2}$/.test(text) ? Number(text) : 0;
  if (number !== 0 && Math.abs(number) <= 31) return read(number);
  return unreadable(`BYMONTHDAY cannot hold ${asTyped(text)}. Write days from 1 to 31, or from -1 (the last) to -31.`);
}

function readUntil(value: string): Reading<Partial<RepeatParts>> {
  const parts = /^(\d{4})(\d\d)(\d\d)(?:T(\d\d)(\d\d)(\d\d)Z)?$/.exec(value);
  if (!parts) {
    return unreadable(
      `UNTIL cannot be ${asTyped(value)}. Write a day such as 20261031, or a time in UTC such as 20261031T220000Z.`,
    );
  }
  const [, year, month, dayOfMonth, hours, minutes, seconds] = parts;
  const date = `${year}-${month}-${dayOfMonth}`;
  const day = readCalendarDay(date);
  if (!day.ok) return unreadable(`UNTIL: ${day.message}`);
  if (hours === undefined) return read({ until: day.value });
  const instant = readCalendarInstant(`${date}T${hours}:${minutes}:${seconds}Z`);
  return instant.ok ? read({ untilAt: instant.value }) : unreadable(`UNTIL: ${instant.message}`);
}
