import { showWarmth } from '@/shared/forms/celsius';
import { civilOf, MONTHS } from '@/shared/time/civil';
import { type Day, dayNumber } from '@/shared/time/day';
import type { Product, Recipe, Shop } from '../shop';
import type { Flag } from './flag';
import { heldIn } from './in-words';
import { isOil, isSoap } from './oil-and-sulfur';
import { flagSpraying } from './raise';
import type { Finding } from './recipe-findings';
import { productsOf } from './turns';
import type { Unflagged } from './unflagged';

/**
 * Something is sprayed in more heat than it may be, or than leaves bear.
 *
 * Looks at  products whose label names a highest temperature; and oils and soaps (`oil-and-sulfur.ts`), which may burn leaves
 *           from the shop's own temperature on. Against the temperature that was measured, and for what is planned against
 *           the usual highest of its month
 * Fires     above the label's temperature, at it not; for an oil or a soap at the shop's temperature and above. Once for a
 *           spraying and product, the graver of the two. Where nobody knows the temperature, it asks for it
 * Severity  stop when it was measured above the label's; warn for what is planned, and for leaves; note where nobody knows
 * Cleared   by spraying in a cooler hour or month, by something else, or by entering the usual temperatures
 */
export function tooHot(plan: Unflagged): Flag[] {
  const sensitive = productsOf(heedsHeat, isStricter);
  return plan.sprayings.flatMap((spraying) => {
    const { recipe, program, date } = spraying;
    const findings = sensitive(recipe).flatMap(
      (product) => findingAt(plan.shop, recipe, product, usualOn(plan.shop, date)) ?? [],
    );
    return findings.map(({ product, severity, message }) =>
      flagSpraying(spraying, { rule: 'too-hot', severity, benches: program.benches, product }, message),
    );
  });
}

/** What speaks against having sprayed a recipe at a temperature that was measured, °C. */
export const heatFindings = (shop: Shop, recipe: Recipe, celsius: number): Finding[] =>
  productsOf(
    heedsHeat,
    isStricter,
  )(recipe).flatMap((product) => findingAt(shop, recipe, product, measured(celsius)) ?? []);

const burnsLeaves = (product: Product): boolean => isOil(product) || isSoap(product);
const heedsHeat = (product: Product): boolean => product.label.hotAboveC !== null || burnsLeaves(product);
const mostOf = ({ label }: Product): number => label.hotAboveC ?? Number.POSITIVE_INFINITY;
const isStricter = (source: Product, solution: Product): boolean =>
  mostOf(source) <= mostOf(solution) && (burnsLeaves(source) || !burnsLeaves(solution));

/** How warm it is, or usually gets, and that as a sentence; null: nobody knows. */
type Warmth = { celsius: number | null; isMeasured: boolean; said: (celsius: string) => string };

const measured = (celsius: number): Warmth => ({
  celsius,
  isMeasured: true,
  said: (warm) => `It was ${warm} when this was sprayed`,
});

function usualOn({ monthlyHighsC }: Shop, date: Day): Warmth {
  const { month } = civilOf(dayNumber(date));
  const name = MONTHS[month - 1] ?? '';
  const celsius = monthlyHighsC?.[month - 1] ?? null;
  return { celsius, isMeasured: false, said: (usual) => `In ${name} it gets as warm as ${usual} here` };
}

function findingAt({ oilHotC, units }: Shop, recipe: Recipe, product: Product, warmth: Warmth): Finding | null {
  const { celsius, isMeasured, said } = warmth;
  const { hotAboveC } = product.label;
  const burnsFromC = burnsLeaves(product) ? oilHotC : null;
  const limits = heldIn(recipe, product) + limitsInWords(product, burnsFromC, units);
  if (celsius === null) return { severity: 'note', product, message: () => `${limits} ${MEASURE}` };
  const isAbove = hotAboveC !== null && celsius > hotAboveC;
  if (!isAbove && (burnsFromC === null || celsius < burnsFromC)) return null;
  return {
    severity: isAbove && isMeasured ? 'stop' : 'warn',
    product,
    message: () => `${said(showWarmth(celsius, units))}. ${limits} ${isMeasured ? LOOK : COOLER}`,
  };
}

const MEASURE = 'Nobody has entered how warm it gets here: measure first.';
const COOLER = 'Measure first, and spray in a cool hour, or use something else.';
const LOOK = 'Look at the leaves in the next days.';

function limitsInWords(
  { name, label: { hotAboveC } }: Product,
  burnsFromC: number | null,
  units: Shop['units'],
): string {
  const limits: string[] = [];
  if (hotAboveC !== null)
    limits.push(`The label of ${name} says not to spray it above ${showWarmth(hotAboveC, units)}.`);
  if (burnsFromC !== null) limits.push(`From ${showWarmth(burnsFromC, units)} on, ${name} may burn leaves.`);
  return limits.join(' ');
}
