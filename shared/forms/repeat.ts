import { quoted } from '../measure/number-text';
import { type Reading, read, unreadable } from '../outcome';
import { readClockTime } from '../time/clock-time';
import { addDays, type Day, readDay, WEEKDAYS, weekdayOf } from '../time/day';
import { type Occurrence, occurrences, readRepeat, settleUntil } from '../time/recurrence';
import type { Zone } from '../time/zone';

/** How something comes back, as it is typed: once, on days of the week, every so many days, or by a rule of RFC 5545. */
export type RepeatDraft = {
  kind: string;
  weekdays: string[];
  everyWeeks: string;
  everyDays: string;
  rule: string;
};

/**
 * A repeat as its form shows it: by the days of the week or a number of days where that says the same, letter for letter;
 * any other by its rule.
 *
 * Takes    the rule, null for once; and the first day, whose weekday is offered where none is named
 */
export function repeatOfText(text: string | null, startsOn: string): RepeatDraft {
  const day = readDay(startsOn);
  const weekdays = day.ok ? [weekdayOf(day.value) as string] : [];
  const empty = { weekdays, everyWeeks: '1', everyDays: '7', rule: '' };
  if (text === null) return { ...empty, kind: 'once' };
  const weekly = /^FREQ=WEEKLY(?:;INTERVAL=(\d+))?;BYDAY=([A-Z,]+)$/.exec(text);
  const daily = /^FREQ=DAILY(?:;INTERVAL=(\d+))?$/.exec(text);
  const chosen: RepeatDraft = weekly
    ? { ...empty, kind: 'weeks', everyWeeks: weekly[1] ?? '1', weekdays: weekdaysIn(weekly[2] ?? '') }
    : { ...empty, kind: 'days', everyDays: daily?.[1] ?? '1' };
  const same = textOfRepeat(chosen);
  return same.ok && same.value === text ? chosen : { ...empty, kind: 'rule', rule: text };
}

const codeOf = (weekday: string): string => weekday.slice(0, 2).toUpperCase();

const weekdaysIn = (codes: string): string[] =>
  codes.split(',').flatMap((code) => WEEKDAYS.find((weekday) => codeOf(weekday) === code) ?? []);

/**
 * The rule that was chosen or typed.
 *
 * Gives    null for once
 * Refuses  no day of the week, a number of weeks or days that is none, and what `readRepeat` refuses
 */
export function textOfRepeat({ kind, weekdays, everyWeeks, everyDays, rule }: RepeatDraft): Reading<string | null> {
  if (kind === 'once') return read(null);
  if (kind === 'weeks') {
    const days = WEEKDAYS.filter((weekday) => weekdays.includes(weekday)).map(codeOf);
    if (days.length === 0) return unreadable('Choose at least one day of the week.');
    return every('WEEKLY', everyWeeks, 'weeks', `;BYDAY=${days.join(',')}`);
  }
  if (kind === 'days') return every('DAILY', everyDays, 'days', '');
  const typed = rule.trim();
  const reading = readRepeat(typed);
  return reading.ok ? read(typed) : reading;
}

function every(frequency: string, typed: string, what: string, rest: string): Reading<string> {
  const number = typed.trim();
  if (!/^[1-9]\d{0,3}$/.test(number)) {
    return unreadable(`${quoted(typed)} is no number of ${what}. Write a whole number, 1 or more.`);
  }
  return read(`FREQ=${frequency}${number === '1' ? '' : `;INTERVAL=${number}`}${rest}`);
}

/** When something happens, as it is typed. */
export type WhenTyped = RepeatDraft & { startsOn: string; endsOn: string; startTime: string };

/** Far enough for a thing that comes back every few years, and no further than is looked at in a moment. */
const DAYS_AHEAD = [100, 1_000, 10_000];

/**
 * The next days on which something happens, from today on.
 *
 * Takes    what was typed, the shop's zone and day, and how many days to give
 * Gives    which time each is, counted from 0 at the first; fewer where it ends sooner
 * Refuses  the first of what was typed that cannot be read
 */
export function nextDays(typed: WhenTyped, zone: Zone, today: Day, most: number): Reading<Occurrence[]> {
  const [starts, ends, rule] = [
    readDay(typed.startsOn),
    typed.endsOn ? readDay(typed.endsOn) : null,
    textOfRepeat(typed),
  ];
  if (!starts.ok) return starts;
  if (ends && !ends.ok) return ends;
  if (!rule.ok) return rule;
  const repeat = rule.value === null ? null : readRepeat(rule.value);
  if (repeat && !repeat.ok) return repeat;
  const time = readClockTime(typed.startTime || '12:00');
  const settled = repeat && settleUntil(repeat.value, zone, time.ok ? time.value : 0);
  const from = starts.value > today ? starts.value : today;
  let found: Occurrence[] = [];
  for (const days of DAYS_AHEAD) {
    const horizon = addDays(from, days);
    found = occurrences(settled, starts.value, from, ends && ends.value < horizon ? ends.value : horizon);
    if (found.length >= most) break;
  }
  return read(found.slice(0, most));
}
