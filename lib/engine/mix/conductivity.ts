import { exact } from '@/shared/quantity/exact';
import { listed } from '../rules/in-words';
import type { Content, Product } from '../shop';
import type { Ground } from '../strength/dose-in-stock';
import { asElement } from '../strength/elements';
import { acidsIn } from './acid-doses';
import { acidNamed } from './acids';
import { alkaliOf, unreckonedIn } from './alkali';
import { conductivityOf, type Ions, netCharge, together } from './ions';
import { acidIons, nutrientIons, waterIons } from './mix-ions';
import { type Mixed, mixStrength } from './mix-strength';
import { type Mixture, onGround, sprayPhOf } from './spray-ph';
import { type Water, waterFault } from './water';

export type Conductivity = {
  /** mS/cm at 25 °C; null while `unknown` holds anything. */
  mSPerCm: number | null;
  /** mS/cm of what is known, which the spray has at the least. */
  atLeast: number;
  /** Whether it is above the shop's limit, at which leaves may burn; null without a limit, and when nobody can say. */
  overLimit: boolean | null;
  /** What the figure takes for granted, in whole sentences. */
  rests: string[];
  /** What would have to be entered or measured, in whole sentences. */
  unknown: string[];
};

type Spray = {
  recipe: Mixture;
  water: Water | null;
  /** The ground and the spray for it, where something is dosed per area. */
  ground?: Ground;
  /** mS/cm above which the shop wants to be warned. */
  limit: number | null;
};

/**
 * The electrical conductivity that a spray will have, from the ions that its water and its labels name.
 *
 *   water       the carbonate that its alkalinity comes from, with calcium; potassium of an alkali silicate; acids as far as
 *               they have dissociated at the pH of the spray
 *   nutrients   K, Ca, Mg, Na and Cl as they are, S as sulfate, P as phosphate; N as nitrate and ammonium, in the shares
 *               at which the charges balance
 *   the rest    charge that nothing named carries is counted as chloride or potassium, which conduct best: a caution may
 *               come early, and not late
 *
 * Units    mS/cm at 25 °C, unrounded
 * Source   as `conductivityOf`; an estimate, to be checked with a meter
 */
export function estimateConductivity({ recipe, water, ground, limit }: Spray): Conductivity {
  const mix = onGround(recipe.ingredients, ground);
  const pH = sprayPhOf(recipe, water, ground)?.pH ?? water?.pH ?? NEUTRAL;
  const acids = acidsIn(mix);
  const nutrients = nutrientIons(mixStrength(mix.filter(isNoSilicate).map(withoutAcids)).elements, pH);
  const inWater = together(water ? waterIons(water, alkaliOf(mix), pH) : {}, acidIons(acids, pH));
  const ions = together(balanced(inWater), balanced(nutrients.ions));
  const atLeast = conductivityOf(ions);
  const unknown = [...unknownOf(mix, water), ...nutrients.unknown];
  return {
    mSPerCm: unknown.length > 0 ? null : atLeast,
    atLeast,
    overLimit: verdict(atLeast, limit, unknown.length > 0),
    rests: [...RESTS, ...(water ? [ON_WATER] : []), ...nutrients.rests],
    unknown,
  };
}

const NEUTRAL = 7;

const RESTS = [
  'The ions are counted as free at 25 °C, and charge that no label names as chloride or potassium.',
  'Trace elements and silica are not counted: they carry next to nothing.',
];
const ON_WATER =
  "The water's alkalinity is counted as bicarbonate with calcium. Its chloride, sulfate and sodium are not known and not counted.";

const isNoSilicate = ({ product }: Mixed): boolean => !product.alkaliSilicate;

/** A line without the nutrients that its own acid is made of: phosphoric acid and its P2O5 are one thing. */
function withoutAcids<Line extends Mixed>(line: Line): Line {
  const { contents } = line.product;
  const made = contents.flatMap(({ substance }) => acidNamed(substance)?.acid.brings?.element ?? []);
  const kept = (content: Content) => !made.some((element) => element === elementOf(content));
  return { ...line, product: { ...line.product, contents: contents.filter(kept) } };
}

const elementOf = ({ substance }: Content): string | null => asElement(substance, exact(1n))?.element ?? null;

/** Ions with what must be there beside them, since no solution carries a charge. */
function balanced(ions: Ions): Ions {
  const net = netCharge(ions);
  return together(ions, net > 0 ? { Cl: net } : { K: -net });
}

function verdict(atLeast: number, limit: number | null, isMore: boolean): boolean | null {
  if (limit === null) return null;
  return atLeast > limit || (isMore ? null : false);
}

function unknownOf(mix: readonly Mixed[], water: Water | null): string[] {
  const fault = water && waterFault(water);
  const missing = alkaliOf(mix).flatMap((line) => line.missing ?? []);
  const acids = acidsIn(mix).filter(({ mmol }) => mmol === null);
  return [
    ...(water ? [] : ['The water was never measured, so what it holds is not counted.']),
    ...(fault ? [fault] : []),
    ...new Set(missing),
    ...named(
      acids.map(({ product }) => product),
      'How much acid comes with',
    ),
    ...named(unreckonedIn(mix), 'Which ions come with'),
    ...named(
      mix.flatMap(({ product }) => (product.contents.length === 0 ? product : [])),
      'What is in',
    ),
  ];
}

function named(products: readonly Product[], what: string): string[] {
  const names = [...new Set(products.map(({ name }) => name))];
  return names.length === 0 ? [] : [`${what} ${listed(names)} is not known.`];
}
