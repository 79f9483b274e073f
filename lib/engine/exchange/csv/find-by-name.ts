import { type Reading, read, unreadable } from '@/shared/outcome';
import { nearest } from '@/shared/shop-file/nearest';

type Named = { id: string; name: string };

/** Finds a thing by what a cell says of it. */
export type Find = (text: string) => Reading<string>;

/**
 * Products or suppliers by their id, or by their name whatever its case.
 *
 * Gives    the id
 * Refuses  a name that several have, and what is neither; then with one that was perhaps meant, and what else can be done
 */
export function findByName(what: string, things: readonly Named[], otherwise: string): Find {
  const ids = new Set(things.map(({ id }) => id));
  const byName = new Map<string, string[]>();
  for (const { id, name } of things) byName.set(lowered(name), [...(byName.get(lowered(name)) ?? []), id]);
  const missed = new Map<string, Reading<string>>();
  return (text) => {
    if (ids.has(text)) return read(text);
    const [found, ...others] = byName.get(lowered(text)) ?? [];
    if (found !== undefined && others.length === 0) return read(found);
    if (found !== undefined) {
      return unreadable(
        `Several are called "${text}". Write the id of the ${what} that is meant: ${[found, ...others].join(', ')}.`,
      );
    }
    const said = missed.get(text) ?? unreadable(noneLike(what, text, things, otherwise));
    missed.set(text, said);
    return said;
  };
}

/** A name as two people would write it. */
export const lowered = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase();

function noneLike(what: string, text: string, things: readonly Named[], otherwise: string): string {
  const meant =
    nearest(
      text,
      things.map(({ name }) => name),
    ) ??
    nearest(
      text,
      things.map(({ id }) => id),
    );
  const hint = meant ? ` Did you mean "${meant}"?` : '';
  return `There is no ${what} "${text}".${hint} ${otherwise}`;
}
