import { draftOfLines } from '@/shared/forms/recipe';
import { toNumber } from '@/shared/quantity/exact';
import type { CheckedLine } from '../mix/line-check';
import { type RecipeCheck, recipeCheck } from '../mix/recipe-check';
import type { Ingredient, Recipe, Shop } from '../shop';
import { entered, type FoundWorking, figureAddress, money, type Shown, type Step, worked } from './shown';
import { sourceSteps } from './source-steps';

/**
 * The working of a figure of a recipe: `ID/costPerLitre`, `ID/strength/N`, or `ID/line/N/FIGURE`, where the figure is
 * perLitre, perGallon, perFill or cost.
 */
export function recipeWorking(shop: Shop, [id, figure, number, ...rest]: string[]): FoundWorking | null {
  const recipe = shop.recipes.find((one) => one.id === id);
  if (!recipe) return null;
  const check = checkOf(shop, recipe);
  if (figure === 'costPerLitre') return costWorking(recipe, check);
  if (figure === 'strength') return strengthWorking(recipe, check, Number(number));
  const [line, checked] = [recipe.ingredients[Number(number)], check.lines[Number(number)]];
  if (figure !== 'line' || !line || checked?.kind !== 'read') return null;
  if (rest[0] === 'cost') return lineCostWorking(recipe, line, checked, Number(number));
  return isPer(rest[0]) ? amountWorking(shop, recipe, Number(number), checked, rest[0]) : null;
}

/** A recipe of the shop as the check takes it. */
export const checkOf = (shop: Shop, { name, targetPh, ingredients }: Recipe): RecipeCheck =>
  recipeCheck(shop, {
    name,
    targetPh: targetPh === null ? '' : String(targetPh),
    useWithinHours: '',
    lines: draftOfLines(
      ingredients.map(({ product, dose, ...line }) => ({ ...line, product: product.id, dose: dose.text })),
    ),
  });

const unknown = (because: string): Shown => ({ kind: 'unknown', because });

function costWorking(recipe: Recipe, { costPerLitre, toKnowCost, lines }: RecipeCheck): FoundWorking {
  const steps = recipe.ingredients.flatMap(({ product, dose }, number): Step[] => {
    const line = lines[number];
    if (line?.kind !== 'read') return [];
    const at = figureAddress('recipe', recipe.id, 'line', number, 'cost');
    return [
      worked(`${product.name}, ${dose.text}`, money(line.cost.perLitre, line.cost.missing ?? ''), offerText(line), at),
    ];
  });
  return {
    title: `A litre of ${recipe.name}`,
    value: money(costPerLitre, toKnowCost.join(' ') || 'Nothing goes into it yet.'),
    rule: 'The cost of each line added up. Each is priced at the cheapest offer per unit that can be bought today, one pack, without freight. What a batch really costs follows the bottles that it is drawn from.',
    steps,
  };
}

const offerText = ({ cost: { at, madeOf } }: CheckedLine): string =>
  at ? `${at.pack} from ${at.supplier}` : madeOf.length > 0 ? 'what it is made from' : 'no offer entered';

function lineCostWorking(
  { id }: Recipe,
  { product, dose }: Ingredient,
  line: CheckedLine,
  number: number,
): FoundWorking {
  const { cost } = line;
  const perLitre = figureAddress('recipe', id, 'line', number, 'perLitre');
  return {
    title: `${product.name} in a litre of spray`,
    value: money(cost.perLitre, cost.missing ?? ''),
    rule: cost.madeOf.length > 0 ? OF_WHAT_IT_HOLDS : AT_ITS_PACK,
    steps: [
      worked('In a litre', amountShown(line, 'perLitre'), `dose of ${dose.text}`, perLitre),
      ...(cost.at
        ? [entered(`A pack of ${cost.at.pack}`, money(cost.at.price, ''), `offer of ${cost.at.supplier}`)]
        : []),
      ...cost.madeOf.flatMap((source) => sourceSteps(product, source)),
    ],
  };
}

const AT_ITS_PACK =
  'What a litre of spray takes of it × the price of the pack ÷ what the pack holds, rounded once to a millionth.';
const OF_WHAT_IT_HOLDS =
  'Nobody sells a stock solution: what a litre of spray takes of it × what is in each litre of it × the price of a pack of that ÷ what the pack holds, rounded once to a millionth. Water costs nothing.';

const VOLUMES = { perLitre: 'a litre', perGallon: 'a gallon', perFill: 'a full sprayer' } as const;
type Per = keyof typeof VOLUMES;
const isPer = (figure: string | undefined): figure is Per => figure !== undefined && figure in VOLUMES;

function amountWorking(shop: Shop, recipe: Recipe, number: number, line: CheckedLine, per: Per): FoundWorking | null {
  const ingredient = recipe.ingredients[number];
  if (!ingredient) return null;
  const { product, dose } = ingredient;
  const holds: Shown = { kind: 'volume', ml: toNumber(shop.sprayer.capacity) };
  return {
    title: `${product.name} in ${VOLUMES[per]} of ${recipe.name}`,
    value: amountShown(line, per),
    rule: `The dose as it was typed, brought to ${VOLUMES[per]} of spray. ${BY_WHAT[line.form]}`,
    steps: [
      entered('Dose', { kind: 'text', text: dose.text }, `recipe ${recipe.name}`),
      ...(per === 'perFill' ? [entered('The sprayer holds', holds, 'Setup, the tools')] : []),
    ],
  };
}

const BY_WHAT = {
  liquid: 'A weight goes by the density of the product, ppm by its strength.',
  powder: 'A spoon goes by what a level one weighs, ppm by the strength of the product.',
};

function amountShown({ amount, form, missing }: CheckedLine, per: Per): Shown {
  if (amount && 'perLitre' in amount) {
    const inSpray = amount[per] / 1000;
    return form === 'liquid' ? { kind: 'volume', ml: inSpray } : { kind: 'mass', g: inSpray };
  }
  return unknown(missing ?? 'It goes by area, so it depends on the benches.');
}

function strengthWorking(recipe: Recipe, { strength, lines }: RecipeCheck, number: number): FoundWorking | null {
  const sum = strength[number];
  if (!sum) return null;
  const steps = recipe.ingredients.flatMap(({ product, dose }, place): Step[] => {
    const line = lines[place];
    const brought =
      line?.kind === 'read'
        ? line.strength.find(({ substance }) => substance.toLowerCase() === sum.substance.toLowerCase())
        : null;
    return brought
      ? [entered(`${product.name}, ${dose.text}`, mgShown(brought.mgPerL), `contents of ${product.name}`)]
      : [];
  });
  return {
    title: `${sum.substance} in ${recipe.name}`,
    value: mgShown(sum.mgPerL),
    rule: 'What a litre of spray takes of each product × how much of the substance is in it, added up over the lines.',
    steps,
  };
}

const mgShown = (mgPerL: number | null): Shown =>
  mgPerL === null
    ? unknown('The strength of a product, or the amount of it, is not known.')
    : { kind: 'ratio', value: mgPerL, unit: 'mg/L' };
