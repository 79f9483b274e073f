import { instantOf, isInstant, LAST_INSTANT } from '@/shared/time/instant';
import type { Application, Shop } from '../shop';
import type { ClockLag } from './clock-doubt';
import { counts } from './counting';
import { reopensAfter } from './reopening';

/**
 * A shop whose intervals end by the time that has provably passed, where that is behind the clock.
 *
 * Takes   the shop, and by how much what ended by a certain moment is held back
 * Gives   the same shop where nothing is held back
 */
export function heldBack(shop: Shop, lag: ClockLag): Shop {
  if (lag === null) return shop;
  const { applications, underWay } = shop;
  return {
    ...shop,
    applications: applications.map((record) => laterBy(record, lag)),
    ...(underWay && { underWay: underWay.map((spraying) => laterBy(spraying, lag)) }),
  };
}

/** Whether a record is held back, so that its interval ends later than it says. */
export const isHeldBack = ({ endedAt }: Pick<Application, 'endedAt'>, lag: ClockLag): boolean =>
  lag !== null && endedAt !== null && endedAt <= lag.since;

function laterBy<T extends Application>(record: T, lag: NonNullable<ClockLag>): T {
  const reopensAt = counts(record) && isHeldBack(record, lag) ? reopensAfter(record) : null;
  if (reopensAt === null) return record;
  const until = reopensAt + lag.ms;
  return { ...record, closedUntil: isInstant(until) ? instantOf(until) : LAST_INSTANT };
}
