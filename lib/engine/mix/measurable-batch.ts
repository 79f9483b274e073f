import { add, compare, divide, type Exact, exact, fraction, multiply, subtract, ZERO } from '@/shared/quantity/exact';
import { stepUp, wholeDown } from '@/shared/quantity/rounding';
import type { Measure } from '../shop';
import { isWithin, type Measured, MOST_FILLINGS, measured, TOLERANCE, type Wanted, worthOf } from './measuring';

/**
 * The smallest batch, larger than this one, of which the shop's measures measure an ingredient within the tolerance.
 *
 *   batch = volume × the next mark above the amount ÷ (amount × the most that measuring may go over)
 *
 * Takes    an amount that cannot be measured within the tolerance, and the batch that it is for, mL
 * Gives    null when no measure measures it at all
 * Units    mL
 * Rounds   up to whole mL
 */
export function measurableBatch(wanted: Wanted, measures: readonly Measure[], batchMl: Exact): Exact | null {
  const over = slack(wanted);
  const reach = multiply(wanted.amount, over);
  let next: Exact | null = null;
  for (const measure of measures) {
    const mark = markAbove(reach, measure, worthOf(wanted.product, measure));
    if (mark && (!next || compare(mark, next) < 0)) next = mark;
  }
  return next && stepUp(divide(multiply(batchMl, next), reach), exact(1n));
}

/** How far over the amount measuring may go: by the tolerance, and never over the label. */
function slack({ amount, most }: Wanted): Exact {
  const tolerated = add(exact(1n), TOLERANCE);
  if (most === null || compare(amount, most) > 0) return tolerated;
  const allowed = divide(most, amount);
  return compare(allowed, tolerated) < 0 ? allowed : tolerated;
}

/** The first amount above another that a measure has a mark for, in at most ten fillings. */
function markAbove(amount: Exact, { holds, step }: Measure, worth: Exact | null): Exact | null {
  if (!worth) return null;
  const inMeasure = divide(amount, worth);
  const full = wholeDown<number>(divide(inMeasure, holds));
  const whole = multiply(exact(full), holds);
  const steps = compare(step, ZERO) === 0 ? null : wholeDown<number>(divide(subtract(inMeasure, whole), step)) + 1;
  const marked = steps === null ? inMeasure : add(whole, multiply(exact(steps), step));
  const fullNext = add(whole, holds);
  const mark = compare(marked, fullNext) < 0 ? marked : fullNext;
  return full >= MOST_FILLINGS ? null : multiply(mark, worth);
}

/**
 * A stock solution for an amount too small to measure: the product for several batches, made up with water, of which each
 * batch takes a part that can be measured.
 */
export type StockSolution = {
  batches: number;
  /** How the product for all of them is measured. */
  product: Measured;
  makeUpToMl: Exact;
  /** What one batch takes of it, and what it is measured with, full. */
  useMl: Exact;
  useWith: Measure;
};

/** Numbers that are easy to make up to and to keep count of. A solution for more batches is never used up in time. */
const BATCHES = [2, 5, 10, 20, 50, 100];

/** At least so many mL of stock solution for each mL or g of product, so that it dissolves. */
const DILUTION = exact(10n);

const CLOSE = exact('0.01');

/**
 * The stock solution for the fewest batches, of a round number, whose product the shop's measures measure within one in a hundred; where none
 * is that close, within the tolerance.
 *
 * Takes    an amount for one batch
 * Gives    null without anything to measure volumes with, or when a hundred batches are not enough
 */
export function stockSolution(wanted: Wanted, measures: readonly Measure[]): StockSolution | null {
  const useWith = measureFor(multiply(wanted.amount, DILUTION), measures);
  if (!useWith) return null;
  const useMl = multiply(useWith.holds, fraction(1n, 1000n));
  let tolerable: StockSolution | null = null;
  for (const batches of BATCHES) {
    const times = exact(batches);
    const most = wanted.most && multiply(wanted.most, times);
    const product = measured({ ...wanted, amount: multiply(wanted.amount, times), most }, measures);
    if (!product || !isWithin(product)) continue;
    const solution = { batches, product, makeUpToMl: multiply(useMl, times), useMl, useWith };
    if (compare(multiply(product.error, product.error), multiply(CLOSE, CLOSE)) <= 0) return solution;
    tolerable ??= solution;
  }
  return tolerable;
}

/** The smallest measure of volumes that holds so much, or else the largest. */
function measureFor(microlitres: Exact, measures: readonly Measure[]): Measure | null {
  const bySize = measures.filter(({ kind }) => kind === 'volume').sort((a, b) => compare(a.holds, b.holds));
  return bySize.find(({ holds }) => compare(holds, microlitres) >= 0) ?? bySize.at(-1) ?? null;
}
