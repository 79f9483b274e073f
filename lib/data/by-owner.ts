import { grouped } from '@/lib/engine/grouped';

/**
 * Rows by the thing they belong to, in the order they came in.
 *
 * All rows of a shop are read in one query and joined here. Asking the database for the rows of so many owners would
 * name each owner as a parameter of the query, and it takes only so many: a shop with years of records would not open.
 */
export function byOwner<T>(rows: readonly T[], ownerOf: (row: T) => string): (owner: string) => T[] {
  const owned = grouped(rows, ownerOf);
  return (owner) => owned.get(owner) ?? [];
}

/** The last version of each thing. Takes versions with the lowest number first. */
export function newestByOwner<T>(
  versions: readonly T[],
  ownerOf: (row: T) => string,
): (owner: string) => T | undefined {
  const newest = new Map(versions.map((version) => [ownerOf(version), version]));
  return (owner) => newest.get(owner);
}

/** One name for an owner whose key has several parts. */
export const keyOf = (...parts: (string | number)[]): string => JSON.stringify(parts);

/** As many owners as one statement names. */
export const MOST_NAMED = 400;

/** Owners in parts, each few enough to be named in one statement: for reading of a few thousand what is wanted of them alone. */
export const inParts = <T>(owners: readonly T[]): Generator<readonly T[]> => partsOf(owners, MOST_NAMED);

/** A list in parts of so many things. */
export function* partsOf<T>(list: readonly T[], many: number): Generator<readonly T[]> {
  for (let from = 0; from < list.length; from += many) yield list.slice(from, from + many);
}
