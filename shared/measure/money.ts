import { type Reading, read, unreadable } from '../outcome';
import { type Micros, micros } from '../quantity/amounts';
import { compare, exact, multiply } from '../quantity/exact';
import { wholeNearest } from '../quantity/rounding';
import { leadingNumber, quoted } from './number-text';

const EXAMPLE = '212.00';
const PER_UNIT = exact(1000000n);

/** A hundred million: more than any bottle costs in any currency, and small enough to be added up exactly. */
const DEAREST = exact(100000000n);

/**
 * A price as people write it, in the shop's currency: "212.00".
 *
 * Gives    whole micros
 * Rounds   once, to the nearest micro, a half away from zero
 * Refuses  what `leadingNumber` refuses; a fraction; a currency sign or any other word; more than a hundred million
 */
export function readMoney(text: string): Reading<Micros> {
  const bare = text.trim();
  if (/^\p{Sc}|^[a-z]/iu.test(bare)) {
    return unreadable(`${quoted(text)}: write the number alone, such as "${EXAMPLE}". The currency is the shop's.`);
  }
  const amount = leadingNumber(text, EXAMPLE);
  if (!amount.ok) return amount;
  if (amount.value.rest !== '' || !/^[\d.]+$/.test(bare)) {
    return unreadable(`${quoted(text)}: write the number alone, such as "${EXAMPLE}". The currency is the shop's.`);
  }
  if (compare(amount.value.number, DEAREST) > 0) {
    return unreadable(`${quoted(text)} is more than 100000000. Check the number.`);
  }
  return read(micros(wholeNearest(multiply(amount.value.number, PER_UNIT))));
}

/** Money as a decimal with six places, the way the shop file and the `shop` command write it: "12.345678". */
export function moneyText(amount: Micros): string {
  const digits = String(amount).padStart(7, '0');
  return `${digits.slice(0, -6)}.${digits.slice(-6)}`;
}
