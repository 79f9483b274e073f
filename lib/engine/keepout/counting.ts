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

/** The records of a shop that count, in its order: picked once for each list of records, which nobody changes. */
export function countingApplications({ applications }: Pick<Shop, 'applications'>): readonly Application[] {
  const counting = known.get(applications) ?? applications.filter(counts);
  known.set(applications, counting);
  return counting;
}
