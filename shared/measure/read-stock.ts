import { type Reading, read, unreadable } from '../outcome';
import { type Stock, stock } from '../quantity/amounts';
import { compare, type Exact, exact, multiply } from '../quantity/exact';
import { wholeNearest } from '../quantity/rounding';
import { leadingNumber, quoted } from './number-text';
import { readSize, stockOf } from './size';

/** What of a product decides how an amount of it is kept. */
export type Kept = { form: 'liquid' | 'powder'; densityGPerMl: number | null; gramsPerTeaspoon: number | null };

/**
 * An amount of a product as people write it: "600 mL", "2.5 lb".
 *
 * Units    whole µL of a liquid, whole mg of a powder
 * Rounds   once, to the nearest whole
 * Refuses  what `readSize` refuses; nothing at all; a weight of a liquid without a density, or a spoon of a powder
 *          without the weight of a teaspoon
 */
export function readStock(text: string, product: Kept): Reading<Stock> {
  const amount = amountOf(text, product);
  if (!amount.ok || amount.value > 0) return amount;
  return unreadable(`${quoted(text)} is nothing. Write an amount above it, such as "${EXAMPLE[product.form]}".`);
}

/**
 * What is left in a container as people tell it: an amount, a part of what it holds when full, or a word.
 *
 *   "600 mL"   "1/3"   "40 %"   "empty"   "half"   "full"
 *
 * Takes    what it holds when full
 * Units    whole µL of a liquid, whole mg of a powder
 * Rounds   once, to the nearest whole
 * Refuses  what `readStock` refuses, but for nothing; more than the container holds
 */
export function readLevel(text: string, size: Stock, product: Kept): Reading<Stock> {
  const part = partIn(text);
  const level = part === null ? amountOf(text, product) : read(wholeNearest<Stock>(multiply(part, exact(size))));
  if (!level.ok || level.value <= size) return level;
  return unreadable(
    `${quoted(text)} is more than it holds, which is ${stockText(size, product.form)}. Check the unit.`,
  );
}

/** An exact amount of stock as it is typed and read again: "378.541 mL", "250 g". */
export const stockText = (amount: Stock, form: 'liquid' | 'powder'): string =>
  `${amount / 1_000} ${form === 'liquid' ? 'mL' : 'g'}`;

const EXAMPLE = { liquid: '600 mL', powder: '250 g' };

const MISSING = {
  liquid:
    'This product is a liquid, and its density is not known. Write a volume, such as "1 qt", or enter the density.',
  powder: 'This product is a powder, and what a teaspoon of it weighs is not known. Write a weight, such as "250 g".',
};

function amountOf(text: string, product: Kept): Reading<Stock> {
  if (text.trim() === '0') return read(stock(0));
  const size = readSize(text, product.form);
  if (!size.ok) return size;
  const amount = stockOf(size.value, product);
  return amount === null ? unreadable(MISSING[product.form]) : read(amount);
}

const WORDS = new Map([
  ['empty', exact(0n)],
  ['nothing', exact(0n)],
  ['half', exact('0.5')],
  ['half full', exact('0.5')],
  ['full', exact(1n)],
]);

/** The part that "40 %", "1/3" or a word tells; null for anything else. A bare 0.4 could be an amount, so it is not one. */
function partIn(text: string): Exact | null {
  const word = WORDS.get(text.trim().toLowerCase());
  if (word) return word;
  const number = leadingNumber(text, '40 %');
  if (!number.ok) return null;
  if (number.value.rest === '%') return multiply(number.value.number, exact('0.01'));
  const isPart = number.value.rest === '' && /[/⁄]|[¼-¾⅐-⅞]/.test(text);
  return isPart && compare(number.value.number, exact(1n)) <= 0 ? number.value.number : null;
}
