import { addDays } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { clockOf, dayOf, type Zone } from '@/shared/time/zone';
import type { Shop, SprayingChange } from '../shop';
import { daysAsked } from './overdue';
import { ownDay } from './program-turns';
import { sprayingsBetween } from './sprayings';

/** A turn that is noted as moved, so that it begins at the same instant by another clock on the wall. */
export type KeptStart = {
  program: string;
  change: SprayingChange & { movedTo: SprayingChange['on']; startMinute: number };
};

/**
 * What must be noted when a shop takes another time zone, so that what has begun stays where it is: every planned
 * spraying that was to begin by now and is neither done nor skipped, at the day and the time that its start has in the
 * other zone. Sprayings still to come go by the new clock.
 *
 * Takes   the shop in its zone of before, the other zone, and the moment
 */
export function keptStarts(shop: Shop, zone: Zone, now: Instant): KeptStart[] {
  const today = dayOf(shop.zone, now);
  // By another clock a turn and today may be a day nearer to each other, so one more day is still asked about there.
  return sprayingsBetween(shop, addDays(today, -daysAsked(shop) - 1), today)
    .filter(({ startsAt }) => startsAt <= now)
    .map(({ program, date, occurrence, startsAt }) => {
      const on = ownDay(program, date, occurrence);
      const { day, minuteOfDay } = clockOf(zone, startsAt);
      const reason = program.changes.find((change) => change.on === on)?.reason ?? null;
      const change = { on, kind: 'moved' as const, application: null, movedTo: day, startMinute: minuteOfDay, reason };
      return { program: program.id, change };
    });
}
