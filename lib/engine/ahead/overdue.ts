import { addDays, type Day } from '@/shared/time/day';
import { dayOf } from '@/shared/time/zone';
import type { Application, Shop } from '../shop';
import type { Spraying } from './plan';
import { sprayingsBetween } from './sprayings';

/** So many days a spraying that was missed is asked about. After that, its next turn is nearer. */
const DAYS_ASKED = 7;

/**
 * The sprayings of the last days that were neither done nor skipped nor moved, and that no record covers.
 *
 * A record covers a spraying when it is of the same recipe, began on its day or later, and was on all of its benches.
 *
 * Gives    them in the order in which they were due, without draws and costs
 */
export function overdueSprayings(shop: Shop, today: Day): Spraying[] {
  const missed = sprayingsBetween(shop, addDays(today, -DAYS_ASKED), addDays(today, -1));
  return missed.filter((spraying) => !shop.applications.some((record) => covers(shop, record, spraying)));
}

function covers({ zone }: Shop, { recipe, benches, startedAt }: Application, spraying: Spraying): boolean {
  const sprayed = new Set(benches.map(({ id }) => id));
  return (
    recipe.id === spraying.recipe.id &&
    dayOf(zone, startedAt) >= spraying.date &&
    spraying.program.benches.every(({ id }) => sprayed.has(id))
  );
}
