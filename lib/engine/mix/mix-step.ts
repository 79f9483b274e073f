import { divide, type Exact, exact, multiply } from '@/shared/quantity/exact';
import type { IngredientLine } from '../ahead/plan';
import { toEnterFor } from '../rules/missing-figures';
import type { Ingredient, Measure, Product, Recipe, Shop } from '../shop';
import { ratePerMl } from '../strength/dose-in-stock';
import type { Batch } from './batch';
import { benchesOf, groundFor } from './dry-run';
import { labelMost } from './label-most';
import { measurableBatch, type StockSolution, stockSolution } from './measurable-batch';
import { isWithin, type Measured, measured, measuredInDrops, type Wanted } from './measuring';
import type { Addition } from './order';

/** One ingredient in its turn, for one of the equal fills of a batch. */
export type MixStep = Addition & {
  order: number;
  /** For the whole batch: what it takes, which containers give it, and what that costs. */
  line: IngredientLine;
  /** For one fill: µL of a liquid, mg of a powder, exact; null when it cannot be worked out. */
  perFill: Exact | null;
  measured: Measured | null;
  /** Why there is no measured amount, and what to enter; null when there is one. */
  missing: string | null;
  /** Where measuring is off by more than the tolerance: what would bring it within. */
  better: Better | null;
};

/** A larger fill that is measured well enough, mL, or a stock solution for several fills. Null where there is none. */
export type Better = { fillMl: Exact | null; solution: StockSolution | null };

/** One step of the sheet: how much of an ingredient goes into each fill, and what measures it. */
export function mixStep(
  shop: Pick<Shop, 'measures' | 'drop'>,
  { ingredients }: Recipe,
  batch: Batch,
  placed: Addition & { order: number; line: IngredientLine },
): MixStep {
  const { dose, product } = placed.ingredient;
  const amount = perFill(placed.line, batch);
  if (!amount) {
    const missing = toEnterFor(dose, product, benchesOf(batch));
    return { ...placed, perFill: null, measured: null, missing, better: null };
  }
  const most = mostPerFill(placed.ingredient, ingredients, batch);
  const wanted = { amount, product, most };
  const reading = measuredInDrops(wanted, dose, shop.drop) ?? measured(wanted, shop.measures);
  return {
    ...placed,
    perFill: amount,
    measured: reading,
    missing: reading ? null : toMeasureWith(product),
    better: reading && !isWithin(reading) ? betterFor(wanted, shop.measures, batch) : null,
  };
}

/** The amount of the batch in equal parts. So little that it is kept as nothing is still something to measure. */
function perFill({ amount, ingredient }: IngredientLine, batch: Batch): Exact | null {
  if (amount === null) return null;
  if (amount > 0) return divide(exact(amount), exact(batch.spray.fills));
  const rate = ratePerMl(ingredient.dose, ingredient.product, groundFor(batch));
  return rate && multiply(rate, batch.spray.fill);
}

function mostPerFill(line: Ingredient, lines: readonly Ingredient[], batch: Batch): Exact | null {
  const most = labelMost(line, lines, groundFor(batch));
  return most && multiply(most, batch.spray.fill);
}

const betterFor = (wanted: Wanted, measures: readonly Measure[], { spray }: Batch): Better => ({
  fillMl: measurableBatch(wanted, measures, spray.fill),
  solution: stockSolution(wanted, measures),
});

/** What the shop must enter before an amount of a product can be measured, as a sentence. */
function toMeasureWith({ name, form, gramsPerTeaspoon }: Product): string {
  if (form === 'liquid') {
    return `Enter what the shop measures liquids with, such as "10 mL cylinder", 10 mL by 0.5 mL, to see how ${name} is measured.`;
  }
  const spoon =
    gramsPerTeaspoon === null ? `, or weigh a level teaspoon of ${name} and enter its grams` : ', or a spoon';
  return `Enter a scale, such as 500 g by 0.1 g${spoon}, to see how ${name} is measured.`;
}
