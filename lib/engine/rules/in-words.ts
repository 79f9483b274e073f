import { showStock } from '@/shared/measure/show';
import type { Stock } from '@/shared/quantity/amounts';
import { type Day, dayFromNumber } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { showDay, showDayUntil, showInstant } from '@/shared/time/show-day';
import type { Bench, Product, Recipe } from '../shop';
import { withSources } from '../strength/sources';
import type { Unflagged } from './unflagged';

/** Words in a row: "A", "A and B", "A, B and C". */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

export const benchNames = (benches: readonly Bench[]): string => listed(benches.map(({ name }) => name));

/** What is said of several benches, those of which the same is said together: "3 times on A and B and 4 times on C". */
export function alikeInWords<T extends { bench: Bench }>(those: readonly T[], say: (one: T) => string): string {
  const said = those.map(say);
  const sentences = [...new Set(said)].map(
    (words) => `${words} on ${benchNames(those.filter((_, at) => said[at] === words).map(({ bench }) => bench))}`,
  );
  return listed(sentences);
}

/** A number of things: "1 day", "3 days". */
export const counted = (number: number, thing: string): string => `${number} ${thing}${number === 1 ? '' : 's'}`;

/** A day beside today: the year is said when it is another one. */
export const dayNear = ({ today }: Unflagged, day: Day | number): string =>
  showDay(typeof day === 'number' ? dayFromNumber(day) : day, today);

/** Where a product is in a mix only inside of a stock solution, a sentence that says so, with a space after it. */
export function heldIn({ ingredients }: Pick<Recipe, 'ingredients'>, product: Product): string {
  const mixed = [...new Set(ingredients.map((ingredient) => ingredient.product))];
  if (mixed.includes(product)) return '';
  const holders = mixed.filter((one) => withSources(one).includes(product)).map(({ name }) => name);
  return `${listed(holders)} ${holders.length === 1 ? 'is' : 'are'} made from ${product.name}. `;
}

/** A moment on the shop's clock: "Tue 3 March 18:15". */
export const momentNear = ({ shop, today }: Unflagged, instant: Instant): string =>
  showInstant(instant, shop.zone, today);

/** The moment until which a bench is closed: rounded up to the minute, so that words never end an interval too soon. */
export const untilNear = ({ shop, today }: Unflagged, instant: Instant): string =>
  showDayUntil(instant, shop.zone, today);

/** How long before a day an earlier one was: "the same day", "3 days before, on Tue 3 March". */
export function beforeNear(plan: Unflagged, day: number, earlier: number): string {
  const gap = day - earlier;
  return gap === 0 ? 'the same day' : `${counted(gap, 'day')} before, on ${dayNear(plan, earlier)}`;
}

/** An amount of a product in the units that the shop is shown in, as the pages beside the sentence write it. */
export const amountOf = ({ shop }: Unflagged, amount: Stock, { form }: Product): string =>
  showStock(amount, form, shop.units);

/** Words as they compare: without the spaces around them, whatever the case. */
export const plain = (words: string): string => words.trim().toLowerCase();
export const sameWords = (one: string, other: string): boolean => plain(one) === plain(other);
