import { type Instant, LAST_INSTANT } from '@/shared/time/instant';
import { counts } from '../keepout/counting';
import { reiOf, reopensAfter } from '../keepout/reopening';
import type { Application } from '../shop';

/**
 * Until when the benches of a record stay closed although an amendment would open one of them earlier, as long as nobody
 * has confirmed it.
 *
 * An amendment opens something earlier when it withdraws the record, names a bench no longer, starts later, or ends its
 * interval sooner: by an earlier end, or by a product that did not go in. That an end is noted where none was is what
 * every running application comes to, and opens nothing earlier.
 *
 * Takes    the record as it counts now, with an earlier amendment that nobody has confirmed; and as it is to be
 * Gives    the end that it has now; the last moment there is where nobody knows that end; null when the amendment opens
 *          nothing earlier, and so counts at once
 */
export function keptClosedUntil(before: Application, after: Application): Instant | null {
  if (!counts(before)) return null;
  return opensEarlier(before, after) ? (reopensAfter(before) ?? LAST_INSTANT) : null;
}

function opensEarlier(before: Application, after: Application): boolean {
  if (after.withdrawn || after.startedAt > before.startedAt) return true;
  const benches = new Set(after.benches.map(({ id }) => id));
  if (before.benches.some(({ id }) => !benches.has(id))) return true;
  const [was, is] = [reopensAfter(before), reopensAfter(after)];
  if (is === null) return false;
  return was === null ? !isJustEnded(before, after) : is < was;
}

/** Whether nothing but the end was missing, and the interval that counts from it is no shorter. */
function isJustEnded(before: Application, after: Application): boolean {
  const [was, is] = [reiOf(before), reiOf(after)];
  return before.endedAt === null && was !== null && is !== null && is >= was;
}
