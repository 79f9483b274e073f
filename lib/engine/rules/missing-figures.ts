import type { Dose } from '@/shared/measure/dose';
import type { Product } from '../shop';
import { sameSubstance } from '../strength/strength-of';

/**
 * What somebody must enter before a dose of a product can be turned into an amount off the shelf, as a sentence.
 *
 * Takes   a dose that cannot be turned into an amount
 */
export function toEnterFor(dose: Dose, product: Product): string {
  if (dose.kind === 'volume') {
    return `Weigh one level teaspoon of ${product.name} and enter its grams.`;
  }
  if (dose.kind === 'mass') return enterDensity(product);
  const content = product.contents.find(({ substance }) => sameSubstance(substance, dose.substance));
  if (!content) return `Enter how much ${dose.substance} is in ${product.name}, from its label.`;
  if (content.amount > 0 && content.basis !== '% v/v' && product.densityGPerMl === null) return enterDensity(product);
  return `Enter how much ${dose.substance} is in ${product.name} by weight, from its label.`;
}

const enterDensity = (product: Product): string => `Enter the density of ${product.name} in g/mL, from its label.`;
