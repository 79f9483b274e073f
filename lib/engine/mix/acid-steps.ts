import { divide, exact, toNumber } from '@/shared/quantity/exact';
import { countingApplications } from '../keepout/counting';
import type { Application, Product, Recipe, Shop } from '../shop';
import { type AcidDose, acidDoses, acidsIn, firstPart, readingOf } from './acid-doses';
import type { Batch } from './batch';
import { groundFor } from './dry-run';
import { type LearnedCorrection, learnedCorrection, type Reading } from './learned-correction';
import { type OwnAcid, ownAcidIn } from './own-acid';
import { mixWater, onGround } from './spray-ph';
import { type AcidNeed, sureAcidNeeded } from './water';

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
export type AcidSteps = {
  /** What is still to be added: beside the acid that the recipe pours itself, where it does. */
  steps: AcidStep[];
  correction: LearnedCorrection | null;
  own: OwnAcid | null;
};

/**
 * Every acid of the shop as somebody adds it: two thirds, stir, measure, then by drops.
 *
 * Gives    no steps without a target or measured water, when an unknown alkali is in the mix, when no acid is needed, and
 *          when the recipe's own acid is enough, or of unknown strength
 */
export function acidSteps(shop: Shop, recipe: Recipe, batch: Batch): AcidSteps {
  const mix = onGround(recipe.ingredients, groundFor(batch));
  const water = shop.water && mixWater(mix, shop.water);
  const need = water && recipe.targetPh !== null ? sureAcidNeeded(water, recipe.targetPh) : null;
  const correction = learnedCorrection(acidReadings(shop));
  const own = ownAcidIn(mix, water, need);
  const left = own ? own.left : (need?.meqPerL ?? null);
  if (!water || need?.verdict !== 'add acid' || !left) return { steps: [], correction, own };
  const ml = toNumber(batch.spray.total);
  const byReadings = correction && leftBy(correction, need, left);
  const steps = acidDoses(shop.products, { ...need, meqPerL: left }).map((dose): AcidStep => {
    const first = firstPart(water, dose, own?.acidity ?? undefined);
    return {
      ...{ product: dose.product, missing: dose.missing },
      amount: times(dose, ml),
      first: first && { amount: (first.perLitre * ml) / ML_PER_LITRE, pH: first.pH },
      corrected: byReadings === null ? null : times(dose, (ml * byReadings) / left),
    };
  });
  return { steps, correction, own };
}

/** The readings speak of all the acid in a spray; what is in it already stays in it. */
const leftBy = ({ factor }: LearnedCorrection, { meqPerL }: AcidNeed, left: number): number =>
  Math.max(0, meqPerL * factor - (meqPerL - left));

const ML_PER_LITRE = 1000;

const times = ({ perLitre }: AcidDose, ml: number): number | null =>
  perLitre === null ? null : (perLitre * ml) / ML_PER_LITRE;

/** What the records say of acid that was poured and of the pH that was measured then, in the water as it is known now. */
export function acidReadings(shop: Shop): readonly Reading[] {
  const readings =
    known.get(shop) ?? countingApplications(shop).flatMap((application) => readingIn(shop, application) ?? []);
  known.set(shop, readings);
  return readings;
}

const known = new WeakMap<Shop, readonly Reading[]>();

function readingIn({ water: measured }: Shop, { recipe, sprayed, pH, acid }: Application): Reading | null {
  if (!measured || !sprayed || sprayed.over === 0n || pH === null || !acid) return null;
  const mix = onGround(recipe.ingredients, undefined);
  // Where another acid had a part in it, the reading says nothing about this one.
  if (acidsIn(mix).some(({ product }) => product !== acid.product)) return null;
  const water = mixWater(mix, measured);
  // µL in each mL is mL in each litre, and mg in each mL is g in each litre.
  return water && readingOf(water, acid.product, toNumber(divide(exact(acid.amount), sprayed)), pH);
}
