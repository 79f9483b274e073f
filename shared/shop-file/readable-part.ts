import type { Path } from './path';

/** A shape of which any part may be missing, because it could not be read. */
export type Loose<T> = T extends readonly (infer Each)[]
  ? readonly (Loose<Each> | null | undefined)[] | null | undefined
  : T extends object
    ? { readonly [Field in keyof T]?: Loose<T[Field]> } | null | undefined
    : T | null | undefined;

/** What could be read of a file, so that the rest of it is still checked when one part of it is wrong. */
export type ReadablePart<T> = {
  part: Loose<T>;
  /** Whether something stood here that could not be read: then nothing is to be concluded from its absence. */
  isUnreadable: (path: Path) => boolean;
};

type Unreadable = Map<string | number, Unreadable> & { whole?: boolean };

/**
 * A file without the parts that could not be read. What stays has the shape of the contract, save what was left out of
 * it, which stays out.
 *
 * Takes  the file as JSON gave it, and the place of everything in it that the contract refused
 */
export function readablePart<T>(raw: unknown, unreadable: Iterable<Path>): ReadablePart<T> {
  const marks: Unreadable = new Map();
  for (const path of unreadable) mark(marks, path);
  const isUnreadable = (path: Path): boolean => {
    let at: Unreadable | undefined = marks;
    for (const step of path) {
      if (at?.whole) return true;
      at = at?.get(step);
    }
    return at?.whole === true;
  };
  // The contract has looked at every value, and each one it refused is cut out: what is left is of its shape.
  return { part: without(raw, marks) as Loose<T>, isUnreadable };
}

function mark(marks: Unreadable, path: Path): void {
  let at = marks;
  for (const step of path) {
    const next: Unreadable = at.get(step) ?? new Map();
    at.set(step, next);
    at = next;
  }
  at.whole = true;
}

function without(value: unknown, marks: Unreadable | undefined): unknown {
  if (!marks) return value;
  if (marks.whole) return undefined;
  if (Array.isArray(value)) return value.map((each, index) => without(each, marks.get(index)));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([field, each]) => [field, without(each, marks.get(field))]));
}

/** What could be read of a list, each with its place. */
export function* eachOf<T>(list: readonly (T | null | undefined)[] | null | undefined): Generator<[number, T]> {
  for (const [index, each] of (list ?? []).entries()) if (each != null) yield [index, each];
}

/** Says that something is wrong at a place, unless a part that the complaint rests on could not be read. */
export type Complain = (path: Path, message: string, restsOn?: readonly Path[]) => void;
