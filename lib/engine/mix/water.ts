import { showPh } from '@/shared/measure/show';
import type { Shop } from '../shop';

export type Water = NonNullable<Shop['water']>;

/** Water as its acids and bases see it; mixing changes neither its total carbonate nor its silica. */
export type Carbonate = {
  /** meq/L. */
  alkalinity: number;
  /** All carbonate, mmol/L. */
  total: number;
  /** All silicic acid, in whatever form, mmol/L: what is surely there, and the most that may be. Left out: none. */
  silica?: { least: number; most: number };
};

const NO_SILICA = { least: 0, most: 0 };

/** How many meq of H⁺ per litre something in the spray has given off at a pH. Never falls as the pH rises. */
export type Acidity = (pH: number) => number;

/**
 * Constants at 25 °C in an ideal solution. Source: the program's contract; the first two agree with the USGS database
 * phreeqc.dat (log K 10.329 and 16.681 for HCO₃⁻ and CO₂), and so does that of silicic acid (−9.83). Sjöberg and others,
 * Marine Chemistry 13 (1983) 35–44, give 9.84 for it in pure water. Its second proton, pK 13.4, is held at any pH of a spray.
 */
const PK1 = 6.352;
const PK2 = 10.329;
const PKW = 13.995;
const PK_SILICIC = 9.83;

/** mg of CaCO₃ in a meq of alkalinity: half its molar mass by IUPAC atomic weights. */
const MG_CACO3_PER_MEQ = 100.087 / 2;

/** A meq/L below which alkalinity cannot be told from none: one mg/L as CaCO₃, the finest step of the usual test kits. */
const KIT_STEP = 1 / MG_CACO3_PER_MEQ;

/**
 * The carbonate in the shop's water.
 *
 *   total carbonate = (alkalinity − OH⁻ + H⁺) ÷ (share as HCO₃⁻ + 2 × share as CO₃²⁻), at the water's own pH
 *
 * Gives    null for water that cannot be: a high pH with less alkalinity than the hydroxide alone makes. Within one mg/L,
 *          as in water that was purified, there is no carbonate and the pH decides.
 */
export function carbonateOf({ alkalinityMgPerLCaCO3, pH }: Water): Carbonate | null {
  const alkalinity = alkalinityMgPerLCaCO3 / MG_CACO3_PER_MEQ;
  const byCarbonate = alkalinity - hydroxideAt(pH);
  if (byCarbonate >= 0) return { alkalinity, total: byCarbonate / chargeAt(pH) };
  return byCarbonate < -KIT_STEP ? null : { alkalinity: hydroxideAt(pH), total: 0 };
}

/** Why there is no answer about some water, as a sentence; null when there is one. */
export const waterFault = (water: Water): string | null =>
  carbonateOf(water)
    ? null
    : `Water of pH ${showPh(water.pH)} cannot have an alkalinity as low as ${water.alkalinityMgPerLCaCO3} mg/L as CaCO3. Measure both again.`;

/** The same water with something alkaline in it, in meq/L, and the silica that comes with it, in mmol/L. */
export const withAlkali = ({ alkalinity, total }: Carbonate, meqPerL: number, silica = NO_SILICA): Carbonate => ({
  alkalinity: alkalinity + meqPerL,
  total,
  silica,
});

/**
 * The alkalinity that is left at a pH, its carbonate and its silica held constant.
 *
 *   total carbonate × (share as HCO₃⁻ + 2 × share as CO₃²⁻) + silica × share as H₃SiO₄⁻ + OH⁻ − H⁺
 *
 * Units    meq/L; negative where there is more acid than carbonate could take up
 */
export const alkalinityAt = ({ total, silica = NO_SILICA }: Pick<Carbonate, 'total' | 'silica'>, pH: number): number =>
  total * chargeAt(pH) + silica.least * silicateShare(pH) + hydroxideAt(pH);

/** The part of silicic acid that has given off its first proton at a pH. */
export const silicateShare = (pH: number): number => 1 / (1 + 10 ** (PK_SILICIC - pH));

/** The same water with as much silica as may be in it. */
const withMostSilica = ({ silica = NO_SILICA, ...water }: Carbonate): Carbonate => ({
  ...water,
  silica: { least: silica.most, most: silica.most },
});

const isSilicaKnown = ({ silica = NO_SILICA }: Carbonate): boolean => silica.most === silica.least;

/** The ions of water and its carbonate at a pH, mmol/L. */
export function ionsAt({ total }: Pick<Carbonate, 'total'>, pH: number) {
  const { HCO3, CO3 } = sharesAt(pH);
  return { HCO3: total * HCO3, CO3: total * CO3, ...ofWaterAt(pH) };
}

/**
 * The pH of water, with some acid in it or without.
 *
 *   the pH at which   alkalinity left at it + what the acid has given off at it = the alkalinity of the water
 *
 * Both terms on the left rise with the pH, so there is one answer, found by halving the scale until a double can hold no
 * more.
 */
export function phOf(water: Carbonate, acid: Acidity = () => 0): number {
  let [low, high] = [-2, 16];
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = (low + high) / 2;
    if (alkalinityAt(water, middle) + acid(middle) < water.alkalinity) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The same pH; null where nobody can say it to half of what a pH pen is off by, because the silica is not known: the
 * more of it there is, the lower the pH.
 */
export function surePhOf(water: Carbonate, acid: Acidity = () => 0): number | null {
  const highest = phOf(water, acid);
  if (isSilicaKnown(water)) return highest;
  return highest - phOf(withMostSilica(water), acid) <= PEN / 2 ? highest : null;
}

/** How much acid a target takes. `meqPerL` is nothing unless acid is to be added. */
export type AcidNeed = {
  verdict: 'add acid' | 'none needed' | 'acid cannot raise it';
  meqPerL: number;
  /** The pH before any acid. */
  before: number;
  target: number;
  /** What to know when no acid is to be added; null when it is. */
  message: string | null;
};

/** The acid that a target takes; null where the silica that nobody knows would change that by more than a hundredth. */
export function sureAcidNeeded(water: Carbonate, target: number): AcidNeed | null {
  const need = acidNeeded(water, target);
  if (isSilicaKnown(water)) return need;
  const other = acidNeeded(withMostSilica(water), target);
  const isSure = other.verdict === need.verdict && need.meqPerL - other.meqPerL <= need.meqPerL / 100;
  return isSure ? need : null;
}

/** What a pH pen in good order may be off by; a target within it is met. */
export const PEN = 0.1;

/**
 * The acid that brings water to a target pH.
 *
 *   acid needed = alkalinity of the water (with what is alkaline in it) − alkalinity left at the target pH
 *
 * Always an estimate: two thirds of it go in first, the mix is stirred and measured, and the rest follows by drops.
 *
 * Takes    the water with its alkaline ingredients in it
 * Gives    nothing to add, with a sentence, when the pH is at the target or below: an acid cannot raise it
 * Units    meq/L
 */
export function acidNeeded(water: Carbonate, target: number): AcidNeed {
  const before = phOf(water);
  const meqPerL = water.alkalinity - alkalinityAt(water, target);
  if (meqPerL > 0 && before > target) return { verdict: 'add acid', meqPerL, before, target, message: null };
  const met = target - before <= PEN;
  return {
    verdict: met ? 'none needed' : 'acid cannot raise it',
    meqPerL: 0,
    before,
    target,
    message: met
      ? `The water is at pH ${showPh(before)} already, so no acid is needed.`
      : `The water is at pH ${showPh(before)}, below the target of ${showPh(target)}, and an acid cannot raise it.`,
  };
}

/** The charge that a mole of carbonate carries at a pH, 0 to 2. */
function chargeAt(pH: number): number {
  const { HCO3, CO3 } = sharesAt(pH);
  return HCO3 + 2 * CO3;
}

/** OH⁻ less H⁺, in meq/L. */
function hydroxideAt(pH: number): number {
  const { OH, H } = ofWaterAt(pH);
  return OH - H;
}

/** The shares of carbonate that are HCO₃⁻ and CO₃²⁻; the rest is dissolved CO₂. */
function sharesAt(pH: number): { HCO3: number; CO3: number } {
  const [first, second] = [10 ** (pH - PK1), 10 ** (2 * pH - PK1 - PK2)];
  const all = 1 + first + second;
  return { HCO3: first / all, CO3: second / all };
}

const ofWaterAt = (pH: number): { OH: number; H: number } => ({ OH: 10 ** (3 + pH - PKW), H: 10 ** (3 - pH) });
