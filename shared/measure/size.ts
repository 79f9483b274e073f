import { type Reading, read, unreadable } from '../outcome';
import type { Stock } from '../quantity/amounts';
import { compare, divide, type Exact, exact, fraction, multiply, ZERO } from '../quantity/exact';
import { wholeNearest } from '../quantity/rounding';
import { remembered } from '../text/remembered';
import { leadingNumber, quoted } from './number-text';
import { isDrop, OUNCE, readUnit, TEASPOON, type Unit, USUAL_DROP } from './unit';

/** An amount as somebody wrote it, exact and not yet rounded. */
export type Size =
  | { text: string; kind: 'volume'; microlitres: Exact }
  | { text: string; kind: 'mass'; milligrams: Exact };

type Form = 'liquid' | 'powder';

/** What turns a weight of a liquid into a volume, and a spoon of a powder into a weight. */
type Weighable = { form: Form; densityGPerMl: number | null; gramsPerTeaspoon: number | null };

/** A million litres, or a thousand tonnes: far above any shop, and far below the largest whole number kept exactly. */
const LARGEST = exact('1000000000000');

/** Half a µL or mg: anything smaller would be kept as nothing. */
const SMALLEST = fraction(1n, 2n);

/**
 * A size as people write it: what a pack holds, or what is left in one.
 *
 *   size = number unit      "1 gal"  "1 1/2 qt"  "600 mL"  "2.5 lb"  "16 fl oz"  "½ gal"
 *
 * Takes    the text; whether it is about a liquid or a powder; what a drop is worth here, in µL
 * Gives    the amount in µL or mg, and the text as it was typed
 * Rounds   nothing; `stockOf` does, once
 * Refuses  what `leadingNumber` refuses; a missing or unknown unit; "oz" alone on a liquid, with the question; drops of
 *          a powder; more than a million litres or a thousand tonnes; more than nothing, but under half a µL or mg
 */
export function readSize(text: string, form: Form, drop: Exact = USUAL_DROP): Reading<Size> {
  const amount = readAmount(text, form === 'liquid' ? '600 mL' : '2.5 lb', drop);
  if (!amount.ok) return amount;
  const { unit, base } = amount.value;
  if (unit === OUNCE && form === 'liquid') return unreadable(whichOunce(text));
  if (isDrop(unit) && form === 'powder') return unreadable(`${quoted(text)}: a powder has no drops. Write a weight.`);
  return read(
    unit.kind === 'volume' ? { text, kind: 'volume', microlitres: base } : { text, kind: 'mass', milligrams: base },
  );
}

/**
 * A volume as people write it: what a sprayer holds, what is lost per fill, the step of a measuring mark.
 *
 * Gives    mL, exact
 * Refuses  what `readSize` refuses, and any weight
 */
export function readVolume(text: string): Reading<Exact> {
  const amount = readAmount(text, '2 gal');
  if (!amount.ok) return amount;
  if (amount.value.unit === OUNCE) return unreadable(whichOunce(text));
  if (amount.value.unit.kind === 'mass')
    return unreadable(`${quoted(text)} is a weight. Write a volume, such as "2 gal".`);
  return read(divide(amount.value.base, exact(1000n)));
}

/**
 * A size in the unit in which the shelf counts the product, exact: for a price per unit, which is a rate and not stock.
 *
 *   liquid by weight  mg ÷ density (g/mL)          powder by spoon  µL ÷ µL per teaspoon × g per level teaspoon × 1000
 *
 * Gives    null when the density, or the weight of a level teaspoon, is not known
 * Units    µL of a liquid, mg of a powder
 */
export function exactStockOf(size: Size, product: Weighable): Exact | null {
  if (product.form === 'liquid') {
    if (size.kind === 'volume') return size.microlitres;
    return product.densityGPerMl === null ? null : divide(size.milligrams, exact(product.densityGPerMl));
  }
  if (size.kind === 'mass') return size.milligrams;
  if (product.gramsPerTeaspoon === null) return null;
  const perTeaspoon = multiply(exact(product.gramsPerTeaspoon), exact(1000n));
  return multiply(divide(size.microlitres, TEASPOON.worth), perTeaspoon);
}

/**
 * A size as the shelf keeps it.
 *
 * Gives    null when the density, or the weight of a level teaspoon, is not known
 * Units    whole µL of a liquid, whole mg of a powder
 * Rounds   once, to the nearest whole, a half away from zero
 */
export function stockOf(size: Size, product: Weighable): Stock | null {
  const amount = exactStockOf(size, product);
  return amount && wholeNearest<Stock>(amount);
}

/** The question that "oz" alone raises wherever a liquid is meant. */
export const whichOunce = (text: string): string =>
  `${quoted(text)}: fluid ounces or ounces by weight? Write "fl oz" for a measure or "oz wt" for a weight.`;

type Amount = { unit: Unit; base: Exact };

const readAmount = (text: string, example: string, drop: Exact = USUAL_DROP): Reading<Amount> =>
  amounts([example, `${drop.over}`, `${drop.under}`, text], () => readNewAmount(text, example, drop));

const amounts = remembered<Reading<Amount>>();

function readNewAmount(text: string, example: string, drop: Exact): Reading<Amount> {
  const amount = leadingNumber(text, example);
  if (!amount.ok) return amount;
  const { number, rest } = amount.value;
  if (rest === '') return unreadable(`${quoted(text)} has no unit. Write it like "${example}".`);
  const unit = readUnit(rest, drop);
  if (!unit.ok) return unit;
  const base = multiply(number, unit.value.worth);
  if (compare(base, LARGEST) > 0)
    return unreadable(`${quoted(text)} is more than this program can hold. Check the unit.`);
  if (compare(base, ZERO) > 0 && compare(base, SMALLEST) < 0) {
    return unreadable(`${quoted(text)} is less than half a µL or mg, the least that is kept. Check the unit.`);
  }
  return read({ unit: unit.value, base });
}
