import { type Exact, exact, multiply } from '../quantity/exact';
import { wholeDown, wholeUp } from '../quantity/rounding';

const PLACES = 9;
const TO_WHOLE = exact(10n ** BigInt(PLACES));
const ROUND = { up: wholeUp, down: wholeDown };

/**
 * A number as decimal text that can be typed and read again: "1.5", "0.333333333".
 *
 * Takes    a number that is not negative; which way it may be rounded, since a limit may only become stricter
 * Rounds   to nine places
 */
export function decimalText(value: Exact, rounded: 'up' | 'down'): string {
  const digits = String(ROUND[rounded]<number>(multiply(value, TO_WHOLE))).padStart(PLACES + 1, '0');
  const decimals = digits.slice(-PLACES).replace(/0+$/, '');
  const whole = digits.slice(0, -PLACES);
  return decimals === '' ? whole : `${whole}.${decimals}`;
}
