import type { Ingredient, Product } from '../shop';
import { STAGES, type Stage, stageOfFormulation } from './formulation';

/** One ingredient in its turn, with the reason for that turn. */
export type Addition = {
  ingredient: Ingredient;
  stage: Stage;
  /** Whose word put it here instead of the usual order. */
  overriddenBy: 'recipe' | 'product' | null;
  /** Whether the stage had to be guessed, because no formulation is known. */
  assumed: boolean;
  /** In one sentence; a second one where a place was overridden or guessed. */
  why: string;
};

/**
 * The order in which the ingredients of a recipe go into the water.
 *
 *   alkali silicates · water-soluble bags · dry flowables and wettable powders · liquid flowables · emulsifiable
 *   concentrates and oils · soluble products and nutrients · surfactants · acids and other pH adjusters
 *
 * A recipe's own place comes before the product's, and either before the usual order: 1 is first, 2 second. Whatever
 * has no place of its own fills the rest in the usual order, and within a stage in the order of the recipe.
 *
 * Gives   each ingredient once
 */
export function orderOfAddition(ingredients: readonly Ingredient[]): Addition[] {
  const additions = ingredients.map(additionOf);
  const usual = additions.filter(({ overriddenBy }) => overriddenBy === null).sort(byStage);
  const placed = additions.filter(({ overriddenBy }) => overriddenBy !== null).sort(byPlace);
  const order: Addition[] = [];
  while (order.length < additions.length) {
    const isDue = placed[0] && (usual.length === 0 || placeOf(placed[0]) <= order.length + 1);
    const next = (isDue ? placed : usual).shift();
    if (next) order.push(next);
  }
  return order;
}

const byStage = (a: Addition, b: Addition): number => STAGES.indexOf(a.stage) - STAGES.indexOf(b.stage);
const byPlace = (a: Addition, b: Addition): number => placeOf(a) - placeOf(b) || byStage(a, b);
const placeOf = ({ ingredient: { order, product } }: Addition): number => order ?? product.mixOrder ?? 0;

function additionOf(ingredient: Ingredient): Addition {
  const { product, order } = ingredient;
  const { stage, assumed } = stageOf(product);
  const overriddenBy = order !== null ? 'recipe' : product.mixOrder !== null ? 'product' : null;
  const sentences = overriddenBy ? [OVERRIDDEN[overriddenBy](product, stage)] : [WHY[stage]];
  if (assumed && !overriddenBy) sentences.push(guessed(product));
  return { ingredient, stage, overriddenBy, assumed, why: sentences.join(' ') };
}

function stageOf(product: Product): { stage: Stage; assumed: boolean } {
  if (product.alkaliSilicate) return { stage: 'silicate', assumed: false };
  if (product.kind === 'pH adjuster') return { stage: 'acid', assumed: false };
  if (product.kind === 'surfactant') return { stage: 'surfactant', assumed: false };
  const known = product.formulation === null ? null : stageOfFormulation(product.formulation);
  return known ? { stage: known, assumed: false } : { stage: stageByKind(product), assumed: true };
}

/** Where the formulation is not known, an earlier turn is the safer guess: what is spread out already takes no harm. */
function stageByKind({ kind, form, name, contents }: Product): Stage {
  if (kind === 'nutrient' || kind === 'biostimulant') return 'solution';
  if (form === 'powder') return 'dry';
  const words = [name, ...contents.map(({ substance }) => substance)];
  if (words.some((word) => /\boils?\b/i.test(word))) return 'emulsion';
  return kind === 'other' ? 'solution' : 'suspension';
}

const WHY: Record<Stage, string> = {
  silicate:
    'Alkali silicates go into plain water before everything else, since they gel or drop out with acid, calcium or magnesium.',
  bag: 'Water-soluble bags go in whole and early, since their film dissolves in plain water and not in what is oily or salty.',
  dry: 'Dry flowables and wettable powders go in before any liquid, since they wet and spread out best in water alone.',
  suspension: 'Liquid flowables go in after the dry ones and before oils, which would coat their particles.',
  emulsion:
    'Emulsifiable concentrates and oils go in once all particles are spread out, so that none clump in the oil.',
  solution:
    'Soluble products and nutrients go in after them, since salt in the water can break what must be spread out.',
  surfactant: 'Surfactants go in near the end, so that the stirring before them makes no foam.',
  acid: 'Acids and other pH adjusters go in last, well diluted and little by little, since what is in the water changes the pH too.',
};

const USUALLY: Record<Stage, string> = {
  silicate: 'first, into plain water',
  bag: 'with the water-soluble bags',
  dry: 'with the wettable powders and dry flowables',
  suspension: 'with the liquid flowables',
  emulsion: 'with the emulsifiable concentrates and oils',
  solution: 'with the soluble products and nutrients',
  surfactant: 'with the surfactants, near the end',
  acid: 'last',
};

const OVERRIDDEN = {
  recipe: ({ name }: Product, stage: Stage) =>
    `This recipe gives ${name} this place; it would usually go in ${USUALLY[stage]}.`,
  product: ({ name }: Product, stage: Stage) =>
    `${name} was given this place where it is entered; it would usually go in ${USUALLY[stage]}.`,
};

const guessed = ({ name, formulation, kind, form }: Product): string =>
  formulation === null
    ? `No formulation is entered for ${name}, so its place follows from its being ${kind}, ${form}.`
    : `The formulation "${formulation}" is not known here, so the place of ${name} follows from its being ${kind}, ${form}.`;
