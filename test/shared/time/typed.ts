import type { Reading } from '@/shared/outcome';
import { type Day, readCalendarDay } from '@/shared/time/day';
import { type Instant, readCalendarInstant } from '@/shared/time/instant';
import { type Repeat, readRepeat } from '@/shared/time/recurrence';
import { readZone, type Zone } from '@/shared/time/zone';

/** What a reading holds; an error when it was refused. */
function accepted<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
}

export const day = (text: string): Day => accepted(readCalendarDay(text));
export const instant = (text: string): Instant => accepted(readCalendarInstant(text));
export const zone = (text: string): Zone => accepted(readZone(text));
export const repeat = (text: string): Repeat => accepted(readRepeat(text));
