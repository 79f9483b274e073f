import { decimalText } from '@/shared/measure/decimal-text';
import type { Dose } from '@/shared/measure/dose';
import { compare, divide, type Exact, exact, fraction, multiply } from '@/shared/quantity/exact';
import type { Ingredient, Product, Shop } from '../shop';
import { ratePerMl, stockPerSquareMetre } from '../strength/dose-in-stock';
import { sourcesOf } from '../strength/sources';

/** Which way a dose may go where no decimal says it exactly: a limit may only become stricter. */
type Rounded = 'up' | 'down';

/**
 * The dose of a stock solution that brings as much as a dose of its source, as somebody would type it.
 *
 *   mL of solution for each L = dose of the source, µL or mg for each mL ÷ share × 1000
 *
 * Takes    the dose and its source; how much of the source is in each mL of the solution, µL or mg
 * Rounds   to nine places of mL in a litre, a gallon or 100 gallons, whichever the dose is said in
 * Gives    null when the dose cannot be turned into an amount, or when pure solution would be too weak
 */
export function thinnedText(dose: Dose, product: Product, share: Exact, rounded: Rounded): string | null {
  // So much of the substance in the spray is as much of it, whatever it comes in.
  if (dose.kind === 'substance') return dose.text;
  if (dose.kind === 'perArea') {
    const perSquareMetre = stockPerSquareMetre(dose, product);
    return perSquareMetre && `${decimalText(divide(perSquareMetre, share), rounded)} mL/m2`;
  }
  const rate = ratePerMl(dose, product);
  if (!rate || compare(rate, share) > 0) return null;
  const base = BASES.find(({ is }) => is.test(dose.text)) ?? LITRE;
  return `${decimalText(multiply(divide(rate, share), base.ml), rounded)} mL/${base.per}`;
}

/** Whether even pure solution would bring less than a dose of its source. */
export function isTooWeak(dose: Dose, product: Product, share: Exact): boolean {
  const rate = dose.kind === 'perArea' || dose.kind === 'substance' ? null : ratePerMl(dose, product);
  return rate !== null && compare(rate, share) > 0;
}

/** What a dose may be said for. In the words of the source, a spoon in a gallon is a plain number of mL in a gallon. */
const LITRE = { per: 'L', ml: exact(1000n) };
const BASES = [
  { per: '100 gal', ml: exact('378541.1784'), is: /\b100\s*gal/i },
  { per: 'gal', ml: exact('3785.411784'), is: /gal/i },
];

/** How much of the source is in each mL of the solution, as a dose of it that can be typed and read again. */
export const shareDose = ({ form }: Pick<Product, 'form'>, share: Exact): string =>
  `${decimalText(share, 'up')} ${form === 'liquid' ? 'mL/L' : 'g/L'}`;

const NANOS = 1_000_000_000n;

/** A share as that dose has it: never less than there is. */
export function writtenShare({ over, under }: Exact): Exact {
  const nanos = over * NANOS;
  return fraction((nanos + under - 1n) / under, NANOS);
}

/**
 * What a line of a recipe would be if it took a stock solution instead, as strong as it is.
 *
 * Rounds   as `thinnedText`, up where the dose is the least that the label allows, down elsewhere
 * Gives    null when the solution does not hold that product alone, or nobody can say how much of it
 */
export function fromSolution(line: Ingredient, solution: Product): string | null {
  const sources = sourcesOf(solution);
  const share = sources.get(line.product);
  const isOfOne = [solution, ...sources.keys()].every(({ madeFrom }) => madeFrom.length <= 1);
  return share && isOfOne ? thinnedDose(line.dose, line.product, share) : null;
}

/** The same for a solution that is still to be made, by how much of the product is in each mL of it. */
export function thinnedDose(dose: Dose, product: Product, share: Exact): string | null {
  const isLeast = product.label.rates.some(({ min }) => min !== null && isSameAmount(min, dose, product));
  return thinnedText(dose, product, share, isLeast ? 'up' : 'down');
}

function isSameAmount(one: Dose, other: Dose, product: Product): boolean {
  const [rate, otherRate] = [one, other].map((dose) =>
    dose.kind === 'perArea' ? stockPerSquareMetre(dose, product) : ratePerMl(dose, product),
  );
  return (
    (one.kind === 'perArea') === (other.kind === 'perArea') && !!rate && !!otherRate && compare(rate, otherRate) === 0
  );
}

/** The stock solutions on the shelf or off it that a line could take instead of its product, in the order of the shop. */
export const solutionsFor = ({ products }: Shop, { product }: Ingredient): Product[] =>
  products.filter((one) => !one.archived && sourcesOf(one).has(product));
