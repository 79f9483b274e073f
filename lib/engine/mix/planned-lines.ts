import type { Micros } from '@/shared/quantity/amounts';
import type { Exact } from '@/shared/quantity/exact';
import type { Day } from '@/shared/time/day';
import { sumOrUnknown } from '../ahead/cost-sums';
import type { Bench, Container, Ingredient, Product, Recipe, Shop } from '../shop';
import { sprayedBatch } from './as-poured';
import { dryRun } from './dry-run';

/** What a mix was to cost, line by line, worked out after the fact. */
export type PlannedLines = {
  /** One for each product of the recipe; null when it is not known. */
  lines: { product: Product; cost: Micros | null }[];
  material: Micros | null;
  /** Whether the lines add up to what the sheet said, so that they can be taken for what it said of each. */
  isAsSaid: boolean;
};

/** A mix as it was to be: by the recipe of then, for so much spray (mL), out of the bottles of then. */
export type ToBeMixed = {
  recipe: Recipe;
  ingredients: Ingredient[];
  sprayMl: Exact;
  benches: Bench[];
  containers: Container[];
  day: Day;
  /** What the sheet said that the products would cost in all; null when nobody kept it. */
  said: Micros | null;
};

/**
 * What the sheet of a mix said of each of its lines, as far as that can still be worked out: a dry run of its recipe for
 * the spray that was mixed, with the bottles as they stood before it. The sheet may have been for more or less spray, and
 * what was short is priced by the offers of today: so the lines are the sheet's only when they add up to what it said.
 *
 * Units    micros
 */
export function plannedLines(shop: Shop, mix: ToBeMixed): PlannedLines {
  const { recipe, ingredients, sprayMl, benches, containers, day, said } = mix;
  const products = [...new Set(ingredients.map(({ product }) => product))];
  const run = dryRun({ ...shop, containers }, { ...recipe, ingredients }, sprayedBatch(benches, sprayMl), day);
  const lines = products.map((product) => ({
    product,
    cost: sumOrUnknown(
      run.lines.filter(({ ingredient }) => ingredient.product === product),
      ({ cost }) => cost,
    ),
  }));
  const { materialCost } = run;
  return {
    lines,
    material: materialCost,
    isAsSaid: said !== null && materialCost !== null && near(said, materialCost),
  };
}

/** A fill is kept in whole µL, and a line may differ by what one of them costs: less than anybody is shown. */
const near = (one: Micros, other: Micros): boolean => one - other < HALF_A_CENT && other - one < HALF_A_CENT;

const HALF_A_CENT = 5_000;
