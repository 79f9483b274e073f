import { type Instant, isInstant } from '@/shared/time/instant';
import type { OpenSpraying } from '../ahead/turns-on-record';
import type { Application, Bench, Shop } from '../shop';
import { sprayedIn } from './counting';
import { type IndexedRecord, isSomewhere, runningRecords } from './record-index';

/**
 * Whether people may stand at a bench. `open` means that every recorded interval has elapsed, and nothing more.
 * `unknown` means keep out. `because` lists the applications that decide it, `unrecorded` the planned sprayings that do.
 */
export type BenchState = {
  bench: Bench;
  state: 'open' | 'closed' | 'unknown';
  until: Instant | null;
  because: Application[];
  unrecorded: OpenSpraying[];
};

/**
 * Which benches people keep out of at a moment.
 *
 *   until = the latest end + longest REI in the mix, of all applications on the bench that have begun
 *
 * Takes   the shop, the moment asked about, and planned sprayings that were to begin before it and are not on record, as
 *         `unrecordedSprayings` finds them: somebody may be spraying, so their benches are kept out of until it is said
 *         what became of them. Without any it is records alone that count, as the shop file defines
 * Gives   one state per bench, in the shop's order. Unknown when any application that has begun lacks an end or an
 *         interval, or holds a value that cannot be, when a spraying is not on record, and when something of the shop
 *         that may have closed the bench cannot be read; else closed while now is before
 *         `until`, to the millisecond; else open
 * Rounds  nothing: an interval is never shortened
 * Source  contract "Keep-out"
 */
export function keepOut(shop: Shop, now: Instant, unrecorded: readonly OpenSpraying[] = []): BenchState[] {
  if (!isInstant(now)) return shop.benches.map((bench) => ({ bench, ...NOBODY_KNOWS }));
  const records = recordsByBench(shop, now);
  return shop.benches.map((bench) => {
    // What cannot be read may have closed it.
    if (shop.unreadBenches?.has(bench.id)) return { bench, ...NOBODY_KNOWS };
    const due = unrecorded.filter(({ open }) => open.some(({ id }) => id === bench.id));
    return { bench, ...standingOf(records.get(bench.id) ?? [], due, now) };
  });
}

type Standing = Omit<BenchState, 'bench'>;

const NOBODY_KNOWS: Standing = { state: 'unknown', until: null, because: [], unrecorded: [] };

type Begun = Pick<IndexedRecord, 'application' | 'reopensAt'>;

/**
 * The applications of each bench that can keep people out of it. One that names no bench may have been on any. One that
 * has ended decides nothing, whatever else there is.
 */
function recordsByBench(shop: Shop, now: Instant): Map<string, Begun[]> {
  const found = new Map<string, Begun[]>();
  for (const record of runningRecords(sprayedIn(shop), now)) {
    const { application } = record;
    for (const { id } of isSomewhere(application) ? application.benches : shop.benches) {
      const records = found.get(id);
      if (records) records.push(record);
      else found.set(id, [record]);
    }
  }
  return found;
}

function standingOf(records: Begun[], unrecorded: OpenSpraying[], now: Instant): Standing {
  const unknown = records.filter(({ reopensAt }) => reopensAt === null);
  if (unknown.length > 0 || unrecorded.length > 0) {
    return { ...NOBODY_KNOWS, because: applicationsOf(unknown), unrecorded };
  }
  let until: Instant | null = null;
  for (const { reopensAt } of records) {
    if (reopensAt !== null && (until === null || reopensAt > until)) until = reopensAt;
  }
  if (until === null || now >= until) return { state: 'open', until: null, because: [], unrecorded };
  const last = until;
  const because = applicationsOf(records.filter(({ reopensAt }) => reopensAt === last));
  return { state: 'closed', until, because, unrecorded };
}

const applicationsOf = (records: Begun[]): Application[] => {
  const once = new Set(records.map(({ application }) => application));
  return [...once];
};
