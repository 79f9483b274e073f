import type { Dose } from '@/shared/measure/dose';
import type { Bench, Product } from '../shop';
import { type DosePerArea, stockPerSquareMetre } from '../strength/dose-in-stock';
import { sameSubstance } from '../strength/strength-of';
import { benchNames } from './in-words';

/**
 * What somebody must enter before a dose of a product can be turned into an amount off the shelf, as a sentence.
 *
 * Takes   a dose that cannot be turned into an amount, and the benches that it is for
 */
export function toEnterFor(dose: Dose, product: Product, benches: readonly Bench[]): string {
  if (dose.kind === 'perArea') return toEnterForGround(dose, product, benches);
  if (dose.kind === 'volume') return weighTeaspoon(product);
  if (dose.kind === 'mass') return enterDensity(product);
  const content = product.contents.find(({ substance }) => sameSubstance(substance, dose.substance));
  if (!content) return `Enter how much ${dose.substance} is in ${product.name}, from its label.`;
  if (content.amount > 0 && content.basis !== '% v/v' && product.densityGPerMl === null) return enterDensity(product);
  return `Enter how much ${dose.substance} is in ${product.name} by weight, from its label.`;
}

function toEnterForGround(dose: DosePerArea, product: Product, benches: readonly Bench[]): string {
  if (!stockPerSquareMetre(dose, product)) {
    return dose.measure === 'volume' ? weighTeaspoon(product) : enterDensity(product);
  }
  const unmeasured = benches.filter(({ area }) => area === null);
  if (unmeasured.length > 0) return `Enter the area of ${benchNames(unmeasured)}.`;
  return 'Enter the mL per plant of what stands there: a dose per area and one per volume only meet over the spray.';
}

const weighTeaspoon = (product: Product): string => `Weigh one level teaspoon of ${product.name} and enter its grams.`;
const enterDensity = (product: Product): string => `Enter the density of ${product.name} in g/mL, from its label.`;
