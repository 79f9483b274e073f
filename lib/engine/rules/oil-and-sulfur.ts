import type { Product } from '../shop';
import { withSources } from '../strength/sources';

/*
 * Which products are oils, soaps and sulfur, decided here for every rule and caution. A product is one by a word in its
 * name, its formulation or one of its substances, whatever the case; sulfur also by its mode group; an oil also by the
 * code of a formulation that is carried in oil. A stock solution is what it is made from. What is one by mistake is
 * flagged once too often, which does no harm; what is not recognised would be.
 */

const OIL = /\boils?\b|\bpetroleum distillates?\b|\bparaffin(ic|s)?\b/i;
/** Oil dispersions, oil miscible liquids and flowables, spreading oils. */
const CARRIED_IN_OIL = /^(OD|OL|OF|SO)$/i;
const SOAP = /\bsoaps?\b|\bfatty acids?\b/i;
const SULFUR = /\bsul(f|ph)ur\b|\bpolysul(f|ph)ides?\b/i;
/** FRAC writes the group of sulfur and lime sulfur M02; older lists and labels M2. */
const SULFUR_MODE = /^(FRAC\s*)?(group\s*)?M\s*0?2$/i;

export const isOil = (product: Product): boolean =>
  withSources(product).some((one) => says(one, OIL) || CARRIED_IN_OIL.test(one.formulation?.trim() ?? ''));

export const isSoap = (product: Product): boolean => withSources(product).some((one) => says(one, SOAP));

export const isSulfur = (product: Product): boolean =>
  withSources(product).some(
    (one) => says(one, SULFUR) || one.label.modes.some((mode) => SULFUR_MODE.test(mode.trim())),
  );

/** Whether a label uses a word in its name, its formulation or a substance. */
export const says = ({ name, formulation, contents }: Product, word: RegExp): boolean =>
  [name, formulation ?? '', ...contents.map(({ substance }) => substance)].some((words) => word.test(words));
