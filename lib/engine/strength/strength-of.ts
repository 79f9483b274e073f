import { divide, type Exact, exact, fraction, multiply, toNumber } from '@/shared/quantity/exact';
import type { Content, Product } from '../shop';

type Weighed = Pick<Product, 'densityGPerMl'>;
type Strong = Pick<Product, 'form' | 'densityGPerMl' | 'contents'>;

/** One lb/gal in g/mL: the pound and the US gallon by their definitions. */
const POUND_PER_GALLON = divide(exact('453.59237'), exact('3785.411784'));

/**
 * How much of a substance is in each mL of a liquid.
 *
 *   % w/v  x ÷ 100   |   g/L  x ÷ 1000   |   lb/gal  x · 453.59237 ÷ 3785.411784
 *   % w/w  x ÷ 100 · density             |   g/kg    x ÷ 1000 · density
 *
 * Gives    g per mL; null for % v/v, which would need the substance's own density, and for a share by weight of a
 *          liquid whose density was never entered
 */
export const gramsPerMl = (content: Content, product: Weighed): number | null => asNumber(perMl(content, product));

/**
 * How much of a substance is in each gram of a powder.
 *
 *   % w/w  x ÷ 100   |   g/kg  x ÷ 1000   |   % w/v, g/L, lb/gal  as for a liquid, ÷ density
 *
 * Gives    g per g; null as for `gramsPerMl`
 */
export const gramsPerGram = (content: Content, product: Weighed): number | null => asNumber(perGram(content, product));

/**
 * The strength of a content in the unit its product is kept in, exact.
 *
 * Gives    g per mL of a liquid, g per g of a powder; null when it cannot be known
 */
export function strengthOf(content: Content, product: Weighed & Pick<Product, 'form'>): Exact | null {
  return product.form === 'liquid' ? perMl(content, product) : perGram(content, product);
}

/**
 * The strength of a named substance in a product. A label may state one substance in two bases ("11 %, that is 1 lb/gal"):
 * they are the same substance said twice and are not added, so the first that can be worked out is taken.
 *
 * Takes    the name in any case
 * Gives    as `strengthOf`; null also when the product does not list the substance
 */
export function strengthIn(product: Strong, substance: string): Exact | null {
  for (const content of product.contents) {
    const strength = sameSubstance(content.substance, substance) ? strengthOf(content, product) : null;
    if (strength !== null) return strength;
  }
  return null;
}

/** Whether two names mean one substance: the same letters, whatever the case and the spaces around them. */
export const sameSubstance = (one: string, other: string): boolean =>
  one.trim().toLowerCase() === other.trim().toLowerCase();

function perMl({ amount, basis }: Content, { densityGPerMl }: Weighed): Exact | null {
  switch (basis) {
    case '% w/v':
      return multiply(exact(amount), fraction(1n, 100n));
    case 'g/L':
      return multiply(exact(amount), fraction(1n, 1000n));
    case 'lb/gal':
      return multiply(exact(amount), POUND_PER_GALLON);
    case '% w/w':
      return densityGPerMl === null
        ? null
        : multiply(exact(amount), multiply(exact(densityGPerMl), fraction(1n, 100n)));
    case 'g/kg':
      return densityGPerMl === null
        ? null
        : multiply(exact(amount), multiply(exact(densityGPerMl), fraction(1n, 1000n)));
    case '% v/v':
      return null;
  }
}

function perGram(content: Content, product: Weighed): Exact | null {
  if (content.basis === '% w/w') return multiply(exact(content.amount), fraction(1n, 100n));
  if (content.basis === 'g/kg') return multiply(exact(content.amount), fraction(1n, 1000n));
  const inEachMl = perMl(content, product);
  return inEachMl === null || product.densityGPerMl === null ? null : divide(inEachMl, exact(product.densityGPerMl));
}

const asNumber = (strength: Exact | null): number | null => (strength === null ? null : toNumber(strength));
