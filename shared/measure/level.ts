import { type Stock, stock } from '../quantity/amounts';

/*
 * Levels in a container as they are judged by eye: in steps that a person can see.
 */

/**
 * Whether a count is so far from the books that it needs a reason: more than 5 % of what the container holds when full.
 */
export const needsReason = (found: Stock, told: Stock, size: Stock): boolean => Math.abs(found - told) * 20 > size;

/** The finest step in which a level is judged by eye: 1, 2 or 5 times a power of ten, at most a hundredth of the pack. */
export function eyeStep(size: Stock): Stock {
  let step = 1;
  for (let power = 1; power * 100 <= size; power *= 10) {
    for (const times of [1, 2, 5]) if (times * power * 100 <= size) step = times * power;
  }
  return stock(step);
}

/**
 * The level at a part of a container's height.
 *
 * Takes   the part, which may be beyond either end, and what the container holds when full
 * Rounds  to the nearest step that the eye can tell, and to full within half a step of it
 */
export function levelAtPart(part: number, size: Stock): Stock {
  const step = eyeStep(size);
  const steps = Math.round((part * size) / step);
  return inside(steps * step, size, step);
}

/** A level so many steps higher, or lower when negative: from a level between two steps to the next one. */
export function levelBySteps(level: Stock, steps: number, size: Stock): Stock {
  const step = eyeStep(size);
  const from = steps > 0 ? Math.floor(level / step) : Math.ceil(level / step);
  return inside((from + steps) * step, size, step);
}

/** A level in whole percent, for saying it. Rounds to the nearest. */
export const percentOf = (level: Stock, size: Stock): number => Math.round((level / size) * 100);

const inside = (level: number, size: Stock, step: number): Stock =>
  level > size - step / 2 ? size : stock(Math.max(0, level));
