import { toNumber } from '@/shared/quantity/exact';
import type { Product } from '../shop';
import { sameSubstance } from '../strength/strength-of';
import { toEnterForAmount } from './missing-strength';
import { broughtBy, type Mixed } from './mix-strength';

/** meq/L that an alkaline ingredient adds; null, with what to enter, when that is not known. */
export type AlkaliLine = { product: Product; meqPerL: number | null; missing: string | null };

/** Bases in an alkali silicate, by the names that labels give them: equivalents per mole, and IUPAC molar mass. */
const BASES = [
  { metal: 'K', name: 'K2O', equivalents: 2, molarMass: 94.196 },
  { metal: 'K', name: 'K₂O', equivalents: 2, molarMass: 94.196 },
  { metal: 'K', name: 'K', equivalents: 1, molarMass: 39.098 },
  { metal: 'Na', name: 'Na2O', equivalents: 2, molarMass: 61.979 },
  { metal: 'Na', name: 'Na₂O', equivalents: 2, molarMass: 61.979 },
  { metal: 'Na', name: 'Na', equivalents: 1, molarMass: 22.99 },
];

/**
 * What each alkali silicate of a mix adds to the alkalinity of its water: two equivalents per mole of K₂O in its
 * contents, and the same for Na₂O, whichever way its label states them.
 *
 * The silica itself is left out, so a pH above 9 reads a little high. Bicarbonates, soaps and other alkaline products are
 * not counted either; `unreckonedIn` names them.
 *
 * Gives    one line per ingredient that is an alkali silicate; null where its dose or its strength is not known
 * Units    meq per litre of spray
 */
export const alkaliOf = (mix: readonly Mixed[]): AlkaliLine[] =>
  mix.filter(({ product }) => product.alkaliSilicate).map(alkaliLine);

/** All the alkali of a mix in meq/L: nothing without an alkali silicate, null when any is not known. */
export function alkaliIn(mix: readonly Mixed[]): number | null {
  let sum = 0;
  for (const { meqPerL } of alkaliOf(mix)) {
    if (meqPerL === null) return null;
    sum += meqPerL;
  }
  return sum;
}

/** Products that move the pH of a spray by an amount that nothing here works out: salts of weak acids, and bases. */
const UNRECKONED = /carbonate|hydroxide|fatty acids?|\bsoap\b|sulfide|lime sulfur|ammonia\b|borate|borax|phosphite/i;

export const unreckonedIn = (mix: readonly Mixed[]): Product[] => [
  ...new Set(
    mix
      .map(({ product }) => product)
      .filter(({ contents }) => contents.some(({ substance }) => UNRECKONED.test(substance))),
  ),
];

function alkaliLine(line: Mixed): AlkaliLine {
  const { product } = line;
  const sums = ['K', 'Na'].flatMap((metal) => metalLine(line, metal));
  const known = sums.every((sum) => sum !== null) && sums.length > 0;
  if (known) return { product, meqPerL: sums.reduce<number>((sum, meq) => sum + (meq ?? 0), 0), missing: null };
  const stated = product.contents.find(({ substance }) => BASES.some(({ name }) => sameSubstance(name, substance)));
  return { product, meqPerL: null, missing: toEnterForAmount(line, stated?.substance ?? 'K2O') };
}

/** The meq/L by one metal, which a label may state both ways; empty when it states neither. */
function metalLine(line: Mixed, metal: string): (number | null)[] {
  const stated = line.product.contents.flatMap((content) => {
    const base = BASES.find((one) => one.metal === metal && sameSubstance(one.name, content.substance));
    return base ? [{ content, base }] : [];
  });
  for (const { content, base } of stated) {
    const mgPerL = broughtBy(line, [content]);
    if (mgPerL !== null) return [(toNumber(mgPerL) / base.molarMass) * base.equivalents];
  }
  return stated.length === 0 ? [] : [null];
}
