import type { Minutes } from '../quantity/amounts';
import { exact, fraction, multiply } from '../quantity/exact';
import { wholeDown, wholeUp } from '../quantity/rounding';

const SIXTY = exact(60n);
const PER_MILLION = 1_000_000;

/** Hours as whole minutes, rounded up: for an interval that may never be shortened. Exact: 12.5 is 750, 0.01 is 1. */
export const minutesUp = (hours: number): Minutes => wholeUp<Minutes>(multiply(exact(hours), SIXTY));

/** Hours as whole minutes, rounded down: for a time that may never be exceeded. */
export const minutesDown = (hours: number): Minutes => wholeDown<Minutes>(multiply(exact(hours), SIXTY));

/**
 * Minutes as the number of hours that `minutesUp` reads as the same minutes: 725 is 12.083333.
 *
 * Rounds  down to a millionth of an hour
 */
export const hoursForUp = (minutes: Minutes): number =>
  wholeDown<number>(fraction(BigInt(minutes) * 1_000_000n, 60n)) / PER_MILLION;

/**
 * Minutes as the number of hours that `minutesDown` reads as the same minutes: 725 is 12.083334.
 *
 * Rounds  up to a millionth of an hour
 */
export const hoursForDown = (minutes: Minutes): number =>
  wholeUp<number>(fraction(BigInt(minutes) * 1_000_000n, 60n)) / PER_MILLION;
