import { type Micros, micros, plus } from '@/shared/quantity/amounts';

/** The sum of what each of some things costs; unknown (null) as soon as one of them is. */
export function sumOrUnknown<T>(things: readonly T[], costOf: (thing: T) => Micros | null): Micros | null {
  let total = micros(0);
  for (const thing of things) {
    const cost = costOf(thing);
    if (cost === null) return null;
    total = plus(total, cost);
  }
  return total;
}

/** The sum of those costs that are known. How many are not must be said beside it. */
export function sumKnown<T>(things: readonly T[], costOf: (thing: T) => Micros | null): Micros {
  let total = micros(0);
  for (const thing of things) total = plus(total, costOf(thing) ?? micros(0));
  return total;
}
