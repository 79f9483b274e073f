import type { Micros, Stock } from '@/shared/quantity/amounts';
import { minus } from '@/shared/quantity/amounts';
import { ofEach } from '@/shared/quantity/rounding';

/**
 * What an amount costs that leaves a container, by where it lies in the container.
 *
 *   cost = round(paid × after ÷ size) − round(paid × before ÷ size)
 *
 * Takes    what was paid for the container, how much it held when full, and the amount that had left it before and after
 * Gives    the cost of the part between, so that all parts of a container add up to exactly what was paid for it
 * Units    micros; µL of a liquid or mg of a powder
 * Rounds   each end to the nearest micro, a half up, on exact integers
 * Throws   RangeError when `before` is above `after`
 */
export const costOut = (paid: Micros, size: Stock, before: Stock, after: Stock): Micros =>
  minus(ofEach<Micros, Stock>(paid, after, size), ofEach<Micros, Stock>(paid, before, size));
