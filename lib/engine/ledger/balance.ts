import { minus, plus, type Stock, stock } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';
import { isOut, type Movement } from './movement';

/**
 * What is left in a container: the sum of its movements, and nothing else.
 *
 * Takes    the movements of one container, in the order in which they were recorded
 * Throws   RangeError when it would ever have been below zero
 */
export const balance = (movements: readonly Movement[]): Stock => movements.reduce(after, stock(0));

/**
 * The least and the most that a container held at an instant or at any time after it, counting movements when they
 * happened, and those of one instant as they were recorded. A draw that is entered late may take no more than the
 * least: what was taken afterwards has been taken.
 *
 * Takes    the movements of one container, in the order in which they were recorded
 */
export function rangeFrom(movements: readonly Movement[], at: Instant): { now: Stock; least: Stock; most: Stock } {
  const inTime = byTime(movements);
  const earlier = inTime.filter(({ occurredAt }) => occurredAt <= at);
  const now = balance(earlier);
  let [held, least, most] = [now, now, now];
  for (const movement of inTime.slice(earlier.length)) {
    held = after(held, movement);
    if (held < least) least = held;
    if (held > most) most = held;
  }
  return { now, least, most };
}

/** Whether a container, with these movements, never held less than nothing nor more than its size, at any instant. */
export function holdsTogether(movements: readonly Movement[], size: Stock): boolean {
  let held = 0;
  return byTime(movements).every((movement) => {
    held += isOut(movement) ? -movement.amount : movement.amount;
    return held >= 0 && held <= size;
  });
}

const after = (held: Stock, movement: Movement): Stock =>
  isOut(movement) ? minus(held, movement.amount) : plus(held, movement.amount);

/** Sorting keeps the recorded order among movements of one instant. */
const byTime = (movements: readonly Movement[]): Movement[] =>
  [...movements].sort((a, b) => a.occurredAt - b.occurredAt);
