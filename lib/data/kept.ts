/** How much is kept: so many things, and together at most so heavy. */
export type Most = { things: number; weight?: number };

/**
 * Things kept ready by name. The one that nobody has asked for the longest makes room; the newest always stays, however
 * heavy it is.
 */
export class Kept<T> {
  private readonly things = new Map<string, { thing: T; weight: number }>();
  private weight = 0;

  constructor(private readonly most: Most) {}

  /** Undefined when nothing is kept under this name. */
  get(name: string): T | undefined {
    const kept = this.things.get(name);
    if (!kept) return undefined;
    this.things.delete(name);
    this.things.set(name, kept);
    return kept.thing;
  }

  /** Keep a thing in the place of what was kept under its name. */
  set(name: string, thing: T, weight = 0): void {
    this.delete(name);
    this.things.set(name, { thing, weight });
    this.weight += weight;
    for (const oldest of this.things.keys()) {
      if (oldest === name || this.hasRoom()) return;
      this.delete(oldest);
    }
  }

  delete(name: string): void {
    this.weight -= this.things.get(name)?.weight ?? 0;
    this.things.delete(name);
  }

  clear(): void {
    this.things.clear();
    this.weight = 0;
  }

  private hasRoom(): boolean {
    return this.things.size <= this.most.things && this.weight <= (this.most.weight ?? Number.POSITIVE_INFINITY);
  }
}

/** What this process keeps of one kind. */
export const keptHere = <T>(kind: string, most: Most): Kept<T> => onceHere(kind, () => new Kept<T>(most));

/** What this process keeps with things as long as these are kept themselves. */
export const keptWith = <K extends object, T>(kind: string): WeakMap<K, T> => onceHere(kind, () => new WeakMap<K, T>());

/** Pages and routes are bundles of their own, and share what the process has once. */
function onceHere<T extends object>(kind: string, make: () => T): T {
  const house: { kept?: Map<string, object> } & typeof globalThis = globalThis;
  house.kept ??= new Map();
  const kept = house.kept.get(kind) ?? make();
  house.kept.set(kind, kept);
  return kept as T;
}
