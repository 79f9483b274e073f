import { exact, toNumber } from '@/shared/quantity/exact';
import type { Product } from '../shop';
import { asElement } from '../strength/elements';
import { sameSubstance } from '../strength/strength-of';
import { toEnterForAmount } from './missing-strength';
import { broughtBy, type Mixed } from './mix-strength';

/** What an alkaline ingredient adds. */
export type AlkaliLine = {
  product: Product;
  /** meq/L; null, with what to enter, when that is not known. */
  meqPerL: number | null;
  missing: string | null;
  /** Silica in mmol/L; null when the label's SiO₂ was not entered. */
  silica: number | null;
};

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
 * Bicarbonates, soaps and other alkaline products are not counted; `unreckonedIn` names them.
 *
 * Gives    one line per ingredient that is an alkali silicate; null where its dose or its strength is not known
 * Units    meq and mmol per litre of spray
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

/**
 * The silica that the alkali silicates of a mix bring, as molecules of silicic acid.
 *
 * Gives    nothing twice without an alkali silicate. Where a label's SiO₂ was not entered, the least and the most that the
 *          alkali of a soluble silicate comes with: none, and four moles to each mole of K₂O
 * Units    mmol per litre of spray
 */
export function silicaIn(mix: readonly Mixed[]): { least: number; most: number } {
  let [least, most] = [0, 0];
  for (const { silica, meqPerL } of alkaliOf(mix)) {
    least += silica ?? 0;
    most += silica ?? (MOST_SILICA_PER_K2O * (meqPerL ?? 0)) / 2;
  }
  return { least, most };
}

/** Common practice, from memory: potassium silicates that stay dissolved are sold with up to about 4 mol SiO₂ per mol K₂O. */
const MOST_SILICA_PER_K2O = 4;

/** g in a mole of silicon, IUPAC. */
const SILICON = 28.085;

function silicaOf(line: Mixed): number | null {
  const stated = line.product.contents.filter(({ substance }) => asElement(substance, ONE)?.element === 'Si');
  for (const content of stated) {
    const brought = broughtBy(line, [content]);
    const silicon = brought && asElement(content.substance, brought)?.amount;
    if (silicon) return toNumber(silicon) / SILICON;
  }
  return null;
}

const ONE = exact(1n);

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
  const silica = silicaOf(line);
  if (known) return { product, meqPerL: sums.reduce<number>((sum, meq) => sum + (meq ?? 0), 0), missing: null, silica };
  const stated = product.contents.find(({ substance }) => BASES.some(({ name }) => sameSubstance(name, substance)));
  return { product, meqPerL: null, missing: toEnterForAmount(line, stated?.substance ?? 'K2O'), silica };
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
