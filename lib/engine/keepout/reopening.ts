import { type Minutes, minutes } from '@/shared/quantity/amounts';
import { type Instant, isInstant, LAST_INSTANT } from '@/shared/time/instant';
import type { Application, Product, Recipe } from '../shop';
import { withSources } from '../strength/sources';

/**
 * How long people stay out after a mix: the longest restricted-entry interval of what is in it, and of what a stock
 * solution in it is made from.
 *
 * Takes   a recipe; plain water closes nothing
 * Gives   null as soon as one interval is unknown, or is no whole number of minutes: unknown is never zero
 * Units   whole minutes
 */
export const longestRei = ({ ingredients }: Pick<Recipe, 'ingredients'>): Minutes | null =>
  longestReiOf(ingredients.map(({ product }) => product));

/** The same for products in one tank. */
export function longestReiOf(products: readonly Product[]): Minutes | null {
  let longest = NO_INTERVAL;
  for (const { label } of products.flatMap(withSources)) {
    if (label.rei === null || !isInterval(label.rei)) return null;
    if (label.rei > longest) longest = label.rei;
  }
  return longest;
}

/**
 * The longest of the intervals that a record has of what went in; null as soon as one is unknown, and for a record that
 * names nothing.
 */
export const longestRecorded = (intervals: readonly (number | null)[]): Minutes | null =>
  intervals.length === 0 || intervals.includes(null) ? null : minutes(Math.max(...intervals.map((rei) => rei ?? 0)));

/** The products of a mix, and of its stock solutions, whose interval is unknown: each once. */
export const withoutInterval = ({ ingredients }: Pick<Recipe, 'ingredients'>): Product[] =>
  [...new Set(ingredients.flatMap(({ product }) => withSources(product)))].filter(
    ({ label }) => label.rei === null || !isInterval(label.rei),
  );

const NO_INTERVAL = minutes(0);
const isInterval = (minutes: number): boolean => Number.isSafeInteger(minutes) && minutes >= 0;

/**
 * How long people stay out after an application: the longest interval of what is in the mix, as the labels have it today
 * or as they had it when it was recorded, whichever is longer. A label that was corrected later shortens nothing.
 *
 * Gives   null as soon as one interval is unknown today; one that was unknown then and is entered now counts as it is now
 */
export function reiOf({ recipe, recordedRei }: Pick<Application, 'recipe' | 'recordedRei'>): Minutes | null {
  const today = longestRei(recipe);
  if (today === null || recordedRei === null) return today;
  if (!isInterval(recordedRei)) return null;
  return recordedRei > today ? recordedRei : today;
}

/**
 * The moment a bench reopens after an application: its end and the longest interval in the mix, and no sooner than an
 * amendment that nobody has confirmed yet would have it.
 *
 * Takes   the record; its end may be unknown
 * Gives   null when the end or an interval is unknown, or when the end is before the start: such a record proves nothing,
 *         and damaged ones end in keep out. Null, too, while an amendment keeps it closed until the last instant there is:
 *         so it says that before it nobody knew
 * Units   elapsed time, which a change of the clocks neither shortens nor lengthens
 */
export function reopensAfter(record: Reopening): Instant | null {
  const { startedAt, endedAt, closedUntil } = record;
  const rei = reiOf(record);
  if (rei === null || endedAt === null || !isInstant(startedAt) || !isInstant(endedAt) || endedAt < startedAt)
    return null;
  const elapsed = endedAt + rei * MINUTE;
  if (closedUntil === null) return withinTime(elapsed);
  return isInstant(closedUntil) ? withinTime(Math.max(elapsed, closedUntil)) : null;
}

type Reopening = Pick<Application, 'recipe' | 'recordedRei' | 'startedAt' | 'endedAt' | 'closedUntil'>;

const MINUTE = 60_000;

/** An interval that would end after the last moment there is never ends. */
const withinTime = (moment: number): Instant | null => (isInstant(moment) && moment < LAST_INSTANT ? moment : null);
