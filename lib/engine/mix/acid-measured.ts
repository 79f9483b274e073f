import { exact } from '@/shared/quantity/exact';
import { thousandths } from '@/shared/quantity/rounding';
import type { Shop } from '../shop';
import type { AcidStep } from './acid-steps';
import { isFarOff, type Measured, measured } from './measuring';

/**
 * The first part of an acid for one fill as the shop's tools measure it, never more than the whole of it.
 *
 * Gives    null when it is not known, and when nothing there measures it
 */
export function acidMeasured(
  { product, first, amount, corrected }: AcidStep,
  fills: number,
  { measures }: Pick<Shop, 'measures'>,
): Measured | null {
  if (!first) return null;
  const wanted = stockOf(first.amount / fills);
  const all = corrected ?? amount;
  if (wanted === null) return null;
  const found = measured({ amount: wanted, product, most: all === null ? null : stockOf(all / fills) }, measures);
  return found && !isFarOff(found) ? found : null;
}

/** Whole µL or mg from mL or g: no tool of a shop reads finer. Null where that is nothing. */
function stockOf(amount: number) {
  const whole = thousandths(amount);
  return whole === 0 ? null : exact(whole);
}
