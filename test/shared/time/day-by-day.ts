import { type Day, WEEKDAYS } from '@/shared/time/day';
import { repeat } from './typed';

/** The days of a rule by looking at every single day from the first, with the platform's calendar. */
export function dayByDay(rule: string, startsOn: Day, from: Day, to: Day) {
  const { frequency, interval, weekdays, daysOfMonth, count, until } = repeat(rule);
  const first = new Date(`${startsOn}T00:00:00Z`);
  const monday = (at: Date) => (at.getUTCDay() + 6) % 7;
  const found: { day: string; index: number }[] = [];
  let index = 0;
  for (const at = new Date(first); at.toISOString().slice(0, 10) <= to; at.setUTCDate(at.getUTCDate() + 1)) {
    const date = at.toISOString().slice(0, 10);
    if ((until !== null && date > until) || (count !== null && index >= count)) break;
    const days = (at.getTime() - first.getTime()) / 86_400_000;
    const weeks = (days - monday(at) + monday(first)) / 7;
    const months = (at.getUTCFullYear() - first.getUTCFullYear()) * 12 + at.getUTCMonth() - first.getUTCMonth();
    if ({ daily: days, weekly: weeks, monthly: months }[frequency] % interval !== 0) continue;
    const length = new Date(Date.UTC(at.getUTCFullYear(), at.getUTCMonth() + 1, 0)).getUTCDate();
    const [fromStart, fromEnd] = [at.getUTCDate(), at.getUTCDate() - length - 1];
    if (daysOfMonth.length > 0 && !daysOfMonth.some((one) => one === fromStart || one === fromEnd)) continue;
    const nths = [null, Math.floor((fromStart - 1) / 7) + 1, Math.ceil((fromEnd + 1) / 7) - 1];
    const named = weekdays.some((one) => one.weekday === WEEKDAYS[monday(at)] && nths.includes(one.nth));
    if (weekdays.length > 0 && !named) continue;
    const ownWeekday = frequency !== 'weekly' || monday(at) === monday(first);
    const ownDay = frequency !== 'monthly' || fromStart === first.getUTCDate();
    if (weekdays.length === 0 && daysOfMonth.length === 0 && !(ownWeekday && ownDay)) continue;
    if (date >= from) found.push({ day: date, index });
    index += 1;
  }
  return found;
}
