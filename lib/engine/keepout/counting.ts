import type { Instant } from '@/shared/time/instant';
import type { Application, Shop } from '../shop';

/**
 * Whether a record counts: for keep-out, for every rule that looks back, and for what is learned from records. One that
 * was entered in error counts nowhere, once somebody has confirmed that; until then it counts as it did.
 */
export const counts = ({ withdrawn, closedUntil }: Withdrawable): boolean => withdrawn !== true || closedUntil !== null;

/** A record, or what a shop file says of one. */
type Withdrawable = { withdrawn: boolean; closedUntil: Instant | string | null };

const known = new WeakMap<readonly Application[], readonly Application[]>();

/**
 * What was sprayed in a shop, as far as it counts: its records in their order, then what was begun and is not on record
 * yet. Picked once for each list of them, which nobody changes.
 */
export function countingApplications(shop: Pick<Shop, 'applications' | 'underWay'>): readonly Application[] {
  const all = sprayedIn(shop);
  const counting = known.get(all) ?? all.filter(counts);
  known.set(all, counting);
  return counting;
}

const together = new WeakMap<readonly Application[], { records: readonly Application[]; all: Application[] }>();

/** The records of a shop, and what was begun and is not on record yet: one list as long as both stay the same. */
export function sprayedIn({ applications, underWay }: Pick<Shop, 'applications' | 'underWay'>): Application[] {
  if (!underWay) return applications;
  const before = together.get(underWay);
  if (before?.records === applications) return before.all;
  const all = [...applications, ...underWay];
  together.set(underWay, { records: applications, all });
  return all;
}
