import type { Fault } from '../outcome';
import type { ShopFile, Written } from '../shop-file/contract';
import type { Fields } from './rows';
import {
  FieldFaults,
  fieldsOfRows,
  isBlank,
  orNull,
  readNumber,
  rowFrom,
  rowsTyped,
  sentForm,
  typedNumber,
} from './sent-fields';

const COLUMNS = ['product', 'dose', 'use', 'order'] as const;

/** One line of a recipe as it is typed: a product's id, the dose as people say it, the use, its own place in the order. */
export type RecipeLine = Record<(typeof COLUMNS)[number], string>;

/** A recipe as it is typed, readable or not. */
export type RecipeDraft = { name: string; targetPh: string; useWithinHours: string; lines: RecipeLine[] };

type FileRecipe = ShopFile['recipes'][number];

export const BLANK_LINE: RecipeLine = rowFrom(COLUMNS, () => '');

/** A recipe as its form shows it. Null: a new one, with nothing typed. */
export const draftOfRecipe = (recipe: FileRecipe | null): RecipeDraft => ({
  name: recipe?.name ?? '',
  targetPh: typedNumber(recipe?.targetPh ?? null),
  useWithinHours: typedNumber(recipe?.useWithinHours ?? null),
  lines: draftOfLines(recipe?.ingredients ?? []),
});

/** Ingredients as the lines of a form show them. */
export const draftOfLines = (ingredients: readonly FileRecipe['ingredients'][number][]): RecipeLine[] =>
  ingredients.map(({ product, dose, use, order }) => ({ product, dose, use: use ?? '', order: typedNumber(order) }));

/** What a browser sends of a recipe. */
export const fieldsOfRecipe = ({ lines, ...fields }: RecipeDraft): Fields => ({
  ...fields,
  ...fieldsOfRows('lines', lines),
});

export const recipeInFields = (fields: Fields): RecipeDraft => ({
  name: fields.name ?? '',
  targetPh: fields.targetPh ?? '',
  useWithinHours: fields.useWithinHours ?? '',
  lines: rowsTyped(fields, 'lines', COLUMNS),
});

export const RecipeForm = sentForm(
  recipeInFields,
  /^(name|targetPh|useWithinHours|lines\[\d{1,3}\]\.(product|dose|use|order))$/,
);

/**
 * The recipe that was typed, as a shop file writes it. Lines without product and dose are left out.
 *
 * Gives    the faults of what is no number, by field; the rest is judged with the whole shop
 */
export function recipeOfDraft(id: string, draft: RecipeDraft): { recipe: Written<'recipes'>; faults: Fault[] } {
  const faults = new FieldFaults();
  const ingredients = usedLines(draft).map(({ line, number }) => ({
    product: line.product,
    dose: line.dose.trim(),
    use: orNull(line.use),
    order: faults.take(`lines[${number}].order`, readNumber(line.order, 'Write its place, such as 1.')),
  }));
  if (ingredients.length === 0)
    faults.add('lines[0].product', 'Nothing goes into it yet. Choose a product and its dose.');
  for (const { line, number } of usedLines(draft)) {
    if (line.product === '') faults.add(`lines[${number}].product`, 'Choose the product, or empty its dose.');
    if (line.dose.trim() === '') faults.add(`lines[${number}].dose`, 'Write a dose, such as "2 tsp/gal".');
  }
  if (draft.name.trim() === '') faults.add('name', 'Write what the recipe is called.');
  const recipe = {
    id,
    name: draft.name.trim(),
    targetPh: faults.take('targetPh', readNumber(draft.targetPh, 'Write a pH, such as 6.2.')),
    useWithinHours: faults.take('useWithinHours', readNumber(draft.useWithinHours, 'Write hours, such as 8.')),
    ingredients,
  };
  return { recipe, faults: faults.faults };
}

/** The lines into which something was typed, with their number in the form. A use or a place alone is nothing yet. */
const usedLines = ({ lines }: RecipeDraft) =>
  lines.map((line, number) => ({ line, number })).filter(({ line: { product, dose } }) => !isBlank({ product, dose }));

/** The field of the form that a fault of the recipe's part of a shop file is about. */
export function fieldOfRecipePath(draft: RecipeDraft, path: string): string {
  const parts = /^recipes\[0\]\.(?:ingredients\[(\d+)\]\.)?(\w+)$/.exec(path);
  const [, place, field = path] = parts ?? [];
  return place === undefined ? field : `lines[${usedLines(draft)[Number(place)]?.number ?? 0}].${field}`;
}

/** A line in the order of addition: its number in the form, and whether something else than the usual order put it there. */
export type InOrder = { line: number; overriddenBy: 'recipe' | 'product' | null };

/**
 * The lines after one of them was moved up or down in the order of addition. What was moved gets a place of its own, and
 * whatever had one keeps where it stands now; all else stays in the usual order.
 *
 * Takes    the lines as typed, their order of addition, the place in it that is moved, and one up (−1) or down (1)
 */
export function movedInOrder(
  lines: readonly RecipeLine[],
  order: readonly InOrder[],
  place: number,
  by: -1 | 1,
): RecipeLine[] {
  const [moved, other] = [order[place], order[place + by]];
  if (!moved || !other) return [...lines];
  const now = order.map((each) => (each === moved ? other : each === other ? moved : each));
  return lines.map((line, number) => {
    const at = now.findIndex((each) => each.line === number);
    const isPlaced = number === moved.line || (at >= 0 && now[at]?.overriddenBy !== null);
    return isPlaced ? { ...line, order: String(at + 1) } : line;
  });
}
