import type { Dose } from '@/shared/measure/dose';
import type { Bench, Product } from '../shop';
import { type DosePerArea, stockPerSquareMetre } from '../strength/dose-in-stock';
import { sameSubstance } from '../strength/strength-of';
import { benchNames } from './in-words';
import type { ToEnter } from './to-enter';

/** What somebody must enter before a dose of a product can be turned into an amount off the shelf, as a sentence. */
export const toEnterFor = (dose: Dose, product: Product, benches: readonly Bench[]): string =>
  missingFigure(dose, product, benches).words;

/**
 * The same with where it is entered.
 *
 * Takes   a dose that cannot be turned into an amount, and the benches that it is for
 */
export function missingFigure(dose: Dose, product: Product, benches: readonly Bench[]): ToEnter {
  if (dose.kind === 'perArea') return missingForGround(dose, product, benches);
  if (dose.kind === 'volume') return weighTeaspoon(product);
  if (dose.kind === 'mass') return enterDensity(product);
  const content = product.contents.find(({ substance }) => sameSubstance(substance, dose.substance));
  if (!content) return enterContent(product, `Enter how much ${dose.substance} is in ${product.name}, from its label.`);
  if (content.amount > 0 && content.basis !== '% v/v' && product.densityGPerMl === null) return enterDensity(product);
  return enterContent(product, `Enter how much ${dose.substance} is in ${product.name} by weight, from its label.`);
}

function missingForGround(dose: DosePerArea, product: Product, benches: readonly Bench[]): ToEnter {
  if (!stockPerSquareMetre(dose, product)) {
    return dose.measure === 'volume' ? weighTeaspoon(product) : enterDensity(product);
  }
  const [first, ...rest] = benches.filter(({ area }) => area === null);
  if (first) {
    return {
      words: `Enter the area of ${benchNames([first, ...rest])}.`,
      at: { of: 'bench', id: first.id, field: 'area' },
    };
  }
  return {
    words: 'Enter the mL per plant of what stands there: a dose per area and one per volume only meet over the spray.',
    at: { of: 'bench', id: benches[0]?.id ?? '', field: 'mlPerPlant', group: 0 },
  };
}

const enterContent = ({ id }: Product, words: string): ToEnter => ({
  words,
  at: { of: 'product', id, field: 'contents' },
});

const weighTeaspoon = ({ id, name }: Product): ToEnter => ({
  words: `Weigh one level teaspoon of ${name} and enter its grams.`,
  at: { of: 'product', id, field: 'gramsPerTeaspoon' },
});

const enterDensity = ({ id, name }: Product): ToEnter => ({
  words: `Enter the density of ${name} in g/mL, from its label.`,
  at: { of: 'product', id, field: 'densityGPerMl' },
});
