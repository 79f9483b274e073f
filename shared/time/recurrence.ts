import { type Reading, read, unreadable } from '../outcome';
import { asTyped } from './as-typed';
import { addDays, type Day, dayFromNumber, dayNumber, type Weekday } from './day';
import type { Instant } from './instant';
import { cycleOf, matchesInCycle } from './repeat-by-cycle';
import { matchesByMonth } from './repeat-by-month';
import { type RepeatParts, readRepeatParts } from './repeat-parts';
import { atClock, dayOf, type Zone } from './zone';

export type Frequency = 'daily' | 'weekly' | 'monthly';

/** A day of the week; in a monthly repeat perhaps only one of them: the 2nd of the month (2), the last one (−1). */
export type RepeatWeekday = { weekday: Weekday; nth: number | null };

/** How a program comes back: RFC 5545's RRULE, as far as a spray program needs it. Weeks begin on Monday. */
export type Repeat = {
  /** As somebody typed it. */
  text: string;
  frequency: Frequency;
  /** Every so many days, weeks or months. */
  interval: number;
  /** Empty when the rule names none: then the first day says which. */
  weekdays: readonly RepeatWeekday[];
  /** 1 is the first of the month, −1 its last day. Empty when the rule names none. */
  daysOfMonth: readonly number[];
  /** How many times in all, or null. */
  count: number | null;
  /** The last day it may happen on, or null. */
  until: Day | null;
  /** The last moment it may start, where the rule says so in UTC. `settleUntil` turns it into a day. */
  untilAt: Instant | null;
};

const EXAMPLE = 'FREQ=WEEKLY;BYDAY=TU';

/**
 * A repeat from its text, such as "FREQ=WEEKLY;INTERVAL=2;BYDAY=TU,FR". Small letters are read as capitals.
 *
 * Refuses  by name: every part but FREQ, INTERVAL, BYDAY, BYMONTHDAY, COUNT and UNTIL; a part given twice; COUNT beside
 *          UNTIL; BYMONTHDAY in a weekly repeat; "2TU" in any but a monthly one
 * Source   RFC 5545, section 3.3.10
 */
export function readRepeat(text: string): Reading<Repeat> {
  if (text.trim() === '') return unreadable(`The repeat is empty. Write a rule such as ${EXAMPLE}.`);
  const reading = readRepeatParts(text.toUpperCase());
  if (!reading.ok) return reading;
  const parts = reading.value;
  const { frequency } = parts;
  if (frequency === null)
    return unreadable(`${asTyped(text)} does not say how often. Begin with FREQ, as in ${EXAMPLE}.`);
  const clash = clashIn({ ...parts, frequency });
  if (clash !== null) return unreadable(clash);
  return read({ text, ...parts, frequency, interval: parts.interval ?? 1 });
}

function clashIn(parts: RepeatParts): string | null {
  if (parts.count !== null && (parts.until !== null || parts.untilAt !== null)) {
    return 'COUNT and UNTIL cannot stand together. Keep one: how many times, or until when.';
  }
  if (parts.frequency === 'weekly' && parts.daysOfMonth.length > 0) {
    return 'BYMONTHDAY cannot stand with FREQ=WEEKLY. Write FREQ=MONTHLY, or name the days of the week with BYDAY.';
  }
  if (parts.frequency !== 'monthly' && parts.weekdays.some(({ nth }) => nth !== null)) {
    return 'A number in BYDAY, such as 2TU, counts within a month. Write FREQ=MONTHLY, or leave the number out.';
  }
  return null;
}

/**
 * The last day on which a repeat may happen, given where and when it starts: the last whose start is not after UNTIL.
 *
 * Takes  the shop's zone, and the program's start in minutes since midnight
 * Gives  null when the rule sets no end
 */
export function untilDay(repeat: Repeat, zone: Zone, startMinute: number): Day | null {
  if (repeat.untilAt === null) return repeat.until;
  // Clocks set back at midnight can put a start of the next day before a moment of this one; so the search begins there.
  let day = addDays(dayOf(zone, repeat.untilAt), 1);
  while (atClock(zone, day, startMinute) > repeat.untilAt) day = addDays(day, -1);
  return day;
}

/** The same repeat with an UNTIL in UTC turned into the last day it means in a shop. Others stay as they are. */
export const settleUntil = (repeat: Repeat, zone: Zone, startMinute: number): Repeat =>
  repeat.untilAt === null ? repeat : { ...repeat, until: untilDay(repeat, zone, startMinute), untilAt: null };

/** A day on which a program happens, and which time it is, counted from 0 at the first. */
export type Occurrence = { day: Day; index: number };

/**
 * The days on which a program happens, from one day to another, both included. The day a program starts on is one of
 * them only if it fits the rule. What lies before is counted, not walked, so that an old program costs no more than a
 * new one.
 *
 * Takes   a repeat, or null for a program that happens once, on the day it starts
 * Throws  RangeError when the repeat ends at an instant that `settleUntil` has not turned into a day
 */
export function occurrences(repeat: Repeat | null, startsOn: Day, from: Day, to: Day): Occurrence[] {
  if (repeat === null) return startsOn >= from && startsOn <= to ? [{ day: startsOn, index: 0 }] : [];
  if (repeat.untilAt !== null) throw new RangeError(`recurrence: settle the end of ${repeat.text} first`);
  const first = dayNumber(startsOn);
  const last = dayNumber(repeat.until !== null && repeat.until < to ? repeat.until : to);
  const begin = Math.max(first, dayNumber(from));
  if (begin > last) return [];
  const cycle = cycleOf(repeat, first);
  const found = cycle ? matchesInCycle(cycle, first, begin, last) : matchesByMonth(repeat, first, begin, last);
  const kept = repeat.count === null ? found.numbers.length : repeat.count - found.before;
  return found.numbers
    .slice(0, Math.max(0, kept))
    .map((number, place) => ({ day: dayFromNumber(number), index: found.before + place }));
}
