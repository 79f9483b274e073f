import { clock } from '@/lib/clock';
import type { Shop } from '@/lib/engine/shop';
import { explain, type Fault, type Reading, type Refusal, read, unreadable } from '@/shared/outcome';
import { nearest } from '@/shared/shop-file/nearest';
import { shown } from '@/shared/shop-file/path';
import { type Day, readDay } from '@/shared/time/day';

/** What was written behind a verb, by the name of the option. */
export type Options = ReadonlyMap<string, string>;

/** What a verb answers. A refusal names everything that was wrong with the options. */
export type Answer = { ok: true; value: unknown } | { ok: false; messages: string[] } | { ok: false; faults: Fault[] };

/** What a refusal of the engine says: each fault with its place where it has several, else one sentence. */
export const answerOf = (refusal: Refusal): Answer =>
  refusal.code === 'faults' ? { ok: false, faults: refusal.faults } : { ok: false, messages: [explain(refusal)] };

/** What is wrong with some options, all of it. */
export const wrongIn = (readings: readonly Reading<unknown>[]): string[] =>
  readings.flatMap((each) => (each.ok ? [] : each.message));

/** The recipe that is asked about. */
export function recipeIn({ recipes }: Shop, id: string | undefined): Reading<string> {
  const ids = recipes.map((recipe) => recipe.id);
  const some = ids.length > 0 ? `It has ${ids.slice(0, 5).map(shown).join(', ')}.` : 'It has none.';
  if (id === undefined) return unreadable(`--recipe: Name a recipe of this file by its id. ${some}`);
  if (ids.includes(id)) return read(id);
  const meant = nearest(id, ids);
  return unreadable(
    `--recipe: There is no recipe ${shown(id)} in this file. ${meant ? `Did you mean ${shown(meant)}?` : some}`,
  );
}

/** The product of a recipe that is asked about. */
export function productIn({ recipes }: Shop, recipe: string | null, id: string | undefined): Reading<string> {
  const ids = (recipes.find((one) => one.id === recipe)?.ingredients ?? []).map(({ product }) => product.id);
  const some = ids.length > 0 ? `It has ${ids.slice(0, 5).map(shown).join(', ')}.` : 'It has none.';
  if (id === undefined)
    return unreadable(`--product: Name a product of the recipe by its id. ${recipe ? some : ''}`.trim());
  if (recipe === null || ids.includes(id)) return read(id);
  const meant = nearest(id, ids);
  return unreadable(
    `--product: There is no product ${shown(id)} in this recipe. ${meant ? `Did you mean ${shown(meant)}?` : some}`,
  );
}

/** The horizon reaches two years on, and an order may have been due a lead time and more before its first day. */
const [FIRST_TODAY, LAST_TODAY] = ['2000-01-01', '2999-12-31'];

/** The day that the answer begins with; today where the shop is when none is given. */
export function todayIn(ours: Shop, text: string | undefined): Reading<Day> {
  if (text === undefined) return read(clock.today(ours.zone));
  const day = readDay(text);
  if (!day.ok) return unreadable(`--today: ${day.message}`);
  if (day.value >= FIRST_TODAY && day.value <= LAST_TODAY) return day;
  return unreadable(`--today: ${text} is too far away. Give a day from ${FIRST_TODAY} to ${LAST_TODAY}.`);
}

const MOST_WEEKS = 104;

/** How many weeks the answer looks ahead. */
export function weeksIn(text: string): Reading<number> {
  const weeks = /^\d{1,3}$/.test(text) ? Number(text) : 0;
  if (weeks >= 1 && weeks <= MOST_WEEKS) return read(weeks);
  return unreadable(`--weeks: ${shown(text)} is not a number of weeks. Write a whole number from 1 to ${MOST_WEEKS}.`);
}

/** How long a search may take. */
export function secondsIn(text: string): Reading<number> {
  const seconds = /^\d{1,4}(\.\d{1,3})?$/.test(text) ? Number(text) : 0;
  if (seconds > 0 && seconds <= MOST_SECONDS) return read(seconds);
  return unreadable(`--seconds: ${shown(text)} is not a time. Write seconds above nothing, at most ${MOST_SECONDS}.`);
}

const MOST_SECONDS = 3_600;
