import { type Reading, read, unreadable } from '../outcome';
import { quoted } from './number-text';

/**
 * The number under a bar code: a GTIN of 8, 12, 13 or 14 digits, the last of which is a check digit.
 *
 * Gives    the digits as they stand, without spaces
 * Refuses  other lengths, anything but digits, and a check digit that does not fit the others
 * Source   GS1 General Specifications, check digit calculation: digits from the right weigh 3 and 1 in turn, and with
 *          the check digit the sum is a multiple of ten
 */
export function readGtin(text: string): Reading<string> {
  const digits = text.replace(/[\s-]/g, '');
  if (!/^(\d{8}|\d{12,14})$/.test(digits)) {
    return unreadable(`${quoted(text)} is not the number of a bar code. Write its 8, 12, 13 or 14 digits.`);
  }
  const check = Number(digits.at(-1));
  const expected = checkDigit(digits.slice(0, -1));
  if (check === expected) return read(digits);
  return unreadable(
    `${quoted(text)} cannot be: with these digits the last one would be ${expected}. Look at the bar code once more.`,
  );
}

/** The check digit that belongs behind the other digits of a GTIN. */
export function checkDigit(others: string): number {
  const sum = [...others]
    .reverse()
    .reduce((total, digit, place) => total + Number(digit) * (place % 2 === 0 ? 3 : 1), 0);
  return (10 - (sum % 10)) % 10;
}

/** A bar code number in its longest form: the same for the same number, whichever length it is written in. */
export const gtinKey = (gtin: string): string => gtin.padStart(14, '0');

/** Whether two bar code numbers are the same one. */
export const isSameGtin = (a: string, b: string): boolean => gtinKey(a) === gtinKey(b);
