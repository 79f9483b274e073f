/*
 * Times and stretches of time as people write them, made what the shop file has: "9am" is "09:00", "2 years" is "730".
 * Whatever can be two things stays as it was written, for the sentence that refuses it.
 */

const TIME = /^(\d{1,2})(?:[:.h](\d\d))?\s*([ap])?\.?(?:m\.?)?$/i;

/** What a time can be on a clock of 24 hours, in minutes; "9" without am or pm can be two. */
type Times = { minutes: number[]; isExact: boolean };

function timesOf(text: string): Times | null {
  const bare = text.trim().toLowerCase();
  if (bare === 'noon') return { minutes: [720], isExact: true };
  if (bare === 'midnight') return { minutes: [0], isExact: true };
  const [, hour = '', minute, half] = TIME.exec(bare) ?? [];
  if (hour === '') return null;
  const [hours, past] = [Number(hour), Number(minute ?? 0)];
  if (hours > 24 || past > 59 || (hours === 24 && past > 0)) return null;
  if (half === undefined) {
    const isExact = minute !== undefined || hours > 12 || hour.startsWith('0');
    return { minutes: isExact ? [hours * 60 + past] : [hours * 60 + past, ((hours % 12) + 12) * 60 + past], isExact };
  }
  if (hours < 1 || hours > 12) return null;
  return { minutes: [((hours % 12) + (half === 'p' ? 12 : 0)) * 60 + past], isExact: true };
}

const clock = (minutes: number): string =>
  `${String(Math.trunc(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

/** "9am", "9.30 pm" and "noon" as "09:00", "21:30" and "12:00". */
export function plainTime(text: string): string {
  const times = timesOf(text);
  return times?.isExact ? clock(times.minutes[0] ?? 0) : text;
}

/**
 * An opening as people write it: "9am-6pm", "9–18", "9 to 6pm", "9:00-12:00".
 *
 * Gives   from and until as the shop file has them; null when it is none, or can be two: "1-5" may be night or day
 */
export function plainOpening(text: string): [from: string, until: string] | null {
  const [first, last, ...more] = text.split(/\s*(?:[-–—]|\bto\b|\btill?\b|\buntil\b)\s*/i);
  const [from, until] = [timesOf(first ?? ''), timesOf(last ?? '')];
  if (!from || !until || more.length > 0) return null;
  // Neither says which half of the day it means.
  if (!from.isExact && !until.isExact) return null;
  const ends = until.minutes.map((end) => (end === 0 ? 1_440 : end));
  const fits = from.minutes.flatMap((start) => ends.filter((end) => end > start).map((end) => [start, end] as const));
  const [only] = fits;
  if (only === undefined)
    return from.isExact && until.isExact ? [clock(from.minutes[0] ?? 0), clock(ends[0] ?? 0)] : null;
  return fits.length === 1 ? [clock(only[0]), clock(only[1])] : null;
}

const STRETCH = /^(\d{1,5}(?:\.\d{1,3})?)\s*([a-z]+)\.?$/i;

const DAYS: Record<string, number> = { d: 1, day: 1, days: 1, w: 7, wk: 7, week: 7, weeks: 7 };
const MONTH = /^mo(nths?)?$/i;
const YEAR = /^y(ea)?(rs?)?$/i;

/**
 * How long a bottle keeps, in days: "2 years" is "730", "18 months" is "547", "6 weeks" is "42".
 *
 * Rounds   down, since a last day that comes too early spoils nothing
 */
export function plainShelfLife(text: string): string {
  const [, number, word = ''] = STRETCH.exec(text.trim()) ?? [];
  if (number === undefined) return text;
  if (YEAR.test(word)) return String(Math.floor(Number(number) * 365));
  if (MONTH.test(word)) return String(Math.floor((Number(number) * 365) / 12));
  const days = DAYS[word.toLowerCase()];
  return days === undefined ? text : String(Math.floor(Number(number) * days));
}

/** A label's number of days: "2 weeks" is "14". Months stay as written, since a label that says so means the calendar. */
export function plainDays(text: string): string {
  const [, number, word = ''] = STRETCH.exec(text.trim()) ?? [];
  const days = DAYS[word.toLowerCase()];
  return number === undefined || days === undefined ? text : String(Math.ceil(Number(number) * days));
}

const HOURS: Record<string, number> = { h: 1, hr: 1, hrs: 1, hour: 1, hours: 1, d: 24, day: 24, days: 24 };
const MINUTES = /^min(s|utes?)?$/i;

/** A label's number of hours: "12 h" is "12", "2 days" is "48", "30 minutes" is "0.5". Never shorter than what was written. */
export function plainHours(text: string): string {
  const [, number, word = ''] = STRETCH.exec(text.trim()) ?? [];
  if (number === undefined) return text;
  if (MINUTES.test(word)) return String(Math.ceil((Number(number) / 60) * 10_000) / 10_000);
  const hours = HOURS[word.toLowerCase()];
  return hours === undefined ? text : String(Number(number) * hours);
}
