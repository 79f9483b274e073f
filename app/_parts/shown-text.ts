import type { Shown } from '@/lib/engine/working/shown';
import { showMass, showMinutes, showMoney, showNumber, showStock, showVolume } from '@/shared/measure/show';
import type { Day } from '@/shared/time/day';
import { showDayShort, showUntil } from '@/shared/time/show-day';
import type { Zone } from '@/shared/time/zone';

/** How a shop wants its figures written: US or metric units, its currency, its own clock and today, beside which another year shows. */
export type Ways = { units: 'us' | 'metric'; currency: string; zone: Zone; today: Day };

/** A value as a person reads it, always with its unit; an unknown one says that it is not known. */
export function shownText(value: Shown, ways: Ways): string {
  switch (value.kind) {
    case 'money':
      return partlyKnown(showMoney(value.micros, ways.currency), value);
    case 'stock':
      return partlyKnown(showStock(value.amount, value.form, ways.units), value);
    case 'volume':
      return showVolume(value.ml * 1000, ways.units);
    case 'mass':
      return showMass(value.g * 1000, ways.units);
    case 'count':
      return `${showNumber(value.value)} ${counted(value.value, value.of)}`;
    case 'ratio':
      return `${showNumber(value.value)} ${value.unit}`;
    case 'day':
      return `${showDayShort(value.day, ways.today)}${value.atLatest ? ' at the latest' : ''}`;
    case 'instant':
      // Rounded up to the minute: a time read from a screen may never end an interval too soon.
      return showUntil(value.instant, ways.zone, ways.today);
    case 'minutes':
      return showMinutes(value.minutes);
    case 'text':
      return value.text;
    case 'unknown':
      return 'not known';
  }
}

type Partly = { kind: 'money' | 'stock'; unknown?: number; atMost?: true };

/** A sum of which parts are not known says so, and how many parts of a cost are. */
function partlyKnown(text: string, { kind, unknown, atMost }: Partly): string {
  if (!unknown) return text;
  if (atMost) return `at most ${text}`;
  return kind === 'money' ? `at least ${text}, ${unknown} not known` : `at least ${text}`;
}

/** One fill, two fills: the word for what is counted comes in the plural. */
const counted = (value: number, of: string): string => (value === 1 || value === -1 ? of.replace(/s$/, '') : of);
