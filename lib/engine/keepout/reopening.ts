import { type Minutes, minutes } from '@/shared/quantity/amounts';
import { addMinutes, type Instant } from '@/shared/time/instant';
import type { Label, Recipe } from '../shop';

/**
 * How long people stay out after a mix: the longest restricted-entry interval of what is in it.
 *
 * Takes   a recipe; plain water closes nothing
 * Gives   null as soon as one interval is unknown, or is no whole number of minutes: unknown is never zero
 * Units   whole minutes
 */
export const longestRei = ({ ingredients }: Pick<Recipe, 'ingredients'>): Minutes | null =>
  longestReiOf(ingredients.map(({ product }) => product));

/** The same for products in one tank. */
export function longestReiOf(products: readonly { label: Pick<Label, 'rei'> }[]): Minutes | null {
  let longest = NO_INTERVAL;
  for (const { label } of products) {
    if (label.rei === null || !isInterval(label.rei)) return null;
    if (label.rei > longest) longest = label.rei;
  }
  return longest;
}

const NO_INTERVAL = minutes(0);
const isInterval = (minutes: number): boolean => Number.isSafeInteger(minutes) && minutes >= 0;

/**
 * The moment a bench reopens after an application: its end and the longest interval in the mix.
 *
 * Takes   the mix, the start, and the end, which may be unknown
 * Gives   null when the end or an interval is unknown, or when the end is before the start: such a record proves nothing
 * Units   elapsed time, which a change of the clocks neither shortens nor lengthens
 */
export function reopensAfter(recipe: Recipe, startedAt: Instant, endedAt: Instant | null): Instant | null {
  const rei = longestRei(recipe);
  if (rei === null || endedAt === null || !isMoment(startedAt) || !isMoment(endedAt)) return null;
  return endedAt < startedAt ? null : addMinutes(endedAt, rei);
}

/** Whether a value that should be an instant is one. Damaged records must end in keep out, never in open. */
export const isMoment = (instant: number): boolean => Number.isSafeInteger(instant);
