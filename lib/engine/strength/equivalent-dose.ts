import { compare, divide, type Exact, exact, multiply, ZERO } from '@/shared/quantity/exact';
import type { Product } from '../shop';
import { strengthIn } from './strength-of';

type Strong = Pick<Product, 'form' | 'densityGPerMl' | 'contents'>;

/**
 * How much of a substance a product brings into the spray.
 *
 *   mg of substance per L of spray = rate × strength × 1000
 *
 * Takes    the rate of the product: mL/L of a liquid, g/L of a powder (the same number as `ratePerMl` gives)
 * Gives    null when the strength is not known, or the product does not list the substance
 */
export function mgPerLitre(rate: Exact, product: Strong, substance: string): Exact | null {
  const strength = strengthIn(product, substance);
  return strength && multiply(multiply(rate, strength), exact(1000n));
}

/**
 * The rate of another product that brings the same amount of a substance.
 *
 *   rate of the other = rate × strength of this ÷ strength of the other
 *
 * Says nothing about whether the other label allows it.
 *
 * Takes    the rate of the one product: mL/L of a liquid, g/L of a powder
 * Gives    the rate of the other in its own unit, exact; null when either strength is not known, or is nothing
 */
export function equivalentDose(rate: Exact, from: Strong, to: Strong, substance: string): Exact | null {
  const [here, there] = [strengthIn(from, substance), strengthIn(to, substance)];
  if (!here || !there || compare(here, ZERO) === 0 || compare(there, ZERO) === 0) return null;
  return divide(multiply(rate, here), there);
}
