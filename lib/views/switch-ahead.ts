import 'server-only';
import { decimalText } from '@/shared/measure/decimal-text';
import type { Dose } from '@/shared/measure/dose';
import type { ShopFile } from '@/shared/shop-file/contract';
import { showDay } from '@/shared/time/show-day';
import type { Plan } from '../engine/ahead/plan';
import { planAhead } from '../engine/ahead/plan-ahead';
import { type PlanDifferences, planDifferences } from '../engine/ahead/plan-differences';
import { WEEKS_AHEAD } from '../engine/ahead/weeks-ahead';
import type { Equivalents } from '../engine/equivalents/equivalents';
import type { Flag } from '../engine/rules/flag';
import { shopOfFile } from '../engine/shop-of-file';
import { equivalentAddress } from '../engine/working/season-figures';
import { type Switched, switchWorking } from '../engine/working/switch-figures';
import type { Fig } from './figures';
import { gravestFirst } from './flags-by-gravity';
import type { HereNow } from './house';

/** A line of a recipe, as a form sends it. */
export type LineTo = { product: string; dose: string; use: string; order: string };

/** Something that a switch does, with the figure of it where it has one: `before` and `after` stand around that. */
type Effect = { before: string; figure: Fig | null; after: string };

/** What a switch would do, before anybody does it. */
export type SwitchSeen = { to: LineTo; effects: Effect[]; flags: Flag[] };

/** The shop, with the weeks ahead of it where somebody has made them already. */
type Here = Pick<HereNow, 'file' | 'shop' | 'today'> & { plan?: Plan };

/** What the switch of a recipe to a candidate does; null for what stands there now, and for what is not allowed. */
export function switchAhead(here: Here, found: Equivalents, product: string): SwitchSeen | null {
  const to = lineTo(found, product);
  const switched = to && switchedPlan(here, found, to);
  if (!to || !switched) return null;
  return {
    to,
    effects: effectsOf(found, switched, product),
    flags: gravestFirst(firstOfKind(switched.differences.newFlags)),
  };
}

/** The working of what such a switch does, by its path behind the candidate. */
export function switchAheadWorking(here: Here, found: Equivalents, product: string, path: string[]) {
  const to = lineTo(found, product);
  const switched = to && switchedPlan(here, found, to);
  return switched && switchWorking(switched, path);
}

function lineTo({ wanted: { ingredient: now }, candidates }: Equivalents, product: string): LineTo | null {
  const candidate = candidates.find((one) => one.product.id === product);
  if (!candidate?.allowed || !candidate.ingredient || candidate.product.id === now.product.id) return null;
  const dose = now.dose.kind === 'substance' ? now.dose.text : doseText(candidate.ingredient.dose);
  return { product, dose, use: now.use ?? '', order: '' };
}

/** The weeks ahead as they are and with the switch; null when the recipe is no longer as it was compared. */
function switchedPlan({ file, shop, today, plan: made }: Here, { wanted }: Equivalents, to: LineTo): Switched | null {
  const recipe = file.recipes.find(({ id }) => id === wanted.recipe.id);
  const line = recipe?.ingredients.findIndex(({ product }) => product === wanted.ingredient.product.id) ?? -1;
  if (!recipe || line < 0) return null;
  const ingredients = recipe.ingredients.map((one, at) => (at === line ? lineOf(to) : one));
  const recipes = file.recipes.map((one) => (one.id === recipe.id ? { ...one, ingredients } : one));
  const plan = made ?? planAhead(shop, today, WEEKS_AHEAD);
  const next = planAhead(shopOfFile({ ...file, recipes }), today, WEEKS_AHEAD);
  return { plan, next, differences: planDifferences(plan, next) };
}

/** The same comes up at many sprayings; the first of each kind says it. */
const firstOfKind = (flags: Flag[]): Flag[] =>
  flags.filter(
    ({ rule, product }, at) => flags.findIndex((one) => one.rule === rule && one.product === product) === at,
  );

/** A line as a shop file writes it. */
const lineOf = ({ product, dose, use, order }: LineTo): ShopFile['recipes'][number]['ingredients'][number] => ({
  ...{ product, dose, use: use || null, order: order === '' ? null : Number(order) },
});

/** A dose as somebody would type it. */
function doseText(dose: Dose): string {
  switch (dose.kind) {
    case 'volume':
      return `${decimalText(dose.mlPerLitre, 'down')} mL/L`;
    case 'mass':
      return `${decimalText(dose.gPerLitre, 'down')} g/L`;
    case 'perArea':
      return `${decimalText(dose.perSquareMetre, 'down')} ${dose.measure === 'volume' ? 'mL' : 'g'}/m2`;
    case 'substance':
      return dose.text;
  }
}

function effectsOf(found: Equivalents, switched: Switched, product: string): Effect[] {
  const { differences } = switched;
  const figure = (...path: string[]): Fig => {
    const working = switchWorking(switched, path);
    if (!working) throw new RangeError(`switch: nothing stands behind "${path.join('/')}"`);
    return { at: equivalentAddress(found, product, 'switch', ...path), value: working.value };
  };
  const weeks = `Over the ${WEEKS_AHEAD} weeks ahead`;
  const now = found.wanted.ingredient.product;
  const then = found.candidates.find((one) => one.product.id === product)?.product ?? now;
  return [
    moreEffect(`${weeks} product costs `, differences.costMore, figure('cost')),
    moreEffect(`${weeks} what dies in bottles is worth `, differences.wasteMore, figure('waste')),
    ...[now, then].map(({ id, name }) => ({
      ...{ before: 'All sprayings together take ', figure: figure('need', id), after: ` of ${name} then.` },
    })),
    ...stockEffects(differences, figure),
    ...(differences.cleared.length === 0
      ? []
      : [{ before: '', figure: figure('cleared'), after: ' of today would be gone or become another.' }]),
  ];
}

/** What costs so much more, or less. */
function moreEffect(before: string, more: PlanDifferences['costMore'], figure: Fig): Effect {
  if (more === null) return { before: `${before}something else; how much is `, figure, after: '.' };
  return { before, figure, after: more.isMore ? ' more.' : ' less.' };
}

function stockEffects({ runsOut }: PlanDifferences, figure: (...path: string[]) => Fig): Effect[] {
  if (runsOut.length === 0) return [{ before: 'Nothing runs out on another day.', figure: null, after: '' }];
  return runsOut.map(({ product: { id, name }, from, to, isKnown }) => {
    const before = from === null ? '' : `, instead of ${showDay(from)}`;
    if (to === null && !isKnown) {
      return { before: `Nobody can say then when ${name} runs out${before}.`, figure: null, after: '' };
    }
    return to === null
      ? { before: `${name} no longer runs out`, figure: null, after: `${before}.` }
      : { before: `${name} runs out `, figure: figure('runsOut', id), after: `${before}.` };
  });
}
