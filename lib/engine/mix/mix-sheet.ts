import type { Micros, Minutes } from '@/shared/quantity/amounts';
import {
  compare,
  divide,
  type Exact,
  exact,
  fraction,
  multiply,
  smaller,
  subtract,
  ZERO,
} from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import { countingApplications } from '../keepout/counting';
import { longestRei } from '../keepout/reopening';
import { byGravity, type Flag } from '../rules/flag';
import type { Recipe, Shop } from '../shop';
import type { Batch } from './batch';
import { type Caution, cautionsFor } from './cautions';
import { type DryRun, dryRun, groundFor } from './dry-run';
import { type UntriedPair, untriedPairs } from './jar-test';
import { measuredRoughly } from './measured-roughly';
import { chemistryOf, type MixChemistry } from './mix-chemistry';
import { type MixStep, mixStep } from './mix-step';
import { orderOfAddition } from './order';
import { type Wearing, wearingFor } from './wearing';

/** All that somebody with a sprayer in front of them needs, from the first water to what it cost. */
export type MixSheet = {
  recipe: Recipe;
  batch: Batch;
  /** The water that goes into each fill before anything else, mL: from half to three quarters of it. */
  waterFirst: { least: Exact; most: Exact };
  steps: MixStep[];
  chemistry: MixChemistry;
  wearing: Wearing;
  /** Null when any interval in the mix is unknown: keep out. */
  rei: Minutes | null;
  useWithin: Minutes | null;
  untried: UntriedPair[];
  cautions: Caution[];
  flags: Flag[];
  /** Those of them that are about measuring, whatever is sprayed where. */
  rough: Flag[];
  cost: MixCost;
};

/** What a batch costs, as its containers would really be drawn today. Labour is a line of its own. */
export type MixCost = {
  material: Micros | null;
  perLitre: Micros | null;
  /** Null also when nobody said how many plants it is for. */
  perPlant: Micros | null;
  labour: Micros | null;
};

/**
 * The mix sheet of a recipe.
 *
 *   for each ingredient  dose × spray, or × ground for a dose per area; shared equally over the fills
 *   cost                 a dry run: what the containers would give today, first-expiring first; what is short, at the
 *                        cheapest offer
 *
 * Takes    the shop as it stands, the batch, the day it is mixed, and how many minutes that takes
 * Gives    the sheet; nothing is drawn, and whatever is unknown is null
 * Units    µL, mg, mL and micros
 */
export function mixSheet(shop: Shop, recipe: Recipe, batch: Batch, today: Day, worked: Exact | null = null): MixSheet {
  const run = dryRun(shop, recipe, batch, today);
  const steps = stepsOf(shop, recipe, batch, run);
  const rough = measuredRoughly(shop, steps, today);
  return {
    recipe,
    batch,
    waterFirst: waterFirst(batch, steps),
    steps,
    chemistry: chemistryOf(shop, recipe, groundFor(batch), batch.spray.total),
    wearing: wearingFor([...new Set(recipe.ingredients.map(({ product }) => product))]),
    rei: longestRei(recipe),
    useWithin: recipe.useWithin,
    untried: untriedPairs(recipe.ingredients, countingApplications(shop)),
    cautions: cautionsFor(steps),
    flags: [...run.flags, ...rough].sort(byGravity),
    rough,
    cost: costOf(shop, batch, run.materialCost, worked),
  };
}

function stepsOf(shop: Shop, recipe: Recipe, batch: Batch, { lines }: DryRun): MixStep[] {
  return orderOfAddition(recipe.ingredients).flatMap((addition, at) => {
    const line = lines.find(({ ingredient }) => ingredient === addition.ingredient);
    return line ? [mixStep(shop, recipe, batch, { ...addition, order: at + 1, line })] : [];
  });
}

/** Half to three quarters of a fill, but never so much that what is poured in after it would not fit. */
function waterFirst({ spray: { fill } }: Batch, steps: readonly MixStep[]): MixSheet['waterFirst'] {
  let room = fill;
  for (const { perFill, ingredient } of steps) {
    if (perFill && ingredient.product.form === 'liquid') room = subtract(room, divide(perFill, MICROLITRES));
  }
  if (compare(room, ZERO) < 0) room = ZERO;
  return { least: smaller(multiply(fill, HALF), room), most: smaller(multiply(fill, THREE_QUARTERS), room) };
}

const MICROLITRES = exact(1000n);
export const ML_PER_LITRE = exact(1000n);
const HALF = fraction(1n, 2n);
const THREE_QUARTERS = fraction(3n, 4n);

const costOf = (shop: Shop, { spray, plants }: Batch, material: Micros | null, worked: Exact | null): MixCost => ({
  material,
  perLitre: spread(material, divide(spray.total, ML_PER_LITRE)),
  perPlant: spread(material, plants === null ? null : exact(plants)),
  labour: worked === null || shop.wagePerHour === null ? null : paidFor(worked, shop.wagePerHour),
});

/** Minutes ÷ 60 × wage per hour, to the nearest micro, a half up. */
const paidFor = (minutes: Exact, wagePerHour: Micros): Micros =>
  wholeNearest<Micros>(divide(multiply(minutes, exact(wagePerHour)), SIXTY));

const SIXTY = exact(60n);

/** A cost spread over litres or plants; null when either is not known, or there are none. Rounds to the nearest micro. */
export function spread(cost: Micros | null, over: Exact | null): Micros | null {
  if (cost === null || over === null || compare(over, ZERO) === 0) return null;
  return wholeNearest<Micros>(divide(exact(cost), over));
}
