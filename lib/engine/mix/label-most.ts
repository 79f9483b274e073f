import { add, compare, divide, type Exact, multiply, ZERO } from '@/shared/quantity/exact';
import { sameWords } from '../rules/in-words';
import type { Ingredient, Rate } from '../shop';
import { type Ground, ratePerMl } from '../strength/dose-in-stock';

/**
 * The most of one line that its label allows in each mL of spray, so that measuring need not go over it.
 *
 *   the highest rate for the use × this line's share of all lines of its product
 *
 * Takes    the line and all lines of the recipe; the ground and its spray, for rates per area
 * Gives    null where nothing limits it here: no rate, no upper end, the use not named among several, a dose that is over
 *          the label already and flagged for it
 * Units    µL or mg per mL, exact
 */
export function labelMost(line: Ingredient, lines: readonly Ingredient[], ground: Ground): Exact | null {
  const { product } = line;
  const limits = ratesFor(line).map(({ max }) => max && ratePerMl(max, product, ground));
  const own = ratePerMl(line.dose, product, ground);
  let [most, all] = [ZERO, ZERO];
  for (const limit of limits) {
    if (!limit) return null;
    if (compare(limit, most) > 0) most = limit;
  }
  for (const each of lines.filter((one) => one.product === product)) {
    const rate = ratePerMl(each.dose, product, ground);
    if (!rate) return null;
    all = add(all, rate);
  }
  return own && compare(most, all) >= 0 && compare(all, ZERO) > 0 ? divide(multiply(most, own), all) : null;
}

function ratesFor({ product, use }: Ingredient): Rate[] {
  const { rates } = product.label;
  if (use !== null) return rates.filter((rate) => sameWords(rate.use, use));
  return rates.length === 1 ? rates : [];
}
