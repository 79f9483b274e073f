import type { Dose } from '@/shared/measure/dose';
import { TEASPOON } from '@/shared/measure/unit';
import { compare, divide, type Exact, exact, multiply, ZERO } from '@/shared/quantity/exact';
import type { Product } from '../shop';
import { strengthIn } from './strength-of';

/** What turns a dose into an amount off the shelf. */
export type Dosed = Pick<Product, 'form' | 'densityGPerMl' | 'gramsPerTeaspoon' | 'contents'>;

/** What turns a dose per area into a share of the spray: the ground that is sprayed, m², and the spray for it, mL. */
export type Ground = { area: Exact | null; sprayMl: Exact | null };

export type DosePerArea = Extract<Dose, { kind: 'perArea' }>;

/**
 * How much of a product goes into each mL of spray, whatever the dose was written in.
 *
 *   liquid     mL/L                    | g/L ÷ density                        | mg/L of substance ÷ 1000 ÷ g of it per mL
 *   powder     mL/L × g/tsp ÷ mL/tsp   | g/L                                  | mg/L of substance ÷ 1000 ÷ g of it per g
 *   per area   the amount for each m² × the ground ÷ the spray for it
 *
 * Takes    the ground and its spray where they are known; only a dose per area asks for them
 * Gives    null when what the dose needs is not known: the density, the weight of a level teaspoon, the strength, the
 *          ground or its spray
 * Units    µL of a liquid, or mg of a powder, per mL of spray; exact. The same number reads as mL/L or g/L.
 * Source   domain arithmetic: 1 mL/L = 1 µL/mL and 1 g/L = 1 mg/mL
 */
export function ratePerMl(dose: Dose, product: Dosed, ground?: Ground): Exact | null {
  switch (dose.kind) {
    case 'volume':
      return byVolume(dose.mlPerLitre, product);
    case 'mass':
      return byMass(dose.gPerLitre, product);
    case 'substance':
      return bySubstance(dose.mgPerLitre, strengthIn(product, dose.substance));
    case 'perArea':
      return ground ? spread(stockPerSquareMetre(dose, product), ground) : null;
  }
}

/**
 * How much of a product goes onto each square metre.
 *
 * Gives    null when the density, or the weight of a level teaspoon, is needed and not known
 * Units    µL of a liquid, mg of a powder, per m²; exact
 */
export function stockPerSquareMetre({ measure, perSquareMetre }: DosePerArea, product: Dosed): Exact | null {
  const amount = measure === 'volume' ? byVolume(perSquareMetre, product) : byMass(perSquareMetre, product);
  return amount && multiply(amount, THOUSAND);
}

const THOUSAND = exact(1000n);

function spread(perSquareMetre: Exact | null, { area, sprayMl }: Ground): Exact | null {
  if (!perSquareMetre || !area || !sprayMl || compare(sprayMl, ZERO) === 0) return null;
  return divide(multiply(perSquareMetre, area), sprayMl);
}

const byVolume = (ml: Exact, { form, gramsPerTeaspoon }: Dosed): Exact | null =>
  form === 'liquid' ? ml : spooned(ml, gramsPerTeaspoon);

const byMass = (grams: Exact, { form, densityGPerMl }: Dosed): Exact | null =>
  form === 'powder' ? grams : weighed(grams, densityGPerMl);

/** The weight of a powder that fills a volume, by the product's own level teaspoon. */
function spooned(ml: Exact, gramsPerTeaspoon: number | null): Exact | null {
  if (gramsPerTeaspoon === null) return null;
  const mgPerMicrolitre = divide(exact(gramsPerTeaspoon), divide(TEASPOON.worth, THOUSAND));
  return multiply(ml, mgPerMicrolitre);
}

function weighed(grams: Exact, densityGPerMl: number | null): Exact | null {
  return densityGPerMl === null ? null : divide(grams, exact(densityGPerMl));
}

function bySubstance(mgPerLitre: Exact, strength: Exact | null): Exact | null {
  if (strength === null || compare(strength, ZERO) === 0) return null;
  return divide(divide(mgPerLitre, THOUSAND), strength);
}
