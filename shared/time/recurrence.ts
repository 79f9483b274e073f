import { type Reading, unreadable } from '../outcome';
import type { Day } from './day';
import type { Instant } from './instant';

export type Repeat = { text: string; until: Day | null; untilAt: Instant | null };

export function readRepeat(text: string): Reading<Repeat> {
  return unreadable(`${text} cannot be read yet.`);
}

export function occurrences(repeat: Repeat | null, startsOn: Day, from: Day, to: Day): { day: Day; index: number }[] {
  if (repeat !== null) throw new RangeError('recurrence: not built yet');
  return startsOn >= from && startsOn <= to ? [{ day: startsOn, index: 0 }] : [];
}
