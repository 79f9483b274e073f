import { type Instant, isInstant, laterOf } from '@/shared/time/instant';
import type { Application, Bench } from '../shop';
import { countingApplications } from './counting';
import { reopensAfter } from './reopening';

/** A record that counts, its place among all records, and when the benches on it reopen: null when nobody knows. */
export type IndexedRecord = { application: Application; place: number; reopensAt: Instant | null };

/**
 * Records of a shop in the orders in which the keep-out questions ask for them. A question about one moment then looks at
 * the few records that matter, instead of at years of them.
 */
type RecordIndex = {
  /** The latest end first; those whose end nobody knows before all others. */
  byEnd: IndexedRecord[];
  /** The latest start first; only records whose start can be read. */
  byStart: Application[];
  /** Of each bench: the places of the records on it, in the order of the shop. */
  placesOfBench: Map<string, number[]>;
  /** Of each bench: when the records on it began, the earliest first, and the latest end of all up to that one. */
  endsOfBench: Map<string, { starts: number[]; latest: (Instant | null)[] }>;
};

const known = new WeakMap<readonly Application[], RecordIndex>();

/** The index of a list of records that nobody changes; made once for each list. */
function recordIndex(applications: Application[]): RecordIndex {
  const made = known.get(applications) ?? indexOf(applications);
  known.set(applications, made);
  return made;
}

function indexOf(applications: Application[]): RecordIndex {
  const counting = countingApplications({ applications });
  const records = counting.map((application, place) => ({ application, place, reopensAt: reopeningOf(application) }));
  return {
    byEnd: records.toSorted((a, b) => endOf(b) - endOf(a)),
    byStart: counting.filter(({ startedAt }) => isInstant(startedAt)).sort((a, b) => b.startedAt - a.startedAt),
    placesOfBench: placesByBench(counting),
    endsOfBench: endsByBench(records),
  };
}

/** A record that names no bench may have been on any, and never reopens it. */
const reopeningOf = (application: Application): Instant | null =>
  isSomewhere(application) ? reopensAfter(application) : null;

/** True when a record says on which benches it was. */
export const isSomewhere = ({ benches }: Pick<Application, 'benches'>): boolean =>
  Array.isArray(benches) && benches.length > 0;

const endOf = ({ reopensAt }: IndexedRecord): number => reopensAt ?? Number.MAX_SAFE_INTEGER;

function placesByBench(counting: readonly Application[]): RecordIndex['placesOfBench'] {
  const found: RecordIndex['placesOfBench'] = new Map();
  for (const [place, application] of counting.entries()) {
    for (const { id } of isSomewhere(application) ? application.benches : []) {
      const places = found.get(id);
      if (places) places.push(place);
      else found.set(id, [place]);
    }
  }
  return found;
}

function endsByBench(records: readonly IndexedRecord[]): RecordIndex['endsOfBench'] {
  const found: RecordIndex['endsOfBench'] = new Map();
  const inOrder = records
    .filter(({ application }) => isSomewhere(application) && !Number.isNaN(application.startedAt))
    .sort((a, b) => a.application.startedAt - b.application.startedAt);
  for (const { application, reopensAt } of inOrder) {
    for (const { id } of application.benches) {
      const ends = found.get(id) ?? { starts: [], latest: [] };
      found.set(id, ends);
      ends.starts.push(application.startedAt);
      ends.latest.push(laterOf(ends.latest.at(-1) ?? null, reopensAt));
    }
  }
  return found;
}

/** The records whose end is unknown or after a moment, begun by then or not, in the order of the shop. */
export function notEndedBy(applications: Application[], moment: Instant): IndexedRecord[] {
  const { byEnd } = recordIndex(applications);
  const ended = byEnd.findIndex(({ reopensAt }) => reopensAt !== null && reopensAt <= moment);
  return byEnd.slice(0, ended === -1 ? byEnd.length : ended).sort((a, b) => a.place - b.place);
}

/**
 * The records that can keep people out at a moment, in the order of the shop: those that have begun and have not ended.
 * One whose start cannot be read may have begun, so it is among them.
 */
export const runningRecords = (applications: Application[], now: Instant): IndexedRecord[] =>
  notEndedBy(applications, now).filter(({ application: { startedAt } }) => !isInstant(startedAt) || startedAt <= now);

/** The records that name at least one of some benches, in the order of the shop. */
export function recordsOn(applications: Application[], benches: readonly Pick<Bench, 'id'>[]): Application[] {
  const { placesOfBench } = recordIndex(applications);
  const counting = countingApplications({ applications });
  const places = new Set(benches.flatMap(({ id }) => placesOfBench.get(id) ?? []));
  return [...places].sort((a, b) => a - b).flatMap((place) => counting[place] ?? []);
}

/** The records that began from one moment on and before another, in the order of the shop. */
export function recordsBegun(applications: Application[], from: Instant, before: Instant): Application[] {
  const begun: Application[] = [];
  for (const application of recordIndex(applications).byStart) {
    if (application.startedAt < from) break;
    if (application.startedAt < before) begun.push(application);
  }
  return inOrderOf(applications, begun);
}

/** The records that begin after a moment, in the order of the shop. */
export function recordsToCome(applications: Application[], now: Instant): Application[] {
  const { byStart } = recordIndex(applications);
  const first = byStart.findIndex(({ startedAt }) => startedAt <= now);
  return inOrderOf(applications, byStart.slice(0, first === -1 ? byStart.length : first));
}

function inOrderOf(applications: Application[], some: readonly Application[]): Application[] {
  if (some.length < 2) return [...some];
  const wanted = new Set(some);
  return countingApplications({ applications }).filter((application) => wanted.has(application));
}

/** The latest end of the records of a bench that had begun by a moment. Null: there is none, or nobody knows any. */
export function latestEnd(applications: Application[], { id }: Pick<Bench, 'id'>, now: Instant): Instant | null {
  const ends = recordIndex(applications).endsOfBench.get(id);
  // What is asked about is nearly always now, which is near the end of the list.
  return ends?.latest[ends.starts.findLastIndex((start) => start <= now)] ?? null;
}
