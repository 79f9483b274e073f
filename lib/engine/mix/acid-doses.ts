import { toNumber } from '@/shared/quantity/exact';
import type { Content, Product } from '../shop';
import { strengthOf } from '../strength/strength-of';
import { type Acid, acidNamed, equivalentsPerMole } from './acids';
import type { Reading } from './learned-correction';
import { toEnterForStrength } from './missing-strength';
import { broughtBy, type Mixed } from './mix-strength';
import { type Acidity, type AcidNeed, acidNeeded, type Carbonate, phOf } from './water';

/** How much of one acid product, alone, brings the water to its target. */
export type AcidDose = {
  product: Product;
  /** mL of a liquid or g of a powder per litre of spray, which is also µL or mg per mL; null when it is not known. */
  perLitre: number | null;
  /** What to enter, or why there is no such dose, when it is not known. */
  missing: string | null;
};

/**
 * How much of each of the shop's acids brings water to its target, each alone.
 *
 *   per litre = acid needed (meq/L) ÷ Σ acids in it: g in each mL or g ÷ molar mass × 1000 × equivalents at the target
 *
 * Takes    the need as `acidNeeded` gives it; every product, of which those of kind pH adjuster with an acid count
 * Gives    one dose per such product; nothing of it when no acid is needed
 * Units    mL/L of a liquid, g/L of a powder, unrounded
 */
export const acidDoses = (products: readonly Product[], need: AcidNeed): AcidDose[] =>
  products.filter(isAcid).map((product) => acidDose(product, need));

const isAcid = ({ kind, contents }: Product): boolean =>
  kind === 'pH adjuster' && contents.some(({ substance }) => acidNamed(substance) !== null);

function acidDose(product: Product, { meqPerL, target }: AcidNeed): AcidDose {
  const acidity = acidityOf(product);
  if (!acidity) return { product, perLitre: null, missing: missingIn(product) };
  const perLitre = meqPerL === 0 ? 0 : meqPerL / acidity(target);
  return perLitre <= STRONGEST
    ? { product, perLitre, missing: null }
    : { product, perLitre: null, missing: tooWeak(product) };
}

/** A litre per litre or a kilogram per litre, at which there is no room for water. */
const STRONGEST = 1000;

const tooWeak = ({ name }: Product): string =>
  `${name} is too weak to bring the water there. Use another acid, or a target that is not as low.`;

/**
 * What a product gives off at a pH: meq per mL of a liquid, per g of a powder.
 *
 * Gives    null for a product without an acid, or with one of an unknown strength
 */
export function acidityOf(product: Product): Acidity | null {
  return given(
    acidsOf(product.contents).map(({ acid, contents }) => ({
      acid,
      mmol: firstKnown(contents, (content) => mmolPerUnit(content, product)),
    })),
  );
}

/**
 * The pH of water with so much of an acid product in it: mL/L of a liquid, g/L of a powder.
 *
 * Takes    what other acid in it gives off, if any
 * Gives    null as for `acidityOf`
 */
export function phAfter(
  water: Carbonate,
  product: Product,
  perLitre: number,
  beside: Acidity = () => 0,
): number | null {
  const acidity = acidityOf(product);
  return acidity && phOf(water, (pH) => perLitre * acidity(pH) + beside(pH));
}

/** The part of an acid that goes in before the first measurement. */
const FIRST_PART = 2 / 3;

/**
 * Two thirds of a dose, and the pH to expect after it: stir, measure, and go on by drops.
 *
 * Takes    what other acid in the water gives off, if any
 * Gives    null when the dose is not known
 */
export function firstPart(
  water: Carbonate,
  { product, perLitre }: AcidDose,
  beside?: Acidity,
): { perLitre: number; pH: number } | null {
  if (perLitre === null) return null;
  const part = perLitre * FIRST_PART;
  const pH = phAfter(water, product, part, beside);
  return pH === null ? null : { perLitre: part, pH };
}

/**
 * What a measurement says about the estimate: the acid that the measured pH should have taken, beside what it took.
 *
 * Takes    the water with its alkaline ingredients; how much of the acid product went in, mL/L or g/L; the pH measured then
 * Gives    null when the strength of the acid is not known, and when the measured pH is none that an acid brings about
 */
export function readingOf(water: Carbonate, product: Product, used: number, measuredPh: number): Reading | null {
  const need = acidNeeded(water, measuredPh);
  const estimated = need.verdict === 'add acid' ? acidDose(product, need).perLitre : null;
  return estimated === null ? null : { estimated, used };
}

/** An acid in a spray, in mmol/L; null when a product brings it in an unknown amount. */
export type AcidInMix = { acid: Acid; product: Product; mmol: number | null };

/** The acids that the ingredients of a mix bring, whatever kind of product they are. */
export const acidsIn = (mix: readonly Mixed[]): AcidInMix[] =>
  mix.flatMap((line) =>
    acidsOf(line.product.contents).map(({ acid, contents }) => ({
      acid,
      product: line.product,
      mmol: firstKnown(contents, (content) => mmolBrought(line, content)),
    })),
  );

/** What some acids together have given off at a pH; null when there is none, or the amount of any is not known. */
export function given(acids: readonly { acid: Acid; mmol: number | null }[]): Acidity | null {
  const known = acids.flatMap(({ acid, mmol }) => (mmol === null ? [] : [{ acid, mmol }]));
  if (known.length === 0 || known.length < acids.length) return null;
  return (pH) => known.reduce((sum, { acid, mmol }) => sum + mmol * equivalentsPerMole(acid, pH), 0);
}

/** The acids among contents, with everything that names each: a label may say one twice, and then it counts once. */
function acidsOf(contents: readonly Content[]): { acid: Acid; contents: Content[] }[] {
  const acids = new Map<Acid, Content[]>();
  for (const content of contents) {
    const acid = acidNamed(content.substance)?.acid;
    if (acid) acids.set(acid, [...(acids.get(acid) ?? []), content]);
  }
  return [...acids].map(([acid, naming]) => ({ acid, contents: naming }));
}

const firstKnown = (contents: readonly Content[], amountOf: (content: Content) => number | null): number | null =>
  contents.map(amountOf).find((amount) => amount !== null) ?? null;

function mmolPerUnit(content: Content, product: Product): number | null {
  const [strength, named] = [strengthOf(content, product), acidNamed(content.substance)];
  return strength && named && (toNumber(strength) / named.molarMass) * 1000;
}

function mmolBrought(line: Mixed, content: Content): number | null {
  const [brought, named] = [broughtBy(line, [content]), acidNamed(content.substance)];
  return brought && named && toNumber(brought) / named.molarMass;
}

function missingIn(product: Product): string {
  const unknown = acidsOf(product.contents).find(({ contents }) =>
    contents.every((content) => strengthOf(content, product) === null),
  );
  return toEnterForStrength(product, unknown?.contents[0]?.substance ?? 'acid');
}
