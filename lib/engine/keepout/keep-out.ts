import type { Instant } from '@/shared/time/instant';
import type { Application, Bench, Shop } from '../shop';
import { isMoment, reopensAfter } from './reopening';

/**
 * Whether people may stand at a bench. `open` means that every recorded interval has elapsed, and nothing more.
 * `unknown` means keep out. `because` lists the applications that decide it.
 */
export type BenchState = {
  bench: Bench;
  state: 'open' | 'closed' | 'unknown';
  until: Instant | null;
  because: Application[];
};

/**
 * Which benches people keep out of at a moment, from application records alone.
 *
 *   until = the latest end + longest REI in the mix, of all applications on the bench that have begun
 *
 * Takes   the shop, and the moment asked about
 * Gives   one state per bench, in the shop's order. Unknown when any application that has begun lacks an end or an
 *         interval, or holds a value that cannot be; else closed while now is before `until`, to the millisecond; else open
 * Rounds  nothing: an interval is never shortened
 * Source  contract "Keep-out"; planned sprayings close nothing, since only a record says that something was sprayed
 */
export function keepOut(shop: Shop, now: Instant): BenchState[] {
  if (!isMoment(now)) return shop.benches.map((bench) => ({ bench, state: 'unknown', until: null, because: [] }));
  const records = recordsByBench(shop.applications, now);
  return shop.benches.map((bench) => ({ bench, ...standingOf(records.get(bench.id) ?? [], now) }));
}

type Begun = { application: Application; reopensAt: Instant | null };

/** The applications of each bench that have begun. One whose start cannot be read may have begun, so it counts. */
function recordsByBench(applications: Application[], now: Instant): Map<string, Begun[]> {
  const found = new Map<string, Begun[]>();
  for (const application of applications) {
    if (application.startedAt > now) continue;
    const record = { application, reopensAt: reopensAfter(application) };
    for (const { id } of application.benches) {
      const records = found.get(id);
      if (records) records.push(record);
      else found.set(id, [record]);
    }
  }
  return found;
}

function standingOf(records: Begun[], now: Instant): Omit<BenchState, 'bench'> {
  const unknown = records.filter(({ reopensAt }) => reopensAt === null);
  if (unknown.length > 0) return { state: 'unknown', until: null, because: applicationsOf(unknown) };
  let until: Instant | null = null;
  for (const { reopensAt } of records) {
    if (reopensAt !== null && (until === null || reopensAt > until)) until = reopensAt;
  }
  if (until === null || now >= until) return { state: 'open', until: null, because: [] };
  const last = until;
  return { state: 'closed', until, because: applicationsOf(records.filter(({ reopensAt }) => reopensAt === last)) };
}

const applicationsOf = (records: Begun[]): Application[] => {
  const once = new Set(records.map(({ application }) => application));
  return [...once];
};
