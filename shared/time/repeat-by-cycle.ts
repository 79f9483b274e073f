import { weekdayNumber } from './civil';
import { WEEKDAYS } from './day';
import type { Repeat } from './recurrence';

/** Days that come back in a fixed number of days: so many after an origin, and again after each length. */
export type Cycle = { origin: number; length: number; offsets: readonly number[] };

/** Day numbers on which something happens, and how many times it happened before the first of them. */
export type Matches = { before: number; numbers: number[] };

/**
 * The cycle of a daily or weekly repeat; null for one that looks at months, which are of unequal length.
 *
 * Takes  the number of the day it starts on
 */
export function cycleOf(repeat: Repeat, first: number): Cycle | null {
  if (repeat.frequency === 'monthly' || repeat.daysOfMonth.length > 0) return null;
  const chosen = WEEKDAYS.map((weekday) => repeat.weekdays.some((one) => one.weekday === weekday));
  const days = [0, 1, 2, 3, 4, 5, 6];
  if (repeat.frequency === 'weekly') {
    const start = weekdayNumber(first);
    const offsets = repeat.weekdays.length === 0 ? [start] : days.filter((day) => chosen[day]);
    return { origin: first - start, length: 7 * repeat.interval, offsets };
  }
  // After seven steps of any size the same days of the week come round again.
  const steps = days.map((step) => step * repeat.interval);
  const fits = (step: number) => repeat.weekdays.length === 0 || chosen[weekdayNumber(first + step)];
  return { origin: first, length: 7 * repeat.interval, offsets: steps.filter(fits) };
}

/** The days of a cycle between two day numbers, both included; counted from the day it starts on. */
export function matchesInCycle(cycle: Cycle, first: number, begin: number, last: number): Matches {
  const before = countBefore(cycle, begin) - countBefore(cycle, first);
  const numbers: number[] = [];
  const turns = Math.floor((begin - cycle.origin) / cycle.length);
  for (let turn = cycle.origin + turns * cycle.length; turn <= last; turn += cycle.length) {
    for (const offset of cycle.offsets) {
      const number = turn + offset;
      if (number >= begin && number <= last) numbers.push(number);
    }
  }
  return { before, numbers };
}

/** How many days of the cycle lie from its origin up to, not including, a day. */
function countBefore({ origin, length, offsets }: Cycle, number: number): number {
  const turns = Math.floor((number - origin) / length);
  const into = number - origin - turns * length;
  return turns * offsets.length + offsets.filter((offset) => offset < into).length;
}
