import type { Dose } from '@/shared/measure/dose';
import { TEASPOON } from '@/shared/measure/unit';
import { compare, divide, type Exact, exact, multiply, ZERO } from '@/shared/quantity/exact';
import type { Product } from '../shop';
import { strengthIn } from './strength-of';

/** What turns a dose into an amount off the shelf. */
export type Dosed = Pick<Product, 'form' | 'densityGPerMl' | 'gramsPerTeaspoon' | 'contents'>;

/**
 * How much of a product goes into each mL of spray, whatever the dose was written in.
 *
 *   liquid     mL/L                    | g/L ÷ density                        | mg/L of substance ÷ 1000 ÷ g of it per mL
 *   powder     mL/L × g/tsp ÷ mL/tsp   | g/L                                  | mg/L of substance ÷ 1000 ÷ g of it per g
 *
 * Gives    null when what the dose needs is not known: the density, the weight of a level teaspoon, the strength
 * Units    µL of a liquid, or mg of a powder, per mL of spray; exact. The same number reads as mL/L or g/L.
 * Source   domain arithmetic: 1 mL/L = 1 µL/mL and 1 g/L = 1 mg/mL
 */
export function ratePerMl(dose: Dose, product: Dosed): Exact | null {
  switch (dose.kind) {
    case 'volume':
      return product.form === 'liquid' ? dose.mlPerLitre : spooned(dose.mlPerLitre, product.gramsPerTeaspoon);
    case 'mass':
      return product.form === 'powder' ? dose.gPerLitre : weighed(dose.gPerLitre, product.densityGPerMl);
    case 'substance':
      return bySubstance(dose.mgPerLitre, strengthIn(product, dose.substance));
  }
}

/** The weight of a powder that fills a volume, by the product's own level teaspoon. */
function spooned(mlPerLitre: Exact, gramsPerTeaspoon: number | null): Exact | null {
  if (gramsPerTeaspoon === null) return null;
  const mgPerMicrolitre = divide(exact(gramsPerTeaspoon), divide(TEASPOON.worth, exact(1000n)));
  return multiply(mlPerLitre, mgPerMicrolitre);
}

function weighed(gPerLitre: Exact, densityGPerMl: number | null): Exact | null {
  return densityGPerMl === null ? null : divide(gPerLitre, exact(densityGPerMl));
}

function bySubstance(mgPerLitre: Exact, strength: Exact | null): Exact | null {
  if (strength === null || compare(strength, ZERO) === 0) return null;
  return divide(divide(mgPerLitre, exact(1000n)), strength);
}
