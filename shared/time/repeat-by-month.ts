import { civilNumber, civilOf, daysInMonth, weekdayNumber } from './civil';
import { WEEKDAYS } from './day';
import type { Repeat } from './recurrence';
import type { Matches } from './repeat-by-cycle';

/**
 * The days of a repeat that looks at months, between two day numbers, both included. Months are of unequal length, so
 * they are walked from the one it starts in; within a month nothing is kept that lies before.
 *
 * Takes  the number of the day it starts on
 */
export function matchesByMonth(repeat: Repeat, first: number, begin: number, last: number): Matches {
  const start = civilOf(first);
  const fits = ruleOf(repeat, first, start.dayOfMonth);
  const stride = repeat.frequency === 'monthly' ? repeat.interval : 1;
  const found: Matches = { before: 0, numbers: [] };
  for (let month = start.year * 12 + start.month - 1; ; month += stride) {
    const year = Math.floor(month / 12);
    const monthFirst = civilNumber(year, month - year * 12 + 1, 1);
    if (monthFirst > last) return found;
    const length = daysInMonth(year, month - year * 12 + 1);
    for (let day = 1; day <= length; day++) {
      const number = monthFirst + day - 1;
      if (number < first || number > last || !fits(day, length, number)) continue;
      if (number < begin) found.before += 1;
      else found.numbers.push(number);
    }
  }
}

type Rule = (day: number, length: number, number: number) => boolean;

function ruleOf(repeat: Repeat, first: number, startDay: number): Rule {
  const { daysOfMonth, interval } = repeat;
  const weekdays = repeat.weekdays.map(({ weekday, nth }) => ({ place: WEEKDAYS.indexOf(weekday), nth }));
  const daily = repeat.frequency === 'daily';
  const ownDay = !daily && daysOfMonth.length === 0 && weekdays.length === 0;
  return (day, length, number) => {
    if (ownDay) return day === startDay;
    if (daily && (number - first) % interval !== 0) return false;
    if (daysOfMonth.length > 0 && !daysOfMonth.includes(day) && !daysOfMonth.includes(day - length - 1)) return false;
    if (weekdays.length === 0) return true;
    const place = weekdayNumber(number);
    return weekdays.some((one) => one.place === place && isNth(one.nth, day, length));
  };
}

/** Whether a day is the n-th of its weekday in the month, counted from the end when n is negative. */
function isNth(nth: number | null, day: number, length: number): boolean {
  if (nth === null) return true;
  return nth > 0 ? Math.ceil(day / 7) === nth : Math.ceil((length - day + 1) / 7) === -nth;
}
