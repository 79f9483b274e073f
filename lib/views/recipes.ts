import 'server-only';
import type { Instant } from '@/shared/time/instant';
import type { Clock } from '../clock';
import { countingApplications } from '../engine/keepout/counting';
import { longestRei } from '../engine/keepout/reopening';
import type { Recipe, Shop } from '../engine/shop';
import type { Fig } from './figures';
import { type House, houseNow } from './house';

/** One recipe in the list of them. */
export type RecipeListed = {
  id: string;
  name: string;
  lines: { product: string; dose: string }[];
  costPerLitre: Fig;
  reiMinutes: number | null;
  /** Programs that spray it, each by the benches that it sprays. */
  programs: { id: string; benches: string[] }[];
  lastSprayed: Instant | null;
};

export type RecipesScreen = Pick<House, 'today' | 'ways'> & { recipes: RecipeListed[] };

/** Every recipe with what goes in, what a litre costs, who uses it and when it was last sprayed. */
export async function recipesScreen(clock: Clock): Promise<RecipesScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  return { today: house.today, ways: house.ways, recipes: recipesListed(house) };
}

/** Recipes as a list shows them: all of a shop, unless some are named. */
export function recipesListed({ shop, figure }: House, recipes = shop.recipes): RecipeListed[] {
  const last = lastSprayings(shop);
  return recipes.map((recipe) => ({
    id: recipe.id,
    name: recipe.name,
    lines: recipe.ingredients.map(({ product, dose }) => ({ product: product.name, dose: dose.text })),
    costPerLitre: figure('recipe', recipe.id, 'costPerLitre'),
    reiMinutes: longestRei(recipe),
    programs: programsOf(shop, recipe),
    lastSprayed: last.get(recipe.id) ?? null,
  }));
}

export const programsOf = ({ programs }: Shop, recipe: Recipe): RecipeListed['programs'] =>
  programs
    .filter(({ recipes }) => recipes.includes(recipe))
    .map(({ id, benches }) => ({ id, benches: benches.map(({ name }) => name) }));

/** When each recipe was sprayed last, by its id. */
function lastSprayings(shop: Shop): ReadonlyMap<string, Instant> {
  const last = new Map<string, Instant>();
  for (const { recipe, startedAt } of countingApplications(shop)) {
    const before = last.get(recipe.id);
    if (before === undefined || startedAt > before) last.set(recipe.id, startedAt);
  }
  return last;
}
