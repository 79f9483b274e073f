import { divide, exact, toNumber } from '@/shared/quantity/exact';
import type { Application, Product, Recipe, Shop } from '../shop';
import { type AcidDose, acidDoses, firstPart, readingOf } from './acid-doses';
import type { Batch } from './batch';
import { groundFor } from './dry-run';
import { type LearnedCorrection, learnedCorrection, type Reading } from './learned-correction';
import { mixWater, onGround } from './spray-ph';
import { acidNeeded } from './water';

/** One acid of the shop, brought to a target by itself: never as certain. mL or g for the whole batch. */
export type AcidStep = {
  product: Product;
  amount: number | null;
  missing: string | null;
  /** What goes in before the first measurement, and the pH to expect then. */
  first: { amount: number; pH: number } | null;
  /** What the shop's own readings make of the whole amount; null without enough readings. */
  corrected: number | null;
};

/** What brings a batch to the target of its recipe, and what the shop's own pH readings say about such estimates. */
export type AcidSteps = { steps: AcidStep[]; correction: LearnedCorrection | null };

/**
 * Every acid of the shop as somebody adds it: two thirds, stir, measure, then by drops.
 *
 * Gives    nothing without a target or measured water, when an unknown alkali is in the mix, and when no acid is needed
 */
export function acidSteps(shop: Shop, recipe: Recipe, batch: Batch): AcidSteps {
  const { products, water: measured } = shop;
  const water = measured && mixWater(onGround(recipe.ingredients, groundFor(batch)), measured);
  const need = water && recipe.targetPh !== null ? acidNeeded(water, recipe.targetPh) : null;
  const correction = learnedCorrection(acidReadings(shop));
  if (!water || need?.verdict !== 'add acid') return { steps: [], correction };
  const ml = toNumber(batch.spray.total);
  const steps = acidDoses(products, need).map((dose): AcidStep => {
    const first = firstPart(water, dose);
    return {
      ...{ product: dose.product, missing: dose.missing },
      amount: times(dose, ml),
      first: first && { amount: (first.perLitre * ml) / ML_PER_LITRE, pH: first.pH },
      corrected: correction && times(dose, ml * correction.factor),
    };
  });
  return { steps, correction };
}

const ML_PER_LITRE = 1000;

const times = ({ perLitre }: AcidDose, ml: number): number | null =>
  perLitre === null ? null : (perLitre * ml) / ML_PER_LITRE;

/** What the records say of acid that was poured and of the pH that was measured then, in the water as it is known now. */
export const acidReadings = (shop: Shop): Reading[] =>
  shop.applications.flatMap((application) => readingIn(shop, application) ?? []);

function readingIn({ water: measured }: Shop, { recipe, sprayed, pH, acid }: Application): Reading | null {
  if (!measured || !sprayed || sprayed.over === 0n || pH === null || !acid) return null;
  const water = mixWater(onGround(recipe.ingredients, undefined), measured);
  // µL in each mL is mL in each litre, and mg in each mL is g in each litre.
  return water && readingOf(water, acid.product, toNumber(divide(exact(acid.amount), sprayed)), pH);
}
