import type { Dose } from '@/shared/measure/dose';
import { isSpoon, type Mark, markOf, showMark } from '@/shared/measure/show-mark';
import { TEASPOON } from '@/shared/measure/unit';
import {
  add,
  compare,
  divide,
  type Exact,
  exact,
  multiply,
  smaller,
  subtract,
  toNumber,
  ZERO,
} from '@/shared/quantity/exact';
import { stepUp, wholeDown, wholeNearest } from '@/shared/quantity/rounding';
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
 * An amount as a person measures it with the shop's own tools.
 *
 * Of the marks that may be off by no more than the tolerance, the tool's own reading error included: the one with the
 * fewest fillings, and between equals the one that may be off least. Where there is none: the one that may be off least,
 * among those that come within the tolerance by their marks alone, if any. Between equals a scale before a spoon, then
 * the first in the shop's list. More than ten fillings only where nothing larger is there. Nothing goes over the label's
 * most, as long as anything is below it.
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
  if (sure.length > 0) return surest(fewest(sure), wanted);
  const near = choice.filter(isWithin);
  return surest(near.length > 0 ? near : choice, wanted);
}

/** The one that may be off least; between equals the one with the fewest fillings, then the first. */
function surest(all: readonly Measured[], wanted: Wanted): Measured | null {
  return all.reduce<Measured | null>((best, one) => {
    const order = best ? compare(mayBeOff(one, wanted), mayBeOff(best, wanted)) : -1;
    return best && (order > 0 || (order === 0 && fillings(one) >= fillings(best))) ? best : one;
  }, null);
}

/** More drops than this are not counted. */
const MOST_DROPS = 60;

/**
 * How an amount is measured whose dose is said in drops: in drops, of which a person counts sixty at most.
 *
 * Takes    what a drop of the shop's own dropper is, µL
 * Rounds   to whole drops, one at least; down where the next would go over the label's most
 * Gives    null where the dose is not said in drops, or there are too many of them
 */
export function measuredInDrops(wanted: Wanted, dose: Dose, drop: Exact): Measured | null {
  if (wanted.product.form !== 'liquid' || !/\bdrops?\b/i.test(dose.text)) return null;
  const drops = divide(wanted.amount, drop);
  const nearest = Math.max(1, wholeNearest<number>(drops));
  const isTooMuch = nearest > 1 && isOver(multiply(exact(nearest), drop), wanted.most);
  const count = isTooMuch ? Math.max(1, wholeDown<number>(drops)) : nearest;
  if (count > MOST_DROPS) return null;
  const measure: Measure = {
    ...{ name: 'dropper', kind: 'volume', isCounted: true },
    ...{ holds: multiply(exact(MOST_DROPS), drop), step: drop },
    ...{ holdsText: `${MOST_DROPS} drops`, stepText: '1 drop' },
  };
  const amount = multiply(exact(count), drop);
  const error = divide(subtract(amount, wanted.amount), wanted.amount);
  return { measure, full: 0, mark: amount, amount, error };
}

/**
 * How far an amount may be off as it is measured, as a part of what is wanted.
 *
 *   (|what the marks come to − wanted| + half a reading step for each filling) ÷ wanted
 *
 * Drops are counted and not read, so they have no reading error.
 *
 * Gives    a part, exact: 0.05 is 5 %
 */
export function mayBeOff(one: Measured, { amount, product }: Pick<Wanted, 'amount' | 'product'>): Exact {
  const { step, isCounted } = one.measure;
  if (isCounted) return sizeOf(one.error);
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
export function measuredWith(one: Measured): string {
  const { measure, full, mark } = one;
  if (measure.isCounted) return `${measure.name}, ${markText(one)}`;
  // A scale that holds 2 kg and reads to 1 g shows grams.
  const to = showMark(mark, isNothing(measure.step) ? measure.holdsText : measure.stepText);
  if (isNothing(mark)) return `${measure.name}, ${full === 1 ? 'full' : `${full} full`}`;
  return full === 0 ? `${measure.name}, to ${to}` : `${measure.name}, ${full} full and 1 to ${to}`;
}

/** The amount in what is printed on the tool: "1/4 tsp", "10 drops", "8 mL", also over several fillings. */
export function markText(one: Measured): string {
  const { figure, unit } = markOn(one);
  return unit === '' ? figure : `${figure} ${unit}`;
}

/** The same with the figure apart from its unit. */
export function markOn({ measure, full, mark }: Measured): Mark {
  const { holds, step, holdsText, stepText, isCounted } = measure;
  const all = add(multiply(exact(full), holds), mark);
  if (!isCounted) return markOf(all, isNothing(step) ? holdsText : stepText);
  const drops = toNumber(divide(all, step));
  return { figure: String(drops), unit: drops === 1 ? 'drop' : 'drops' };
}

/** Whether an error is small enough to pass unflagged. */
export const isWithin = ({ error }: Measured): boolean => compare(sizeOf(error), TOLERANCE) <= 0;

/** Half of what is wanted, either way. */
const FAR_OFF = exact('0.5');

/** Whether marks are so far from an amount that reading them would mislead: that is not poured at all. */
export const isFarOff = ({ error }: Measured): boolean => compare(sizeOf(error), FAR_OFF) > 0;

/** The two marks that a measure has next to an amount, and full fillings alone, which take a draw less. */
function readings(wanted: Wanted, measure: Measure): Measured[] {
  const worth = worthOf(wanted.product, measure);
  if (!worth) return [];
  const { holds, step } = measure;
  const inMeasure = divide(wanted.amount, worth);
  const full = wholeDown<number>(divide(inMeasure, holds));
  const rest = subtract(inMeasure, multiply(exact(full), holds));
  const above = smaller(stepUp(rest, step), holds);
  const marks = [above, isNothing(step) ? rest : stepDown(rest, step), ZERO, holds];
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

function fewest(all: readonly Measured[]): Measured[] {
  const least = Math.min(...all.map(fillings));
  return all.filter((one) => fillings(one) === least);
}

const isOver = (amount: Exact, most: Exact | null): boolean => most !== null && compare(amount, most) > 0;
const isNothing = (amount: Exact): boolean => compare(amount, ZERO) === 0;
/** How far off, whichever way. */
const sizeOf = (error: Exact): Exact => (compare(error, ZERO) < 0 ? subtract(ZERO, error) : error);
