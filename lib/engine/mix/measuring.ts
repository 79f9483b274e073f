import { isSpoon, showMark } from '@/shared/measure/show-mark';
import { TEASPOON } from '@/shared/measure/unit';
import { add, compare, divide, type Exact, exact, multiply, smaller, subtract, ZERO } from '@/shared/quantity/exact';
import { stepUp, wholeDown } from '@/shared/quantity/rounding';
import type { Measure, Product } from '../shop';

/** What is to be measured: µL of a liquid or mg of a powder, exact. */
export type Wanted = {
  amount: Exact;
  product: Pick<Product, 'form' | 'gramsPerTeaspoon'>;
  /** What the label allows at most, where measuring may not go over it. */
  most: Exact | null;
};

/** An amount as it can be measured: so many full fillings of one thing, and one more to a mark. */
export type Measured = {
  measure: Measure;
  full: number;
  /** The mark of the last filling, µL of a volume or mg of a mass; nothing when full ones are enough. */
  mark: Exact;
  /** What that comes to, in the unit of the amount. */
  amount: Exact;
  /** (measured − wanted) ÷ wanted: above nothing when too much goes in. */
  error: Exact;
};

/** More fillings than this of one thing are not measured out by hand as long as anything larger is there. */
export const MOST_FILLINGS = 10;

/** An error above this, either way, is flagged. */
export const TOLERANCE = exact('0.05');

/**
 * The amount that the shop's own measures come nearest to.
 *
 * Of what takes at most ten fillings, and of those what may be off by no more than the tolerance, if anything: the one with the least error; between equals, the one with the fewest fillings,
 * then a scale before a spoon, then the first in the shop's list. Where nothing is large enough for that, the one with the fewest fillings. Nothing
 * that would go over the label's most, as long as anything is below it.
 *
 * Takes    what is wanted, above nothing, and what the shop measures with
 * Gives    null when nothing there measures it: no measures, a powder with neither a scale nor a weighed teaspoon
 */
export function measured(wanted: Wanted, measures: readonly Measure[]): Measured | null {
  const all = scalesFirst(measures).flatMap((measure) => readings(wanted, measure));
  const handy = all.filter((one) => fillings(one) <= MOST_FILLINGS);
  const within = (handy.length > 0 ? handy : fewest(all)).filter(({ amount }) => !isOver(amount, wanted.most));
  const choice = within.length > 0 ? within : handy.length > 0 ? handy : fewest(all);
  const sure = choice.filter((one) => compare(mayBeOff(one, wanted), TOLERANCE) <= 0);
  return (sure.length > 0 ? sure : choice).reduce<Measured | null>(
    (best, one) => (best && !isBetter(one, best) ? best : one),
    null,
  );
}

/**
 * How far an amount may be off as it is measured, as a part of what is wanted.
 *
 *   (|what the marks come to − wanted| + half a reading step for each filling) ÷ wanted
 *
 * Gives    a part, exact: 0.05 is 5 %
 */
export function mayBeOff(one: Measured, { amount, product }: Pick<Wanted, 'amount' | 'product'>): Exact {
  const { step } = one.measure;
  const reading = multiply(multiply(HALF, multiply(step, exact(fillings(one)))), worthOf(product, one.measure) ?? ONE);
  return add(sizeOf(one.error), divide(reading, amount));
}

const HALF = exact('0.5');

/** A liquid is never weighed, so only a powder notices: a spoon of it is never as even as its weight. */
const scalesFirst = (measures: readonly Measure[]): Measure[] => [
  ...measures.filter(({ kind }) => kind === 'mass'),
  ...measures.filter(({ kind }) => kind === 'volume'),
];

export const fillings = ({ full, mark }: Measured): number => full + (isNothing(mark) ? 0 : 1);

/** The measured amount in words: "10 mL cylinder, to 3.5 mL" or "1 mL syringe, 3 full and 1 to 0.7 mL". */
export function measuredWith({ measure, full, mark }: Measured): string {
  // A scale that holds 2 kg and reads to 1 g shows grams.
  const to = showMark(mark, isNothing(measure.step) ? measure.holdsText : measure.stepText);
  if (isNothing(mark)) return `${measure.name}, ${full === 1 ? 'full' : `${full} full`}`;
  return full === 0 ? `${measure.name}, to ${to}` : `${measure.name}, ${full} full and 1 to ${to}`;
}

/** Whether an error is small enough to pass unflagged. */
export const isWithin = ({ error }: Measured): boolean => compare(sizeOf(error), TOLERANCE) <= 0;

/** Half of what is wanted, either way. */
const FAR_OFF = exact('0.5');

/** Whether marks are so far from an amount that reading them would mislead: that is not poured at all. */
export const isFarOff = ({ error }: Measured): boolean => compare(sizeOf(error), FAR_OFF) > 0;

/** The two marks that a measure has next to an amount. */
function readings(wanted: Wanted, measure: Measure): Measured[] {
  const worth = worthOf(wanted.product, measure);
  if (!worth) return [];
  const { holds, step } = measure;
  const inMeasure = divide(wanted.amount, worth);
  const full = wholeDown<number>(divide(inMeasure, holds));
  const rest = subtract(inMeasure, multiply(exact(full), holds));
  const above = smaller(stepUp(rest, step), holds);
  const marks = [above, isNothing(step) ? rest : stepDown(rest, step)];
  return marks.flatMap((mark) => readingAt(wanted, measure, worth, full, mark));
}

function readingAt(wanted: Wanted, measure: Measure, worth: Exact, full: number, mark: Exact): Measured[] {
  const isFull = compare(mark, measure.holds) === 0;
  const inMeasure = add(multiply(exact(full), measure.holds), mark);
  // Nothing is no measure of something, however little it is.
  if (isNothing(inMeasure)) return [];
  const amount = multiply(inMeasure, worth);
  const error = divide(subtract(amount, wanted.amount), wanted.amount);
  return [{ measure, full: isFull ? full + 1 : full, mark: isFull ? ZERO : mark, amount, error }];
}

/** What each µL or mg of a measure is of the product: null where it cannot measure it. */
export function worthOf({ form, gramsPerTeaspoon }: Wanted['product'], measure: Measure): Exact | null {
  if (form === 'liquid') return measure.kind === 'volume' ? ONE : null;
  if (measure.kind === 'mass') return ONE;
  if (gramsPerTeaspoon === null || !isSpoon(measure)) return null;
  return divide(multiply(exact(gramsPerTeaspoon), exact(1000n)), TEASPOON.worth);
}

const ONE = exact(1n);

const stepDown = (value: Exact, step: Exact): Exact => multiply(exact(BigInt(wholeDown(divide(value, step)))), step);

function fewest(all: Measured[]): Measured[] {
  const least = Math.min(...all.map(fillings));
  return all.filter((one) => fillings(one) === least);
}

function isBetter(one: Measured, best: Measured): boolean {
  const order = compare(sizeOf(one.error), sizeOf(best.error));
  return order === 0 ? fillings(one) < fillings(best) : order < 0;
}

const isOver = (amount: Exact, most: Exact | null): boolean => most !== null && compare(amount, most) > 0;
const isNothing = (amount: Exact): boolean => compare(amount, ZERO) === 0;
/** How far off, whichever way. */
const sizeOf = (error: Exact): Exact => (compare(error, ZERO) < 0 ? subtract(ZERO, error) : error);
