import { grouped } from './grouped';

/*
 * Lists of a shop and of a plan are never changed, and a page asks them about each of their things. So a list is put in
 * order once, by what it is asked about, and asking about all of it takes as long as it is, and not its square.
 */

/** Finds the first thing of a list that has a key. */
export function firstBy<T, K>(keyOf: (one: T) => K): (list: readonly T[], key: K) => T | undefined {
  const all = allBy(keyOf);
  return (list, key) => all(list, key)[0];
}

/** Finds every thing of a list that has a key, in the order of the list. */
export function allBy<T, K>(keyOf: (one: T) => K): (list: readonly T[], key: K) => readonly T[] {
  const known = new WeakMap<readonly T[], Map<K, T[]>>();
  return (list, key) => {
    const groups = known.get(list) ?? grouped(list, keyOf);
    known.set(list, groups);
    return groups.get(key) ?? [];
  };
}
