import type { Product } from '../shop';
import { sameSubstance, strengthIn } from '../strength/strength-of';
import type { Mixed } from './mix-strength';

/**
 * What somebody must enter before it is known how much of a substance a product holds, as a sentence.
 *
 * Takes   a substance whose strength in the product cannot be worked out
 */
export function toEnterForStrength(product: Product, substance: string): string {
  const stated = product.contents.filter((content) => sameSubstance(content.substance, substance));
  const lacksDensity = product.densityGPerMl === null && stated.some(({ basis }) => basis !== '% v/v');
  if (lacksDensity) return `Enter the density of ${product.name} in g/mL, from its label.`;
  return `Enter how much ${substance} is in ${product.name} by weight, from its label.`;
}

/** The same before it is known how much of the substance a line of a mix brings. */
export function toEnterForAmount({ product, dose }: Mixed, substance: string): string {
  if (strengthIn(product, substance) === null) return toEnterForStrength(product, substance);
  return `${product.name} at ${dose.text} cannot be turned into an amount yet.`;
}
