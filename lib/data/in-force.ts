import { type Instant, LAST_INSTANT } from '@/shared/time/instant';
import type { RecordVersion } from './record-versions';

/**
 * What counts of a record: its newest version, and while nobody has confirmed one that would open a bench earlier, what
 * keeps people out longer of the versions before it: their benches, their start, their products and the later end. An
 * interval that is made longer meanwhile counts from the later end, and for a product that the newest version leaves out.
 *
 * Takes    every version of one record, the first one first
 * Gives    an end that nobody knows as no end, and then the record is not withdrawn either: both keep people out
 * Throws   RangeError when there is no version
 */
export function inForce(versions: readonly RecordVersion[]): RecordVersion {
  const newest = versions.at(-1);
  if (!newest) throw new RangeError('record: it has no version');
  const open = unconfirmed(versions);
  if (!newest.isPending) return { ...newest, details: { ...newest.details, closedUntil: null } };
  const closedUntil = keptUntil(versions);
  const isUnknown = closedUntil === null || closedUntil >= LAST_INSTANT;
  return {
    ...newest,
    benches: [...new Set(open.flatMap(({ benches }) => benches))],
    startedAt: Math.min(...open.map(({ startedAt }) => startedAt)) as Instant,
    endedAt: isUnknown ? null : latestEnd(open),
    products: productsOf(open),
    details: {
      ...newest.details,
      closedUntil: isUnknown ? null : closedUntil,
      withdrawn: newest.details.withdrawn && !isUnknown,
    },
  };
}

/** Until when a record is kept closed because nobody has confirmed its newest versions; the last moment where nobody knows. Null: it is not. */
export function keptUntil(versions: readonly RecordVersion[]): number | null {
  const ends = unconfirmed(versions).flatMap(({ isPending, details }) =>
    isPending ? (details.closedUntil ?? []) : [],
  );
  return versions.at(-1)?.isPending ? Math.max(...ends) : null;
}

/** The latest end of versions, the newest first; null when the newest has none. */
const latestEnd = ([newest, ...older]: readonly RecordVersion[]): Instant | null =>
  older.reduce<Instant | null>(
    (latest, { endedAt }) => (latest !== null && endedAt !== null && endedAt > latest ? endedAt : latest),
    newest?.endedAt ?? null,
  );

/** What went in by any of the versions. A newest one that lists nothing sprayed its recipe, so nothing is added to it. */
function productsOf([newest, ...older]: readonly RecordVersion[]): RecordVersion['products'] {
  const products = [...(newest?.products ?? [])];
  if (products.length === 0) return products;
  for (const line of older.flatMap((version) => version.products))
    if (!products.some(({ product }) => product === line.product)) products.push(line);
  return products;
}

/** The newest versions that nobody has confirmed, and the one before them, the newest first. */
function unconfirmed(versions: readonly RecordVersion[]): RecordVersion[] {
  const newestFirst = [...versions].reverse();
  const settled = newestFirst.findIndex(({ isPending }) => !isPending);
  return settled === -1 ? newestFirst : newestFirst.slice(0, settled + 1);
}
