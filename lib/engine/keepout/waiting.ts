import type { Instant } from '@/shared/time/instant';
import { unrecordedSprayings } from '../ahead/overdue';
import type { Shop } from '../shop';
import type { Waiting } from './clock-doubt';
import { sprayedIn } from './counting';
import { keepOut } from './keep-out';
import { notEndedBy } from './record-index';
import { reopensAfter } from './reopening';

/**
 * Whether an interval in any of the shops waits to end: one that by the proven time has not ended, or a bench that is kept
 * out of by the proven time and would be open by the clock.
 */
export const waitingIn =
  (shops: readonly Shop[]): Waiting =>
  (proven, now, since) =>
    shops.some((shop) => isIntervalRunning(shop, proven, since) || isAnyOpened(shop, proven, now));

function isIntervalRunning(shop: Shop, proven: Instant, since: Instant): boolean {
  return notEndedBy(sprayedIn(shop), proven).some(({ application: record }) => {
    if (record.endedAt === null || record.endedAt > since) return false;
    const reopensAt = reopensAfter(record);
    return reopensAt !== null && reopensAt > proven;
  });
}

function isAnyOpened(shop: Shop, proven: Instant, now: Instant): boolean {
  const before = keepOut(shop, proven, unrecordedSprayings(shop, proven));
  const after = keepOut(shop, now, unrecordedSprayings(shop, now));
  return after.some(({ state }, at) => state === 'open' && before[at]?.state !== 'open');
}
