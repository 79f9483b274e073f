import { addMinutes, type Instant, LAST_INSTANT } from '@/shared/time/instant';
import { reiOf, reopensAfter } from '../keepout/reopening';
import type { Shop, UnderWay } from '../shop';
import type { LateEntry } from './late-entry';

/** What was told of a spraying before its record, and the shop without it: its own record is not held against it. */
export function apartFrom(shop: Shop, spraying: string): { told: UnderWay | null; beside: Shop } {
  const { underWay = [] } = shop;
  const told = underWay.find(({ id }) => id === spraying) ?? null;
  return told
    ? { told, beside: { ...shop, underWay: underWay.filter((one) => one !== told) } }
    : { told, beside: shop };
}

/**
 * Until when a record keeps its benches closed that would open them earlier than was told when they were sprayed: it has
 * an earlier end, or a shorter interval. It counts as it was told until somebody confirms the record.
 *
 * Takes    what was told; null when nothing was
 * Gives    null where the record opens nothing earlier; the last moment where by what was told nobody knew
 */
export function keptAsTold(
  told: UnderWay | null,
  { endedAt, rei, now }: Pick<LateEntry, 'endedAt' | 'rei'> & { now: Instant },
): Instant | null {
  if (!told || endedAt === null || rei === null) return null;
  const interval = reiOf(told);
  const asTold = told.endedAt === null && interval !== null ? addMinutes(endedAt, interval) : reopensAfter(told);
  const until = asTold ?? LAST_INSTANT;
  return until > addMinutes(endedAt, rei) && until > now ? until : null;
}
