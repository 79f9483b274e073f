import { showClockTime } from '@/shared/time/clock-time';
import { atClock } from '@/shared/time/zone';
import type { DayStrips } from '../engine/keepout/planned-closures';
import type { House } from './house';

/** The clock that the strips of one day share. */
export type DayClock = {
  /** How long the day is; the clocks may change in it. */
  minutes: number;
  hours: DayStrips['hours'];
  /** What is special about its opening hours, in words: "Harvest fair, open 10:00 to 14:00"; null on any other day. */
  special: string | null;
  /** Minutes passed since its midnight; null on a day that is not today. */
  now: number | null;
};

const MINUTE = 60_000;

export function dayClock({ shop, now, today }: House, { day, minutes, hours, special }: DayStrips): DayClock {
  return {
    minutes,
    hours,
    special: special && specialWords(special),
    now: day === today ? (now - atClock(shop.zone, day, 0)) / MINUTE : null,
  };
}

function specialWords({ name, hours }: NonNullable<DayStrips['special']>): string {
  const open = hours.map(([from, to]) => `${showClockTime(from)} to ${showClockTime(to)}`);
  const words = open.length === 0 ? 'closed to customers' : `open ${open.join(' and ')}`;
  return name === null ? `This day alone: ${words}` : `${name}, ${words}`;
}
