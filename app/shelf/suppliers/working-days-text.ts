import { WEEKDAYS, type Weekday } from '@/shared/time/day';

const NAMES = { mon: 'Mon', tue: 'Tue', wed: 'Wed', thu: 'Thu', fri: 'Fri', sat: 'Sat', sun: 'Sun' };

/** Working days in words: days in a row from three on as "Mon to Fri", others one by one. */
export function workingDaysText(days: ReadonlySet<Weekday>): string {
  const places = WEEKDAYS.map((day, place) => ({ day, place })).filter(({ day }) => days.has(day));
  const [first, last] = [places[0], places.at(-1)];
  if (!first || !last) return 'no day';
  const isRow = last.place - first.place === places.length - 1 && places.length > 2;
  return isRow ? `${NAMES[first.day]} to ${NAMES[last.day]}` : places.map(({ day }) => NAMES[day]).join(', ');
}
