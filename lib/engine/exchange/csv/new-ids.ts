import { SHELF_PAGES } from '@/shared/forms/product';
import { idFromName } from '@/shared/shop-file/id-from-name';

const LONGEST = 64;

/**
 * Makes ids for things that came without one: from their own words, and never one that is taken. The same lines over the
 * same shop always get the same ids, so that what was looked at beforehand is what is brought in.
 *
 * Takes    every id that is taken
 */
export function idMaker(taken: Iterable<string>): (words: readonly unknown[]) => string {
  const used = new Set([...taken, ...SHELF_PAGES]);
  const tried = new Map<string, number>();
  return (words) => {
    const base = idFromName(words.filter((word) => typeof word === 'string').join(' '), []);
    let number = tried.get(base) ?? 0;
    let id: string;
    do {
      number += 1;
      id = number === 1 ? base : cut(base, `-${number}`);
    } while (used.has(id));
    tried.set(base, number);
    used.add(id);
    return id;
  };
}

function cut(base: string, end: string): string {
  const letters = [...base];
  while (letters.join('').length + end.length > LONGEST) letters.pop();
  return letters.join('') + end;
}
