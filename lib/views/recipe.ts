import 'server-only';
import type { Instant } from '@/shared/time/instant';
import type { Clock } from '../clock';
import { type RecipeVersion, recipeVersions } from '../data/recipe-versions';
import { countingApplications } from '../engine/keepout/counting';
import type { CheckedLabel } from '../engine/mix/line-check';
import { recipeChanges } from '../engine/mix/recipe-changes';
import type { RecipeCheck } from '../engine/mix/recipe-check';
import type { Recipe } from '../engine/shop';
import { checkOf } from '../engine/working/recipe-figures';
import type { Fig } from './figures';
import { type House, houseNow } from './house';
import { programsOf, type RecipeListed } from './recipes';
import { type SolutionOffered, solutionsIn } from './solutions';

/** A line of a recipe as its page shows it. */
export type RecipeLineShown = {
  product: { id: string; name: string; form: 'liquid' | 'powder' };
  dose: string;
  use: string | null;
  perLitre: Fig;
  perGallon: Fig;
  perFill: Fig;
  cost: Fig;
  label: CheckedLabel;
};

/** A version in the history of a recipe. `changes` is null for the first one. */
export type VersionShown = {
  number: number;
  actor: string;
  savedAt: Instant;
  changes: string[] | null;
  applications: RecipeVersion['applications'];
};

export type RecipeScreen = Pick<House, 'today' | 'ways'> & {
  id: string;
  name: string;
  targetPh: number | null;
  useWithinMinutes: number | null;
  lines: RecipeLineShown[];
  strength: Fig[];
  costPerLitre: Fig;
  /** What the first sprayer holds, as it was typed. */
  fill: string;
  check: Pick<RecipeCheck, 'order' | 'elements' | 'flags' | 'reiMinutes' | 'equipment' | 'strength'>;
  programs: RecipeListed['programs'];
  /** What its lines could be poured from instead, at an equal dose. */
  solutions: SolutionOffered[];
  versions: VersionShown[];
};

/** One recipe: what goes in, how strong and dear it comes out, in which order, and how it became what it is. */
export async function recipeScreen(clock: Clock, id: string): Promise<RecipeScreen | null> {
  const house = await houseNow(clock);
  const recipe = house?.shop.recipes.find((one) => one.id === id);
  if (!house || !recipe) return null;
  const { today, ways, shop, file, figure } = house;
  const check = checkOf(shop, recipe);
  return {
    ...{ today, ways, id, check, name: recipe.name, targetPh: recipe.targetPh, useWithinMinutes: recipe.useWithin },
    lines: linesOf(house, recipe, check),
    strength: check.strength.map((_, number) => figure('recipe', id, 'strength', number)),
    costPerLitre: figure('recipe', id, 'costPerLitre'),
    fill: file.shop.fillCapacity,
    programs: programsOf(shop, recipe),
    solutions: solutionsIn(shop, recipe),
    versions: versionsOf(house, await recipeVersions(house.id, id)),
  };
}

function linesOf({ figure }: House, { id, ingredients }: Recipe, { lines }: RecipeCheck): RecipeLineShown[] {
  return ingredients.flatMap(({ product, dose, use }, number) => {
    const line = lines[number];
    if (line?.kind !== 'read') return [];
    const its = (what: string) => figure('recipe', id, 'line', number, what);
    return {
      product: { id: product.id, name: product.name, form: product.form },
      ...{ dose: dose.text, use, label: line.label },
      ...{ perLitre: its('perLitre'), perGallon: its('perGallon'), perFill: its('perFill'), cost: its('cost') },
    };
  });
}

function versionsOf({ shop }: House, versions: RecipeVersion[]): VersionShown[] {
  const names = new Map(shop.products.map(({ id, name }) => [id, name]));
  const counting = new Set(countingApplications(shop).map(({ id }) => id));
  return versions.map((version, place) => {
    const before = versions[place + 1];
    const { number, actor, savedAt } = version;
    const applications = version.applications.filter(({ id }) => counting.has(id));
    const changes = before ? recipeChanges(before, version, (product) => names.get(product) ?? product) : null;
    return { number, actor, savedAt, applications, changes };
  });
}
