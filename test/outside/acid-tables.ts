import { expect } from 'vitest';
import { acidDoses } from '@/lib/engine/mix/acid-doses';
import { acidNamed, equivalentsPerMole } from '@/lib/engine/mix/acids';
import { mixStrength } from '@/lib/engine/mix/mix-strength';
import { type AcidNeed, carbonateOf } from '@/lib/engine/mix/water';
import type { Product } from '@/lib/engine/shop';
import { acid, dosed } from '../lib/engine/mix/some-products';
import { amountFor, GALLON_ML } from './published';

/* Doses of acid as tables print them: fluid ounces or mL of a named acid for so many ppm of alkalinity, in gallons. */

export const near = (ours: number, published: number, within: number): void =>
  expect(Math.abs(ours - published) / published).toBeLessThanOrEqual(within);

export const named = (substance: string) => {
  const found = acidNamed(substance);
  if (!found) throw new Error(`${substance} is an acid`);
  return found;
};
export const perMole = (substance: string, pH: number): number => equivalentsPerMole(named(substance).acid, pH);
export const water = (alkalinityMgPerLCaCO3: number, pH: number) => {
  const found = carbonateOf({ alkalinityMgPerLCaCO3, pH });
  if (!found) throw new Error('there is such water');
  return found;
};

export const FLUID_OUNCE = 29.5735295625;
export const GALLON = 3.785411784;

/** mL of an acid that take so many mg/L as CaCO3 out of some gallons of water, ending at a pH, as a plan would pour it. */
export function mlFor(product: Product, removed: number, gallons: number, endsAt: number): number {
  const { alkalinity } = water(removed, 7.5);
  const need: AcidNeed = { verdict: 'add acid', meqPerL: alkalinity, before: 8, target: endsAt, message: null };
  const [dose] = acidDoses([product], need);
  if (!dose || dose.perLitre === null) throw new Error('the strength of the acid is known');
  return amountFor({
    product: { form: 'liquid' },
    dose: `${dose.perLitre.toFixed(9)} mL/L`,
    sprayMl: gallons * GALLON_ML,
  });
}

/** mg/L of the nutrient in an acid when so many fluid ounces of it are in some gallons of water. */
export function nutrientIn(product: Product, fluidOunces: number, gallons: number): number {
  const [inSpray] = mixStrength([dosed(product, `${fluidOunces} fl oz/${gallons} gal`)]).strength;
  const { brings } = named(inSpray?.substance ?? '').acid;
  return (inSpray?.mgPerL ?? 0) * (brings?.part ?? 0);
}

export const liquid = (percent: number, substance: string, densityGPerMl: number): Product =>
  acid(substance, [`${percent} % w/w ${substance}`], { densityGPerMl });

export const PHOSPHORIC_75 = liquid(75, 'phosphoric acid', 1.573);
export const SULFURIC_93 = liquid(93, 'sulfuric acid', 1.835);
export const SULFURIC_35 = liquid(35, 'sulfuric acid', 1.26);
export const NITRIC_63 = liquid(63, 'nitric acid', 1.381);
export const CITRIC_50 = liquid(50, 'citric acid', 1.24);

/** Where phosphoric acid gives exactly one proton: half way between its first two pKa. */
export const ONE_PROTON = (2.148 + 7.198) / 2;

export const TRAINING =
  "growing-media producer's training page on acid choices, Table 1, pthorticulture.com/en-ca/training-center/acid-choices-for-reducing-water-alkalinity";
export const UMASS =
  'UMass Extension, Adjusting Alkalinity with Acids, Table 1, read in a paraphrased mirror, since its own page was readable above the table only';
export const LEAFLET = 'an extension leaflet on acid injection';
