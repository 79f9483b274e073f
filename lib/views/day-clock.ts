import type { Day } from '@/shared/time/day';
import { atClock } from '@/shared/time/zone';
import { type DayStrips, dayStrips } from '../engine/keepout/planned-closures';
import type { House } from './house';

/** The clock that the strips of one day share. */
export type DayClock = {
  /** How long the day is; the clocks may change in it. */
  minutes: number;
  hours: DayStrips['hours'];
  /** Minutes passed since its midnight; null on a day that is not today. */
  now: number | null;
};

const MINUTE = 60_000;

export function dayClock({ shop, plan, now, today }: House, day: Day): DayClock {
  const { minutes, hours } = dayStrips(shop, plan.sprayings, day);
  return { minutes, hours, now: day === today ? (now - atClock(shop.zone, day, 0)) / MINUTE : null };
}
