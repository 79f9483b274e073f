import type { z } from 'zod';
import { tidyText } from '../text/text-fault';
import { type Path, pathText } from './path';
import type { OddValue } from './unread';

/** A thing without its odd values; null where it cannot be read without them. */
export type Mended = { thing: unknown; odd: OddValue[] };

/** How an odd value may be read: put tidily, as unknown, with the part it stands in unknown, or its line of a list left out. Each is tried on what the one before left. */
const WAYS = [tidy, unknown, unknownPart, withoutLine] as const;

/**
 * One thing of a shop, read without the values of it that no shop file may hold.
 *
 * Takes    the thing as the database has it, and what the contract says of such a thing
 * Gives    what can be read of it; null for `thing` where nothing can. An ingredient is never left out: a recipe or a
 *          record without one would be another
 */
export function mended(thing: unknown, contract: z.ZodType): Mended {
  const odd = new Map<string, OddValue>();
  let now = thing;
  for (const way of WAYS) {
    const issues = contract.safeParse(now).error?.issues ?? [];
    if (issues.length === 0) break;
    for (const { path, message } of issues) {
      const at = path as Path;
      const text = pathText(at);
      if (!odd.has(text)) odd.set(text, { path: text, at, message, is: valueAt(thing, at) });
    }
    // From the last on, so that a line that is left out moves no other.
    for (const { path } of issues.toReversed()) now = way(now, path as Path);
  }
  const read = contract.safeParse(now);
  return { thing: read.success ? now : null, odd: [...odd.values()] };
}

export function valueAt(value: unknown, path: Path): unknown {
  let at = value;
  for (const step of path) at = (at as Record<string | number, unknown> | null | undefined)?.[step];
  return at;
}

/** The same thing with another value at a place; undefined takes a line out of its list. */
export function withValueAt(value: unknown, [step, ...rest]: Path, now: unknown): unknown {
  if (step === undefined) return now;
  if (Array.isArray(value)) {
    const at = Number(step);
    const changed = withValueAt(value[at], rest, now);
    return changed === undefined ? value.toSpliced(at, 1) : value.with(at, changed);
  }
  if (typeof value !== 'object' || value === null) return value;
  return { ...value, [step]: withValueAt((value as Record<string, unknown>)[String(step)], rest, now) };
}

function tidy(thing: unknown, path: Path): unknown {
  const is = valueAt(thing, path);
  const text = typeof is === 'string' ? tidyText(is) : '';
  return text === '' || text === is ? thing : withValueAt(thing, path, text);
}

/** What has no name that can be read is called by its id. */
function unknown(thing: unknown, path: Path): unknown {
  // A lot that says nothing of what is left in it is full.
  if (path.length === 1 && path[0] === 'remaining') return thing;
  const isName = path.length === 1 && path[0] === 'name';
  return withValueAt(thing, path, isName ? valueAt(thing, ['id']) : null);
}

/** Such as the water of a shop, which says nothing without its alkalinity. */
function unknownPart(thing: unknown, path: Path): unknown {
  const part = path.slice(0, -1);
  return part.length === 0 || typeof part.at(-1) === 'number' ? thing : withValueAt(thing, part, null);
}

const NEVER_LEFT_OUT: readonly unknown[] = ['ingredients', 'recipes', 'benches', 'madeFrom'];

function withoutLine(thing: unknown, path: Path): unknown {
  const line = path.findLastIndex((step) => typeof step === 'number');
  if (line === -1 || NEVER_LEFT_OUT.includes(path[0])) return thing;
  return withValueAt(thing, path.slice(0, line + 1), undefined);
}
