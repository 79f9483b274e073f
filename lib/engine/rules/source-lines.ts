import type { Dose } from '@/shared/measure/dose';
import { showNumber } from '@/shared/measure/show';
import { divide, type Exact, exact, multiply, toNumber } from '@/shared/quantity/exact';
import type { Ingredient, Product } from '../shop';
import { ratePerMl, stockPerSquareMetre } from '../strength/dose-in-stock';
import { sourcesOf } from '../strength/sources';

/** A line of a mix; `dose` is null where nobody can say how much of the product a stock solution brings. */
export type DosedLine = Omit<Ingredient, 'dose'> & { dose: Dose | null; holder: Product | null };

/**
 * What the stock solutions of a mix bring of the products that they are made from, as if each had been poured itself.
 *
 *   dose of the source = dose of the solution × the share of the source in it
 */
export const sourceLines = (ingredients: readonly Ingredient[]): DosedLine[] =>
  ingredients.flatMap((line) =>
    [...sourcesOf(line.product)].map(([product, share]) => {
      return { ...line, product, holder: line.product, dose: share && doseIn(line, product, share) };
    }),
  );

const THOUSAND = exact(1000n);

function doseIn({ product: solution, dose }: Ingredient, source: Product, share: Exact): Dose | null {
  const isPerArea = dose.kind === 'perArea';
  // µL of the solution for each m², or in each mL of spray.
  const poured = isPerArea ? stockPerSquareMetre(dose, solution) : ratePerMl(dose, solution);
  if (!poured) return null;
  const held = divide(multiply(poured, share), THOUSAND);
  const unit = source.form === 'liquid' ? 'mL' : 'g';
  if (isPerArea) {
    const perSquareMetre = divide(held, THOUSAND);
    const measure = source.form === 'liquid' ? 'volume' : 'mass';
    return { text: said(perSquareMetre, `${unit}/m2`, solution), kind: 'perArea', measure, perSquareMetre };
  }
  const text = said(held, `${unit}/L`, solution);
  return source.form === 'liquid'
    ? { text, kind: 'volume', mlPerLitre: held }
    : { text, kind: 'mass', gPerLitre: held };
}

const said = (amount: Exact, unit: string, { name }: Product): string =>
  `${showNumber(toNumber(amount))} ${unit} in ${name}`;
