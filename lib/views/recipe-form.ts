import 'server-only';
import { draftOfRecipe, type RecipeDraft } from '@/shared/forms/recipe';
import { accept, type Outcome } from '@/shared/outcome';
import type { Clock } from '../clock';
import { shopOf } from '../data/snapshot';
import { type RecipeCheck, recipeCheck } from '../engine/mix/recipe-check';
import type { Product } from '../engine/shop';
import { askedShop } from './asked-shop';
import { type HereNow, shopNow } from './house';
import { type ReplaceAsked, type Replaced, replacedIn } from './solutions';
import { openedThing, type ThingOpened } from './thing-form';

/** A product that a line may choose, with the uses that its label names. */
export type Choice = { id: string; name: string; form: Product['form']; uses: string[] };

export type RecipeFormScreen = Pick<HereNow, 'ways'> & {
  thing: ThingOpened;
  draft: RecipeDraft;
  check: RecipeCheck;
  choices: Choice[];
  /** What other recipes are called, so that a second one of a name is noticed. */
  otherNames: string[];
  fill: string;
  /** The line that was put in the place of another one, when that was asked. */
  replaced: Replaced | null;
};

/**
 * What the form of a recipe needs, changed or new.
 *
 * Takes    which line of it is to be poured from a stock solution, filled in to begin with
 * Gives    null when there is no shop, or no such recipe
 */
export async function recipeFormScreen(
  clock: Clock,
  id: string | null,
  asked: ReplaceAsked | null = null,
): Promise<RecipeFormScreen | null> {
  const here = await shopNow(clock);
  const recipe = here?.file.recipes.find((one) => one.id === id) ?? null;
  if (!here || (id !== null && !recipe)) return null;
  const known = here.shop.recipes.find((one) => one.id === id);
  const replacing = known && asked && replacedIn(here.shop, known, asked);
  const saved = draftOfRecipe(recipe);
  const draft = replacing
    ? { ...saved, lines: saved.lines.map((line, at) => (at === asked.line ? { ...line, ...replacing.typed } : line)) }
    : saved;
  const used = new Set(draft.lines.map(({ product }) => product));
  return {
    ways: here.ways,
    thing: openedThing(here.id, recipe),
    draft,
    check: recipeCheck(here.shop, draft),
    choices: here.shop.products.filter(({ id, archived }) => !archived || used.has(id)).map(choiceOf),
    otherNames: here.file.recipes.filter((one) => one.id !== id).map(({ name }) => name),
    fill: here.file.shop.fillCapacity,
    replaced: replacing?.replaced ?? null,
  };
}

const choiceOf = ({ id, name, form, label }: Product): Choice => ({
  id,
  name,
  form,
  uses: [...new Set(label.rates.map(({ use }) => use))],
});

/** What a recipe comes to while it is typed. Saves nothing. */
export async function recipeCheckAnswer(shop: string | undefined, draft: RecipeDraft): Promise<Outcome<RecipeCheck>> {
  const asked = await askedShop(shop);
  if (!asked.ok) return asked;
  return accept(recipeCheck(await shopOf(asked.value.id), draft));
}
