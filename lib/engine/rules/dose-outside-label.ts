import type { Dose } from '@/shared/measure/dose';
import { add, compare, type Exact } from '@/shared/quantity/exact';
import type { Ingredient, Product, Rate, Recipe } from '../shop';
import { ratePerMl } from '../strength/dose-in-stock';
import { sameSubstance } from '../strength/strength-of';
import type { Flag, Severity } from './flag';
import { listed, sameWords } from './in-words';
import { toEnterFor } from './missing-figures';
import { type Finding, flagRecipes } from './recipe-findings';
import type { Unflagged } from './unflagged';

/**
 * A dose outside the rates of the product's own label.
 *
 * Looks at  the dose of each product in a recipe, all its lines together, and the label's rate for the use that the line
 *           names; without a use, the label's only rate
 * Fires     above the maximum; below the minimum; when the label has no rate for that use, or several and no use is named;
 *           when dose and rate cannot be compared. Exactly at either end is inside. A product without rates is not judged.
 * Severity  stop above the maximum (without a use: above every maximum), warn otherwise
 * Cleared   by a dose inside the range, by naming the use, or by entering the density, the weight of a teaspoon or the
 *           strength that the comparison lacks
 */
export const doseOutsideLabel = (plan: Unflagged): Flag[] => flagRecipes(plan, 'dose-outside-label', findIn);

function findIn({ ingredients }: Recipe): Finding[] {
  const findings: Finding[] = [];
  for (const product of new Set(ingredients.map((ingredient) => ingredient.product))) {
    const lines = ingredients.filter((ingredient) => ingredient.product === product);
    const verdict = product.label.rates.length === 0 ? null : judge(product, lines);
    if (verdict) findings.push({ product, ...verdict });
  }
  return findings;
}

type Verdict = { severity: Severity; message: () => string };
const stop = (message: () => string): Verdict => ({ severity: 'stop', message });
const warn = (message: () => string): Verdict => ({ severity: 'warn', message });

function judge(product: Product, lines: Ingredient[]): Verdict | null {
  const { rates } = product.label;
  const use = lines.map((line) => line.use).find((named) => named !== null) ?? null;
  if (use === null) {
    const [only] = rates;
    return rates.length === 1 && only ? judgeBy(only, product, lines) : judgeWithoutUse(product, lines);
  }
  const fitting = rates.filter((rate) => sameWords(rate.use, use));
  if (fitting.length === 0) {
    return warn(
      () =>
        `The label of ${product.name} has no rate for "${use}", which is the use named here. It has rates for ${usesOf(rates)}. Name one of these, or enter the missing rate from the label.`,
    );
  }
  // A label may give one use several ranges: a dose inside any of them is inside the label.
  const verdicts = fitting.map((rate) => judgeBy(rate, product, lines));
  return verdicts.some((verdict) => verdict === null) ? null : (verdicts.find(isWarning) ?? verdicts[0] ?? null);
}

const isWarning = (verdict: Verdict | null): boolean => verdict?.severity === 'warn';

const usesOf = (rates: Rate[]): string => listed(rates.map(({ use }) => `"${use}"`));

function judgeWithoutUse(product: Product, lines: Ingredient[]): Verdict {
  const { rates } = product.label;
  const aboveAll = rates.every(({ max }) => max !== null && compareDoses(lines, max, product) === 1);
  if (aboveAll) {
    return stop(
      () =>
        `${dosed(product, lines)}, which is above every rate of its label: ${listed(rates.map(rangeText))}. Lower the dose, and name the use that it is for.`,
    );
  }
  return warn(
    () =>
      `${dosed(product, lines)}, but the recipe does not say for which use, and its label has several: ${listed(rates.map(rangeText))}. Name the use in the recipe.`,
  );
}

function judgeBy(rate: Rate, product: Product, lines: Ingredient[]): Verdict | null {
  const aboveMax = rate.max && compareDoses(lines, rate.max, product);
  const belowMin = rate.min && compareDoses(lines, rate.min, product);
  if (aboveMax === 1) {
    return stop(() => `${dosed(product, lines)}; its label allows ${rangeText(rate)}. Use ${rate.max?.text} or less.`);
  }
  if (aboveMax === 'unknown' || belowMin === 'unknown') return warn(() => incomparable(rate, product, lines));
  if (belowMin === -1) {
    return warn(
      () => `${dosed(product, lines)}; its label asks for ${rangeText(rate)}. Use ${rate.min?.text} or more.`,
    );
  }
  return null;
}

function dosed({ name }: Product, lines: Ingredient[]): string {
  const doses = listed(lines.map(({ dose }) => dose.text));
  return `${name} is dosed at ${doses}${lines.length > 1 ? ' together' : ''}`;
}

function rangeText({ use, min, max }: Rate): string {
  if (min && max) return min.text === max.text ? `${max.text} for "${use}"` : `${min.text} to ${max.text} for "${use}"`;
  if (max) return `up to ${max.text} for "${use}"`;
  return min ? `at least ${min.text} for "${use}"` : `"${use}" without a rate`;
}

function incomparable(rate: Rate, product: Product, lines: Ingredient[]): string {
  const doses = [...lines.map(({ dose }) => dose), rate.min, rate.max];
  const missing = new Set<string>();
  for (const dose of doses) if (dose && !ratePerMl(dose, product)) missing.add(toEnterFor(dose, product));
  return `${dosed(product, lines)}, and its label says ${rangeText(rate)}: these cannot be compared yet. ${[...missing].join(' ')}`;
}

/** −1, 0 or 1 as the lines of one product come to less than, exactly or more than a rate of its label. */
function compareDoses(lines: Ingredient[], rate: Dose, product: Product): -1 | 0 | 1 | 'unknown' {
  const asWritten = totalOf(lines, (dose) => (isSameMeasure(dose, rate) ? numberOf(dose) : null));
  if (asWritten) return compare(asWritten, numberOf(rate));
  const [total, limit] = [totalOf(lines, (dose) => ratePerMl(dose, product)), ratePerMl(rate, product)];
  return total && limit ? compare(total, limit) : 'unknown';
}

/** Doses of one measure compare as they are written, even where the density or the weight of a teaspoon is missing. */
const isSameMeasure = (a: Dose, b: Dose): boolean =>
  a.kind === 'substance' && b.kind === 'substance' ? sameSubstance(a.substance, b.substance) : a.kind === b.kind;

function numberOf(dose: Dose): Exact {
  if (dose.kind === 'volume') return dose.mlPerLitre;
  return dose.kind === 'mass' ? dose.gPerLitre : dose.mgPerLitre;
}

function totalOf(lines: Ingredient[], measure: (dose: Dose) => Exact | null): Exact | null {
  let total: Exact | null = null;
  for (const { dose } of lines) {
    const amount = measure(dose);
    if (!amount) return null;
    total = total ? add(total, amount) : amount;
  }
  return total;
}
