import 'server-only';
import type { Clock } from '../clock';
import type { Fig } from './figures';
import { type House, houseNow, shopNow } from './house';
import { openedThing, type ThingOpened } from './thing-form';

/** The next spraying of a recipe that holds a product: the dose of it, and what a litre of that spray costs. */
type SprayWithIt = { recipe: string; dose: string; costPerLitre: Fig };

export type WeighScreen = Pick<House, 'ways'> & {
  thing: ThingOpened;
  name: string;
  gramsPerTeaspoon: number | null;
  sprays: SprayWithIt[];
};

/** Weighing a teaspoon of a powder: what is kept now, and the sprays whose cost rests on it. Null for a liquid. */
export async function weighScreen(clock: Clock, id: string): Promise<WeighScreen | null> {
  const house = await houseNow(clock);
  const product = house?.file.products.find((one) => one.id === id);
  if (!house || product?.form !== 'powder') return null;
  const { name, gramsPerTeaspoon } = product;
  return {
    ways: house.ways,
    thing: openedThing(house.id, product),
    name,
    gramsPerTeaspoon,
    sprays: spraysWith(house, id),
  };
}

/** Each recipe once, in the order in which they are sprayed. */
function spraysWith({ plan, figure }: House, id: string): SprayWithIt[] {
  const found = new Map<string, SprayWithIt>();
  for (const { recipe, program, date } of plan.sprayings) {
    const line = recipe.ingredients.find(({ product }) => product.id === id);
    if (!line || found.has(recipe.id)) continue;
    const costPerLitre = figure('spraying', program.id, date, 'costPerLitre');
    found.set(recipe.id, { recipe: recipe.name, dose: line.dose.text, costPerLitre });
  }
  return [...found.values()];
}

export type DropScreen = {
  thing: ThingOpened;
  dropMl: number;
  /** What is dosed in drops: the recipe, or the product whose label says so, and the dose. */
  doses: { where: string; dose: string }[];
};

/** Measuring a drop of the shop's own dropper: what one counts as now, and which doses are counted in drops. */
export async function dropScreen(clock: Clock): Promise<DropScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { shop, recipes, products } = here.file;
  const inRecipes = recipes.flatMap(({ name, ingredients }) => ingredients.map(({ dose }) => ({ where: name, dose })));
  const onLabels = products.flatMap(({ name, label }) =>
    label.rates.flatMap(({ min, max }) =>
      [min, max].flatMap((dose) => (dose ? [{ where: `label of ${name}`, dose }] : [])),
    ),
  );
  const doses = [...inRecipes, ...onLabels].filter(({ dose }) => /\bdrops?\b/i.test(dose));
  return { thing: openedThing(here.id, null), dropMl: shop.dropMl, doses };
}
