import type { MixPlan } from '@/shared/mix/mix-plan';
import { addDays } from '@/shared/time/day';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { showInstant } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import { ownDay } from '../engine/ahead/program-turns';
import { openSprayings } from '../engine/ahead/turns-on-record';
import type { AskedMix } from '../engine/mix/asked-mix';

/** A planned spraying is near from so many minutes before its start to so many after it. */
const BEFORE = 12 * 60;
const AFTER = 24 * 60;

/**
 * The planned sprayings that a mix without one might be: open, of its recipe, near in time, and with one of its benches.
 * Whoever finishes the mix says which one it was; unless they do, it is an extra mix and the planned one is still to come.
 */
export function nearTurns({ shop, planned, recipe, batch }: AskedMix, now: Instant): MixPlan['near'] {
  if (planned) return [];
  const today = dayOf(shop.zone, now);
  const sprayed = new Set(batch.benches.map(({ id }) => id));
  return openSprayings(shop, addDays(today, -1), addDays(today, 1))
    .filter(({ startsAt }) => startsAt <= addMinutes(now, BEFORE) && startsAt >= addMinutes(now, -AFTER))
    .filter((turn) => turn.recipe === recipe)
    .filter(({ open }) => sprayed.size === 0 || open.some(({ id }) => sprayed.has(id)))
    .map(({ program, date, occurrence, startsAt, open }) => ({
      ...{ program: program.id, on: ownDay(program, date, occurrence) },
      text: `${showInstant(startsAt, shop.zone, today)}, ${open.map(({ name }) => name).join(', ')}`,
    }));
}
