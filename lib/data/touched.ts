import type { Collection } from '@/lib/engine/exchange/compare';

/**
 * What a command has written to, so that only that part of the shop is read again before it is kept. Whoever writes rows
 * notes it here; a command of which nothing is noted has the whole shop read again.
 */
export class Touched {
  readonly things = new Map<Collection | 'shop', Set<string>>();
  private isOutside = false;

  /** Things of a list were written, by their ids in the database. Of the settings, the list is 'shop' and there is no id. */
  add(list: Collection | 'shop', ids: Iterable<string> = []): void {
    const known = this.things.get(list) ?? new Set();
    for (const id of ids) known.add(id);
    if (known.size > 0 || list === 'shop') this.things.set(list, known);
  }

  /** Something was written that is no part of a shop file: a link, where alerts go, a safety data sheet. */
  addOutside(): void {
    this.isOutside = true;
  }

  /** Whether nothing says what was written, so that it may have been anything. */
  get isUnknown(): boolean {
    return this.things.size === 0 && !this.isOutside;
  }

  /** How many things were written. */
  get count(): number {
    return [...this.things.values()].reduce((total, { size }) => total + size, 0);
  }

  of(list: Collection): ReadonlySet<string> {
    return this.things.get(list) ?? NONE;
  }
}

const NONE: ReadonlySet<string> = new Set();
