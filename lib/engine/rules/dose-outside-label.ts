import type { Dose } from '@/shared/measure/dose';
import { add, compare, type Exact, exact } from '@/shared/quantity/exact';
import { groundOf } from '../bench/ground';
import type { Bench, Ingredient, Product, Rate, Recipe } from '../shop';
import { type Ground, ratePerMl } from '../strength/dose-in-stock';
import { sameSubstance } from '../strength/strength-of';
import type { Flag, Severity } from './flag';
import { listed, sameWords } from './in-words';
import { toEnterFor } from './missing-figures';
import { type Finding, flagBatches } from './recipe-findings';
import { type DosedLine, sourceLines } from './source-lines';
import type { Unflagged } from './unflagged';

/**
 * A dose outside the rates of the product's own label.
 *
 * Looks at  the dose of each product in a recipe, all its lines together, and the label's rate for the use that the line
 *           names; without a use, the label's only rate. What a stock solution is made from is dosed with it, and is judged
 *           by its own label as well, together with lines of its own
 * Fires     above the maximum; below the minimum; when the label has no rate for that use, or several and no use is named;
 *           when dose and rate cannot be compared. A dose per volume meets a rate per area over the ground of the benches
 *           and the spray that is mixed for it. Exactly at either end is inside. A product without rates is not judged.
 * Severity  stop above the maximum (without a use: above every maximum), warn otherwise
 * Cleared   by a dose inside the range, by naming the use, or by entering the density, the weight of a teaspoon or the
 *           strength that the comparison lacks
 */
export const doseOutsideLabel = (plan: Unflagged): Flag[] =>
  flagBatches(plan, 'dose-outside-label', ({ recipe, program, spray }) =>
    doseFindings(recipe, { benches: program.benches, sprayMl: spray?.total ?? null }),
  );

/** What a recipe is sprayed on: the benches, and the spray mixed for them in mL, null while that is unknown. */
export type Sprayed = { benches: readonly Bench[]; sprayMl: Exact | null };

/** The doses of a recipe that lie outside their labels, for one mix. */
export function doseFindings({ ingredients }: Recipe, sprayed: Sprayed): Finding[] {
  const ground = { area: groundOf(sprayed.benches), sprayMl: sprayed.sprayMl, benches: sprayed.benches };
  const poured = new Set(ingredients.map(({ product }) => product));
  const all = [...ingredients.map((line) => ({ ...line, holder: null })), ...sourceLines(ingredients)];
  const findings: Finding[] = [];
  for (const product of new Set(all.map((line) => line.product))) {
    const lines = all.filter((line) => line.product === product);
    const verdict = product.label.rates.length === 0 ? null : judgeAll(product, lines, ground);
    if (verdict && (poured.has(product) || !isSaidOf(lines, verdict, findings))) findings.push({ product, ...verdict });
  }
  return findings;
}

/** A solution has its rates from its source: what is wrong with the one already need not be said of the other. */
const isSaidOf = (lines: DosedLine[], { severity }: Verdict, findings: Finding[]): boolean =>
  findings.some(
    (one) =>
      lines.some(({ holder }) => holder === one.product) && (one.severity === severity || one.severity === 'stop'),
  );

function judgeAll(product: Product, lines: DosedLine[], ground: Dosing['ground']): Verdict | null {
  const known = lines.flatMap((line) => (line.dose ? { ...line, dose: line.dose } : []));
  if (known.length === lines.length) return judge({ product, lines: known, ground });
  const holders = listed([...new Set(lines.flatMap(({ dose, holder }) => (dose ? [] : (holder?.name ?? []))))]);
  return warn(
    () =>
      `Nobody can say how much of ${product.name} the dose of ${holders} brings, so it cannot be held against its label. Enter what ${holders} holds of it, as a dose that can be turned into an amount.`,
  );
}

/** One product of a mix with all its lines, and what the mix is sprayed on. */
type Dosing = { product: Product; lines: Ingredient[]; ground: Ground & { benches: readonly Bench[] } };

type Verdict = { severity: Severity; message: () => string };
const stop = (message: () => string): Verdict => ({ severity: 'stop', message });
const warn = (message: () => string): Verdict => ({ severity: 'warn', message });

function judge(dosing: Dosing): Verdict | null {
  const { product, lines } = dosing;
  const { rates } = product.label;
  const use = lines.map((line) => line.use).find((named) => named !== null) ?? null;
  if (use === null) {
    const [only] = rates;
    return rates.length === 1 && only ? judgeBy(only, dosing) : judgeWithoutUse(dosing);
  }
  const fitting = rates.filter((rate) => sameWords(rate.use, use));
  if (fitting.length === 0) {
    return warn(
      () =>
        `The label of ${product.name} has no rate for "${use}", which is the use named here. It has rates for ${usesOf(rates)}. Name one of these, or enter the missing rate from the label.`,
    );
  }
  // A label may give one use several ranges: a dose inside any of them is inside the label.
  const verdicts = fitting.map((rate) => judgeBy(rate, dosing));
  return verdicts.some((verdict) => verdict === null) ? null : (verdicts.find(isWarning) ?? verdicts[0] ?? null);
}

const isWarning = (verdict: Verdict | null): boolean => verdict?.severity === 'warn';

const usesOf = (rates: Rate[]): string => listed(rates.map(({ use }) => `"${use}"`));

function judgeWithoutUse(dosing: Dosing): Verdict {
  const { rates } = dosing.product.label;
  const aboveAll = rates.every(({ max }) => max !== null && compareDoses(max, dosing) === 1);
  if (aboveAll) {
    return stop(
      () =>
        `${dosed(dosing)}, which is above every rate of its label: ${listed(rates.map(rangeText))}. Lower the dose, and name the use that it is for.`,
    );
  }
  return warn(
    () =>
      `${dosed(dosing)}, but the recipe does not say for which use, and its label has several: ${listed(rates.map(rangeText))}. Name the use in the recipe.`,
  );
}

function judgeBy(rate: Rate, dosing: Dosing): Verdict | null {
  const aboveMax = rate.max && compareDoses(rate.max, dosing);
  const belowMin = rate.min && compareDoses(rate.min, dosing);
  if (aboveMax === 1) {
    return stop(() => `${dosed(dosing)}; its label allows ${rangeText(rate)}. Use ${rate.max?.text} or less.`);
  }
  if (aboveMax === 'unknown' || belowMin === 'unknown') return warn(() => incomparable(rate, dosing));
  if (belowMin === -1) {
    return warn(() => `${dosed(dosing)}; its label asks for ${rangeText(rate)}. Use ${rate.min?.text} or more.`);
  }
  return null;
}

function dosed({ product: { name }, lines }: Dosing): string {
  const doses = listed(lines.map(({ dose }) => dose.text));
  return `${name} is dosed at ${doses}${lines.length > 1 ? ' together' : ''}`;
}

/** A rate of a label in words: "8 mL/gal to 20 mL/gal for …". */
export function rangeText({ use, min, max }: Rate): string {
  if (min && max) return min.text === max.text ? `${max.text} for "${use}"` : `${min.text} to ${max.text} for "${use}"`;
  if (max) return `up to ${max.text} for "${use}"`;
  return min ? `at least ${min.text} for "${use}"` : `"${use}" without a rate`;
}

function incomparable(rate: Rate, dosing: Dosing): string {
  const { product, lines, ground } = dosing;
  const doses = [...lines.map(({ dose }) => dose), rate.min, rate.max];
  const missing = new Set<string>();
  for (const dose of doses) {
    if (dose && !ratePerMl(dose, product, ground)) missing.add(toEnterFor(dose, product, ground.benches));
  }
  return `${dosed(dosing)}, and its label says ${rangeText(rate)}: these cannot be compared yet. ${[...missing].join(' ')}`;
}

/** −1, 0 or 1 as the lines of one product come to less than, exactly or more than a rate of its label. */
function compareDoses(rate: Dose, { product, lines, ground }: Dosing): -1 | 0 | 1 | 'unknown' {
  const asWritten = totalOf(lines, (dose) => (isSameMeasure(dose, rate) ? numberOf(dose) : null));
  if (asWritten) return compare(asWritten, numberOf(rate));
  const inStock = groundFor([rate, ...lines.map(({ dose }) => dose)], ground);
  const total = totalOf(lines, (dose) => ratePerMl(dose, product, inStock));
  const limit = ratePerMl(rate, product, inStock);
  return total && limit ? compare(total, limit) : 'unknown';
}

/** Doses that are all per area differ as they do on any ground, so theirs need not be known. */
const groundFor = (doses: Dose[], ground: Ground): Ground =>
  doses.every(({ kind }) => kind === 'perArea') ? ONE_METRE_AND_ML : ground;

const ONE_METRE_AND_ML: Ground = { area: exact(1n), sprayMl: exact(1n) };

/** Doses of one measure compare as they are written, even where the density or the weight of a teaspoon is missing. */
function isSameMeasure(a: Dose, b: Dose): boolean {
  if (a.kind === 'substance' && b.kind === 'substance') return sameSubstance(a.substance, b.substance);
  if (a.kind === 'perArea' && b.kind === 'perArea') return a.measure === b.measure;
  return a.kind === b.kind;
}

function numberOf(dose: Dose): Exact {
  switch (dose.kind) {
    case 'volume':
      return dose.mlPerLitre;
    case 'mass':
      return dose.gPerLitre;
    case 'substance':
      return dose.mgPerLitre;
    case 'perArea':
      return dose.perSquareMetre;
  }
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
