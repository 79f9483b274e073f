import type { CsvList } from './column';

/** Words that are pages of the shelf, and so cannot be the id of a product. */
const PAGES = ['new', 'suppliers', 'receive', 'bottle', 'labels', 'scan'];
const LONGEST = 48;

/**
 * Makes ids for things that came without one: from their own words, and never one that is taken. The same lines over the
 * same shop always get the same ids, so that what was looked at beforehand is what is brought in.
 *
 * Takes    the list, and every id that is taken in it
 */
export function idMaker(list: CsvList | 'suppliers', taken: Iterable<string>): (words: readonly string[]) => string {
  const used = new Set([...taken, ...PAGES]);
  const next = new Map<string, number>();
  return (words) => {
    const base = plainId(words.join(' ')) || list.slice(0, -1);
    let number = next.get(base) ?? 1;
    while (used.has(number === 1 ? base : `${base}-${number}`)) number += 1;
    const id = number === 1 ? base : `${base}-${number}`;
    next.set(base, number + 1);
    used.add(id);
    return id;
  };
}

const plainId = (words: string): string =>
  words
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST)
    .replace(/^-|-$/g, '');
