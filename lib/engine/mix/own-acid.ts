import { showPh } from '@/shared/measure/show';
import { listed } from '../rules/in-words';
import type { Product } from '../shop';
import { acidsIn, given } from './acid-doses';
import type { Mixed } from './mix-strength';
import { type Acidity, type AcidNeed, alkalinityAt, type Carbonate, PEN, surePhOf } from './water';

/** The acid that a recipe itself pours, whatever it comes in, and what it leaves to be done. */
export type OwnAcid = {
  products: Product[];
  /** What it gives off at a pH, meq/L; null when its amount is not known. */
  acidity: Acidity | null;
  /** The pH that it brings the mix to by itself; null when nobody can say. */
  pH: number | null;
  /** The meq/L that the target takes beside it: none once it is there; null without a target, or when nobody can say. */
  left: number | null;
  /** How far it brings the pH and what is still to add, in whole sentences. */
  message: string;
};

/**
 * What the acid of a recipe makes of its water.
 *
 *   pH    the one at which the alkalinity left and what the acid has given off are the alkalinity of the water
 *   left  acid that the target takes in all − what the recipe's own has given off at the target
 *
 * Takes    the lines of the recipe; the water with what is alkaline in them, null when nobody knows it; what the target
 *          takes in all, null without one
 * Gives    null for a recipe that pours no acid
 * Units    meq/L, pH; an estimate, as `acidNeeded` is
 */
export function ownAcidIn(mix: readonly Mixed[], water: Carbonate | null, need: AcidNeed | null): OwnAcid | null {
  const acids = acidsIn(mix);
  if (acids.length === 0) return null;
  const products = [...new Set(acids.map(({ product }) => product))];
  const acidity = given(acids);
  const names = listed(products.map(({ name }) => name));
  if (!water || !acidity) {
    return { products, acidity, pH: null, left: null, message: unsaid(names) };
  }
  const pH = surePhOf(water, acidity);
  if (pH === null) return { products, acidity, pH, left: null, message: unsaid(names) };
  const left = need && leftAt(water, acidity, need.target, pH);
  return { products, acidity, pH, left, message: said(names, pH, need?.target ?? null) };
}

const unsaid = (names: string): string =>
  `How far ${names} brings the pH nobody can say. Measure before adding any more acid.`;

/** Nothing where a pH pen could not tell the pH from the target, and nothing below it: an acid cannot raise it. */
function leftAt(water: Carbonate, acidity: Acidity, target: number, pH: number): number {
  if (pH <= target + PEN) return 0;
  return water.alkalinity - alkalinityAt(water, target) - acidity(target);
}

function said(names: string, pH: number, target: number | null): string {
  const so = `By the estimate ${names} brings it to pH ${showPh(pH)}`;
  if (target === null) return `${so}.`;
  if (pH > target + PEN) return `${so}, and the target of ${showPh(target)} takes more.`;
  if (pH >= target - PEN) return `${so}, which is the target: add no more acid.`;
  return `${so}, below the target of ${showPh(target)}, and an acid cannot raise it. Pour two thirds of it, stir and measure before the rest.`;
}
