import { ZERO } from '@/shared/quantity/exact';
import { listed } from '../rules/in-words';
import { isOil, isSulfur, says } from '../rules/oil-and-sulfur';
import type { Product } from '../shop';
import { asElement } from '../strength/elements';
import type { Addition } from './order';

/** Something to know before mixing that no label here says, in whole sentences, and where it is from. */
export type Caution = { about: Product[]; message: string; source: string | null };

/**
 * What is known to go wrong in a tank, whatever the labels say.
 *
 * Takes    the ingredients in the order in which they go in
 * Gives    cautions, the gravest kinds first; none of them replaces a label
 */
export function cautionsFor(order: readonly Addition[]): Caution[] {
  const products = [...new Set(order.map(({ ingredient }) => ingredient.product))];
  return [...silicateCautions(order, products), ...pairCautions(products), ...crowdCaution(products)];
}

function silicateCautions(order: readonly Addition[], products: Product[]): Caution[] {
  const silicates = products.filter(({ alkaliSilicate }) => alkaliSilicate);
  if (silicates.length === 0) return [];
  const cautions: Caution[] = [];
  const late = order.find(({ ingredient }, at) => ingredient.product.alkaliSilicate && precededBy(order, at));
  if (late) {
    cautions.push(
      said(
        [late.ingredient.product],
        `${late.ingredient.product.name} is an alkali silicate and does not go in first here. It gels or drops out where acid, calcium or magnesium is in the water already.`,
      ),
    );
  }
  const acids = products.filter(({ kind }) => kind === 'pH adjuster');
  if (acids.length > 0) {
    cautions.push(
      said(
        [...silicates, ...acids],
        `${names(silicates)} goes first, into plain water, and ${names(acids)} last, well diluted and little by little: silicate gels where acid meets it undiluted.`,
      ),
    );
  }
  const hard = products.filter((product) => !product.alkaliSilicate && bringsHardness(product));
  if (hard.length > 0) {
    cautions.push(
      said(
        [...silicates, ...hard],
        `${names(hard)} brings calcium or magnesium, which drops the silicate of ${names(silicates)} out. Try it in a jar, or spray them apart.`,
      ),
    );
  }
  return cautions;
}

/** Whether anything but another alkali silicate goes in before a place. */
const precededBy = (order: readonly Addition[], at: number): boolean =>
  order.slice(0, at).some(({ ingredient }) => !ingredient.product.alkaliSilicate);

const bringsHardness = ({ contents }: Product): boolean =>
  contents.some(({ substance }) => /^(Ca|Mg)$/.test(asElement(substance, ZERO)?.element ?? ''));

type IsOf = (product: Product) => boolean;

const saying =
  (word: RegExp): IsOf =>
  (product) =>
    says(product, word);

/** Kinds of product that meet badly, by the words on their labels. */
const isCopper = saying(/\bcopper\b/i);
const isCaptan = saying(/\bcaptan\b/i);
const hasLivingBacteria = saying(/\b(bacillus|streptomyces|pseudomonas)\b/i);
const hasLivingFungi = saying(/\b(beauveria|trichoderma|metarhizium|isaria|cordyceps|gliocladium|purpureocillium)\b/i);

/** Where sources differ, both ends of what they say: nothing between them is published, so nothing is worked out. */
const PAIRS: { one: IsOf; other: IsOf; message: string; source: string }[] = [
  {
    one: isOil,
    other: isSulfur,
    message:
      'Oil and sulfur burn leaves together. Advice on the days between them runs from 14 to 28, and 30 for lime sulfur; on dormant wood some mix them. The label decides.',
    source: 'WSU Extension Hortsense, Horticultural spray oil',
  },
  {
    one: isOil,
    other: isCaptan,
    message: 'Oil takes captan into the leaf, which burns it. Growers keep 14 days between them; the label decides.',
    source: 'a Michigan growers’ list',
  },
  {
    one: isCopper,
    other: hasLivingBacteria,
    message: 'Copper harms the living bacteria in the other. Spray them apart.',
    source: 'UC IPM Apple, Fungicide Efficacy: Biocontrols and Natural Products, note 4',
  },
  {
    one: isSulfur,
    other: hasLivingFungi,
    message: 'Sulfur harms the living fungus in the other. Spray them apart.',
    source: 'UC IPM Apple, Fungicide Efficacy: Biocontrols and Natural Products, note 4',
  },
];

function pairCautions(products: Product[]): Caution[] {
  return PAIRS.flatMap(({ one, other, message, source }) => {
    const [those, others] = [products.filter(one), products.filter(other)];
    const apart = those.some((product) => others.some((each) => each !== product));
    const about = [...new Set([...those, ...others])];
    return apart ? [{ about, message: `${names(about)}: ${message}`, source }] : [];
  });
}

/** Source: Ontario Ministry of Agriculture, "Tank Mixing Order and the Jar Test". */
export const MOST_PARTNERS = 3;

function crowdCaution(products: Product[]): Caution[] {
  if (products.length <= MOST_PARTNERS) return [];
  const message = `${products.length} products share this tank. Advice is to keep to ${MOST_PARTNERS}: with each more it is harder to say what went wrong.`;
  return [{ about: products, message, source: 'Ontario Ministry of Agriculture, Tank Mixing Order and the Jar Test' }];
}

const said = (about: Product[], message: string): Caution => ({ about, message, source: null });
const names = (products: readonly Product[]): string => listed(products.map(({ name }) => name));
