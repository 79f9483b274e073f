import { showPh } from '@/shared/measure/show';
import { groundOf } from '../bench/ground';
import { type SprayPh, sprayPhOf } from '../mix/spray-ph';
import type { Water } from '../mix/water';
import type { Product, Recipe } from '../shop';
import type { Ground } from '../strength/dose-in-stock';
import { sourcesOf, withSources } from '../strength/sources';
import type { Flag } from './flag';
import { type Finding, flagBatches } from './recipe-findings';
import type { Unflagged } from './unflagged';

/**
 * A spray whose pH a label in it does not want.
 *
 * Looks at  the pH that a recipe's spray will have: its target pH, or without one the pH of the shop's water with the
 *           recipe's own alkali silicate and acids in it (`sprayPhOf`); and the range on the label of each product, and of
 *           what a stock solution is made from
 * Fires     when the pH is below the lowest or above the highest of the range, once per product. Exactly at either end is
 *           inside. A product without a range is not judged. A pH that nobody can say suits no range.
 * Severity  warn
 * Cleared   by a target pH inside the ranges of all products of the recipe, or by taking a product out
 */
export const phOutsideRange = (plan: Unflagged): Flag[] =>
  flagBatches(plan, 'ph-outside-range', ({ recipe, program, spray }) =>
    phFindings(recipe, plan.shop.water, { area: groundOf(program.benches), sprayMl: spray?.total ?? null }),
  );

/** The labels in a recipe that its pH does not suit, for one mix. The ground matters to a silicate dosed per area only. */
export function phFindings(recipe: Recipe, water: Water | null, ground?: Ground): Finding[] {
  const products = [...new Set(recipe.ingredients.flatMap(({ product }) => withSources(product)))];
  const ranged = products.flatMap((product) =>
    product.label.sprayPh && !isSaidBefore(product, products) ? [{ product, range: product.label.sprayPh }] : [],
  );
  if (ranged.length === 0) return [];
  const spray = sprayPhOf(recipe, water, ground);
  const ranges = ranged.map(({ range }) => range);
  if (spray === null) {
    return ranged.map(({ product, range }) => ({
      severity: 'warn',
      product,
      message: () =>
        `${whyUnknown(water)}; the label of ${product.name} asks for ${rangeText(range)}. ${remedy(ranges, product)}`,
    }));
  }
  return ranged
    .filter(({ range }) => spray.pH < range.min || spray.pH > range.max)
    .map(({ product, range }) => ({
      severity: 'warn',
      product,
      message: () =>
        `${saidOf(spray, water)}; the label of ${product.name} asks for ${rangeText(range)}. ${remedy(ranges, product)}`,
    }));
}

/** A source whose range its solution has as well, as most have from it, is not said twice. */
const isSaidBefore = (source: Product, products: readonly Product[]): boolean =>
  products.some(
    (one) => one !== source && sourcesOf(one).has(source) && !sourcesOf(source).has(one) && isSameRange(one, source),
  );

const isSameRange = ({ label: { sprayPh: one } }: Product, { label: { sprayPh: other } }: Product): boolean =>
  one?.min === other?.min && one?.max === other?.max;

type Range = { min: number; max: number };

function saidOf({ pH, rests }: SprayPh, water: Water | null): string {
  if (rests === 'target') return `The recipe brings the spray to pH ${showPh(pH)}`;
  const measured = `No target pH is set and the shop's water is at pH ${showPh(water?.pH ?? pH)}`;
  return pH === water?.pH ? measured : `${measured}, which comes to about pH ${showPh(pH)} with what is in this recipe`;
}

const whyUnknown = (water: Water | null): string =>
  water
    ? 'Nobody can say the pH of this spray, because something in it moves the pH by an unknown amount'
    : "Nobody can say the pH of this spray: no target pH is set, and the shop's water was never measured";

const rangeText = ({ min, max }: Range): string =>
  min === max ? `pH ${showPh(min)}` : `pH ${showPh(min)} to ${showPh(max)}`;

/** The pH that suits every label in the recipe, where there is one. */
function remedy(ranges: readonly Range[], { name }: Product): string {
  const common = { min: Math.max(...ranges.map(({ min }) => min)), max: Math.min(...ranges.map(({ max }) => max)) };
  if (common.min > common.max) return `No pH suits every label in this recipe: spray ${name} on its own.`;
  return `Set a target of ${rangeText(common)}, measure the mix and bring it there.`;
}
