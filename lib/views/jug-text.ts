import { showVolume } from '@/shared/measure/show';
import { showMark } from '@/shared/measure/show-mark';
import { compare, divide, type Exact, exact, multiply, toNumber, ZERO } from '@/shared/quantity/exact';
import { stepUp, wholeDown } from '@/shared/quantity/rounding';
import type { Sprayer } from '../engine/shop';

const THOUSAND = exact(1000n);

/**
 * A volume in the unit and at the marks that are printed on a jug or a tank: "5.5 L" where it is marked by 0.5 L, "2 gal"
 * where it is full.
 *
 * Takes    mL
 * Rounds   to the next mark above; with no marks entered, as `showVolume` does in the unit that its capacity is said in
 */
export function jugText(ml: Exact, sprayer: Sprayer): string {
  const { capacity, measuringStep, printed } = sprayer;
  if (!printed) return showVolume(toNumber(ml) * 1000, 'metric');
  const isFull = compare(ml, capacity) === 0;
  if (isFull) return showMark(multiply(capacity, THOUSAND), printed.capacity);
  if (compare(measuringStep, ZERO) > 0) return showMark(multiply(stepUp(ml, measuringStep), THOUSAND), printed.step);
  return unmarked(ml, printed);
}

/** A volume in the unit that the capacity is said in, whatever marks there are: all fills together, or a part of one. */
export const jugUnitText = (ml: Exact, { printed }: Sprayer): string =>
  printed ? unmarked(ml, printed) : showVolume(toNumber(ml) * 1000, 'metric');

const unmarked = (ml: Exact, printed: NonNullable<Sprayer['printed']>): string =>
  showVolume(toNumber(ml) * 1000, /gal|quart|qt|pint|pt|oz|cup/i.test(printed.capacity) ? 'us' : 'metric');

/** From one volume to another: at the marks between them, "0.5 to 1 L", where there are any. One alone where both read the same. */
export function jugRange(least: Exact, most: Exact, sprayer: Sprayer): string {
  const { measuringStep, printed } = sprayer;
  const hasMarks = printed !== undefined && compare(measuringStep, ZERO) > 0;
  const from = hasMarks ? stepUp(least, measuringStep) : least;
  const upTo = hasMarks ? multiply(exact(wholeDown<number>(divide(most, measuringStep))), measuringStep) : most;
  const isBetween = hasMarks && compare(from, upTo) <= 0;
  const text = (ml: Exact) => (isBetween || !printed ? jugText(ml, sprayer) : unmarked(ml, printed));
  const [low, high] = isBetween ? [text(from), text(upTo)] : [text(least), text(most)];
  return low === high ? high : `${low} to ${high}`;
}
