import { z } from 'zod';

/** Which page of a long list an address asks for: a number, `all` of them for printing, or nothing for the first. */
export const PageAsked = z
  .string()
  .regex(/^([1-9]\d{0,3}|all)$/)
  .catch('');

/** One page of a long list. */
export type PageOf<T> = { shown: T[]; page: number; pages: number; isAll: boolean };

/**
 * A list in pages that weigh about the same.
 *
 * Takes   what is asked for, how much one page holds at most, and what one thing of the list weighs
 * Gives   the last page for one that is past it; a page holds at least one thing, however heavy
 */
export function pageOf<T>(list: readonly T[], asked: string, most: number, weightOf: (one: T) => number): PageOf<T> {
  const pages: T[][] = [[]];
  let weight = 0;
  for (const one of list) {
    const own = weightOf(one);
    if (weight > 0 && weight + own > most) {
      pages.push([]);
      weight = 0;
    }
    weight += own;
    pages.at(-1)?.push(one);
  }
  if (asked === 'all') return { shown: [...list], page: 1, pages: pages.length, isAll: true };
  const page = Math.min(pages.length, Math.max(1, Number(asked)));
  return { shown: pages[page - 1] ?? [], page, pages: pages.length, isAll: false };
}
