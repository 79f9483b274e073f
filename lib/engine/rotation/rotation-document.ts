import { counted, listed } from '../rules/in-words';
import { modesByRecipe } from '../rules/mode-runs';
import type { Unflagged } from '../rules/unflagged';
import type { Program } from '../shop';
import { canRepeat } from './mode-group';
import { type BenchModes, modeHistory } from './mode-history';
import { type ProposedOrder, proposedOrder } from './proposed-order';
import { modesMissing } from './published-modes';

export type RotationDocument = ReturnType<typeof rotationDocument>;

/**
 * How the modes of action rotate: what each bench has had and will have, which order of each program's recipes keeps the
 * shop's limit, and which products count for nothing because no group of theirs was entered.
 *
 * Takes   the plan, whose horizon is how far ahead an order is judged
 */
export function rotationDocument(plan: Unflagged) {
  const modesOf = modesByRecipe();
  const hasModes = ({ recipes }: Program): boolean => recipes.some((recipe) => modesOf(recipe).some(canRepeat));
  return {
    sameModeInARow: plan.shop.sameModeInARow,
    benches: modeHistory(plan).map(benchOf),
    programs: plan.shop.programs.filter(hasModes).map((program) => orderOf(plan, proposedOrder(plan, program))),
    notEntered: plan.shop.products
      .filter(({ archived }) => !archived)
      .map((product) => ({ product: product.id, published: modesMissing(product) }))
      .filter(({ published }) => published.length > 0),
  };
}

const benchOf = ({ bench, turns }: BenchModes) => ({
  bench: bench.id,
  turns: turns.map(({ day, recipe, planned, modes }) => ({
    on: day,
    recipe: recipe.id,
    program: planned?.program.id ?? null,
    modes,
  })),
});

function orderOf({ shop }: Unflagged, order: ProposedOrder) {
  const { program, recipes, isAsNow, repeatsNow, repeats, proven } = order;
  return {
    program: program.id,
    recipes: program.recipes.map(({ id }) => id),
    proposed: recipes.map(({ id }) => id),
    ...{ isAsNow, repeatsNow, repeats, proven },
    message: messageFor(order, shop.sameModeInARow),
  };
}

function messageFor({ recipes, isAsNow, repeatsNow, repeats, proven }: ProposedOrder, most: number): string {
  const limit = `${most} in a row`;
  if (repeatsNow === 0) return `This order keeps every mode of action to ${limit} on its benches.`;
  const names = listed(recipes.map(({ name }) => name));
  if (repeats === 0) {
    return `Sprayed in the order ${names}, every mode of action keeps to ${limit}; as it is, one comes too often ${counted(repeatsNow, 'time')}. Look at the other flags again once it is changed.`;
  }
  const none = proven ? 'No order of these recipes' : 'None of the orders that were tried';
  const left = `${none} keeps every mode of action to ${limit}`;
  const remedy = 'Put a recipe of another mode group in.';
  if (isAsNow) return `${left}: one comes too often ${counted(repeatsNow, 'time')}. ${remedy}`;
  return `${left}. The order ${names} comes nearest: too often ${counted(repeats, 'time')} instead of ${repeatsNow}. ${remedy}`;
}
