import type { Dose } from '@/shared/measure/dose';
import { divide, type Exact, exact, toNumber } from '@/shared/quantity/exact';
import { groundOf } from '../bench/ground';
import { sprayFor } from '../bench/spray-volume';
import { toEnterForStrength } from '../mix/missing-strength';
import { broughtBy } from '../mix/mix-strength';
import { modesOf } from '../rotation/mode-group';
import { doseFindings, type Sprayed } from '../rules/dose-outside-label';
import { mixFindings } from '../rules/must-not-mix';
import type { Ingredient, Product, Recipe, Shop } from '../shop';
import { ratePerMl, stockPerSquareMetre } from '../strength/dose-in-stock';
import { equivalentDose } from '../strength/equivalent-dose';
import { sameSubstance, strengthIn } from '../strength/strength-of';

/** What stands in a recipe, and the substance of it that another product would have to bring. */
export type Wanted = {
  recipe: Recipe;
  ingredient: Ingredient;
  substance: string;
  /** mg of the substance in each litre of spray; null when it cannot be worked out. */
  mgPerLitre: Exact | null;
};

/** A product that could stand there, at the dose that brings as much of the substance. */
export type Candidate = {
  product: Product;
  /** What would stand in the recipe; null when the strength of one of the two is not known. */
  ingredient: Ingredient | null;
  allowed: boolean;
  /** Why not, one sentence each. Empty when it is. */
  reasons: string[];
  /** What else it brings that what stands there now does not. */
  alsoBrings: string[];
};

/**
 * What a product brings into a recipe, by the substance that other products of the shop have as well; with none, by the
 * first that it lists.
 *
 * Gives    null when the recipe does not have the product, or the product lists no substance
 */
export function wantedIn(shop: Shop, recipe: Recipe, product: Product): Wanted | null {
  const ingredient = recipe.ingredients.find((one) => one.product === product);
  const substance = ingredient && substanceOf(shop, ingredient);
  if (!ingredient || !substance) return null;
  const stated = product.contents.filter((one) => sameSubstance(one.substance, substance));
  const mgPerLitre = broughtBy({ ...ingredient, ground: groundFor(shop, recipe) }, stated);
  return { recipe, ingredient, substance, mgPerLitre };
}

function substanceOf({ products }: Shop, { dose, product }: Ingredient): string | null {
  if (dose.kind === 'substance') return dose.substance;
  const names = product.contents.map(({ substance }) => substance);
  const strong = names.filter((name) => strengthIn(product, name) !== null);
  const shared = (name: string) => products.some((one) => one !== product && !one.archived && holds(one, name));
  return strong.find(shared) ?? names.find(shared) ?? strong[0] ?? names[0] ?? null;
}

/** Whether a product lists a substance. */
export const holds = ({ contents }: Product, name: string): boolean =>
  contents.some(({ substance }) => sameSubstance(substance, name));

/** What the recipe is sprayed on where it is sprayed at all: doses per area differ by it. */
function sprayedOn({ programs, sprayer }: Shop, recipe: Recipe): Sprayed {
  const program = programs.find(({ recipes }) => recipes.includes(recipe));
  const benches = program?.benches ?? [];
  return { benches, sprayMl: program ? (sprayFor(benches, program.sprayer ?? sprayer)?.total ?? null) : null };
}

function groundFor(shop: Shop, recipe: Recipe) {
  const { benches, sprayMl } = sprayedOn(shop, recipe);
  return { area: groundOf(benches), sprayMl };
}

/**
 * Everything that has the substance, at the dose that brings as much of it: what stands there now first, then the
 * others in the shop's order.
 */
export function candidatesFor(shop: Shop, wanted: Wanted): Candidate[] {
  const now = wanted.ingredient.product;
  const others = shop.products.filter((one) => one !== now && !one.archived && holds(one, wanted.substance));
  return [now, ...others].map((product) => candidateOf(shop, wanted, product));
}

/** One product at the equal dose, and whether its label allows it there. */
export function candidateOf(shop: Shop, wanted: Wanted, product: Product): Candidate {
  const now = wanted.ingredient.product;
  const ingredient = product === now ? wanted.ingredient : inPlaceOf(wanted, product);
  const reasons = ingredient ? reasonsAgainst(shop, wanted, ingredient) : [missingStrength(wanted, product)];
  const alsoBrings = product === now ? [] : broughtBeside(product, now, wanted.substance);
  return { product, ingredient, allowed: reasons.length === 0, reasons, alsoBrings };
}

/** The ingredient that brings as much of the substance in another product; null when either strength is not known. */
function inPlaceOf(wanted: Wanted, product: Product): Ingredient | null {
  const { ingredient: now } = wanted;
  const dose = equalDose(wanted, product);
  return dose && { product, dose, use: now.use, order: null };
}

function equalDose({ ingredient: { dose, product: from }, substance, mgPerLitre }: Wanted, to: Product): Dose | null {
  const measure = to.form === 'liquid' ? 'volume' : 'mass';
  const unit = to.form === 'liquid' ? 'mL' : 'g';
  if (dose.kind === 'perArea') {
    const stock = stockPerSquareMetre(dose, from);
    const rate = stock && equivalentDose(divide(stock, THOUSAND), from, to, substance);
    return rate && { text: `${toNumber(rate)} ${unit}/m2`, kind: 'perArea', measure, perSquareMetre: rate };
  }
  const now = ratePerMl(dose, from);
  // A dose in ppm says what it brings, whatever is unknown about the product.
  const rate = now ? equivalentDose(now, from, to, substance) : rateFor(mgPerLitre, to, substance);
  if (!rate) return null;
  const text = `${toNumber(rate)} ${unit}/L`;
  return to.form === 'liquid' ? { text, kind: 'volume', mlPerLitre: rate } : { text, kind: 'mass', gPerLitre: rate };
}

const THOUSAND = exact(1000n);

/** mL/L or g/L of a product that bring so many mg/L of a substance; null when one of the two is not known. */
function rateFor(mgPerLitre: Exact | null, product: Product, substance: string): Exact | null {
  const strength = strengthIn(product, substance);
  return mgPerLitre && strength && strength.over !== 0n ? divide(divide(mgPerLitre, THOUSAND), strength) : null;
}

function missingStrength({ ingredient: { product: now, dose }, substance }: Wanted, product: Product): string {
  const unknown = strengthIn(product, substance) === null ? product : now;
  if (strengthIn(unknown, substance) === null) return toEnterForStrength(unknown, substance);
  return `${now.name} at ${dose.text} cannot be turned into an amount yet.`;
}

/** What speaks against an ingredient in the place of what stands there: its label, and the rest of the tank. */
function reasonsAgainst(shop: Shop, { recipe, ingredient: now }: Wanted, ingredient: Ingredient): string[] {
  const { product } = ingredient;
  const rest = recipe.ingredients.filter((one) => one.product !== now.product);
  const isTwice = rest.some((one) => one.product === product);
  const doses = doseFindings({ ...recipe, ingredients: [ingredient] }, sprayedOn(shop, recipe));
  const already = new Set(mixFindings({ ingredients: rest }).map(({ message }) => message()));
  const pairs = mixFindings({ ingredients: [ingredient, ...rest] }).filter(({ message }) => !already.has(message()));
  return [
    ...doses.map(({ message }) => message()),
    ...(needsRates(product)
      ? [`Enter the rates of the label of ${product.name}: without them nobody can say that it allows this use.`]
      : []),
    ...(isTwice ? [`${product.name} is in this recipe already. Change its dose there instead.`] : []),
    ...pairs.map(({ message }) => message()),
  ];
}

/** What is used against pests and diseases may be used only as its label says, so a label without rates allows nothing. */
const needsRates = ({ kind, label }: Product): boolean =>
  label.rates.length === 0 && /insecticide|miticide|fungicide/.test(kind);

/** Other substances first, then what else differs on its label: formulation, intervals, modes of action. */
function broughtBeside(product: Product, now: Product, substance: string): string[] {
  const other = product.contents.filter((one) => !sameSubstance(one.substance, substance));
  const { rei, phiDays } = product.label;
  const known = new Set(modesOf(now).map(({ group }) => group));
  return [
    ...other.map((one) => `${one.substance} ${one.amount} ${one.basis}`),
    ...(product.formulation !== null && product.formulation !== now.formulation
      ? [`formulation ${product.formulation}`]
      : []),
    ...(rei === now.label.rei ? [] : [rei === null ? 'REI unknown' : `REI ${rei / 60} h`]),
    ...(phiDays === now.label.phiDays ? [] : [phiDays === null ? 'PHI unknown' : `PHI ${phiDays} days`]),
    ...modesOf(product)
      .filter(({ group, standing }) => standing !== 'unknown' && !known.has(group))
      .map(({ text }) => text),
  ];
}

/** The product's dose as a number, in its unit. Null when it cannot be worked out. */
export function doseNumber(shop: Shop, recipe: Recipe, ingredient: Ingredient): { dose: Exact; unit: string } | null {
  const { product, dose } = ingredient;
  const unit = product.form === 'liquid' ? 'mL' : 'g';
  if (dose.kind === 'perArea') {
    const stock = stockPerSquareMetre(dose, product);
    return stock && { dose: divide(stock, THOUSAND), unit: `${unit}/m2` };
  }
  const rate = ratePerMl(dose, product, groundFor(shop, recipe));
  return rate && { dose: rate, unit: `${unit}/L` };
}
