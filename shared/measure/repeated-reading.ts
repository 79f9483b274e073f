import { type Reading, read, unreadable } from '../outcome';
import { add, compare, divide, type Exact, exact, subtract, toNumber, ZERO } from '../quantity/exact';
import { leadingNumber, quoted } from './number-text';

/** One reading: so many spoons or drops together, and what the scale or the syringe showed for them. */
export type Portion = { pieces: number; amount: Exact };

/** What one piece is, from several readings. */
export type Repeated = {
  pieces: number;
  readings: number;
  /** All that was read ÷ all pieces. */
  mean: number;
  /** The standard deviation of one piece; null with a single reading, which says nothing of its spread. */
  deviation: number | null;
  /** The deviation as a share of the mean; null as above. */
  spread: number | null;
  /** The smallest and the largest of the readings, each for one piece. */
  least: number;
  most: number;
};

/** Above this share, one piece is not like another, and more of them should be measured. */
export const MOST_SPREAD = 0.1;

/**
 * What one spoon weighs, or one drop holds, from several readings.
 *
 *   mean       Σ amount ÷ Σ pieces
 *   deviation  √( Σ pieces × (amount ÷ pieces − mean)² ÷ (readings − 1) )
 *
 * Takes    at least one reading, each of one piece or more
 * Units    those of the readings, for one piece
 * Rounds   nothing but to double precision
 * Throws   RangeError without a reading, or with one of no pieces
 * Source   a reading of k pieces varies k times less (in variance) than one piece: weighted sample variance
 */
export function repeatedReading(portions: readonly Portion[]): Repeated {
  const pieces = portions.reduce((sum, portion) => sum + portion.pieces, 0);
  if (portions.length === 0 || portions.some((portion) => portion.pieces < 1)) {
    throw new RangeError('repeatedReading: a reading of nothing');
  }
  const all = portions.reduce((sum, { amount }) => add(sum, amount), ZERO);
  const mean = toNumber(divide(all, exact(pieces)));
  const each = portions.map(({ pieces, amount }) => toNumber(divide(amount, exact(pieces))));
  const squares = portions.reduce((sum, portion, at) => sum + portion.pieces * ((each[at] ?? mean) - mean) ** 2, 0);
  const deviation = portions.length > 1 ? Math.sqrt(squares / (portions.length - 1)) : null;
  const spread = deviation === null || mean === 0 ? null : deviation / mean;
  const range = { least: Math.min(...each), most: Math.max(...each) };
  return { pieces, readings: portions.length, mean, deviation, spread, ...range };
}

/**
 * What a person typed from a scale or a syringe, reading by reading.
 *
 * Takes    the texts, blank ones left out of account; how many pieces each stands for; whether the scale was set back
 *          to nothing before each ('each'), or shows all so far ('total')
 * Gives    each reading for itself
 * Refuses  what is no number; a total that does not grow; a reading of nothing. With the place of the text
 */
export function portionsOf(
  texts: readonly string[],
  pieces: number,
  way: 'each' | 'total',
): { ok: true; value: Portion[] } | { ok: false; at: number; message: string } {
  const portions: Portion[] = [];
  let before = ZERO;
  for (const [at, text] of texts.entries()) {
    if (text.trim() === '') continue;
    const number = wholeNumberText(text);
    if (!number.ok) return { ok: false, at, message: number.message };
    const amount = way === 'total' ? subtract(number.value, before) : number.value;
    if (compare(amount, ZERO) <= 0) return { ok: false, at, message: way === 'total' ? notGrown(text) : nothing(text) };
    before = number.value;
    portions.push({ pieces, amount });
  }
  return { ok: true, value: portions };
}

/** A spread for people, in percent: two digits are more than a spoon is worth. */
export const spreadText = (spread: number): string => `${PERCENT.format(spread * 100)} %`;

const PERCENT = new Intl.NumberFormat('en-US', { maximumSignificantDigits: 2 });

function wholeNumberText(text: string): Reading<Exact> {
  const number = leadingNumber(text, '4.8');
  if (!number.ok) return number;
  // The unit stands beside the field, and many write it all the same.
  return /^(g|ml)?\.?$/i.test(number.value.rest)
    ? read(number.value.number)
    : unreadable(`${quoted(text)}: write the number only, such as "4.8".`);
}

const notGrown = (text: string): string =>
  `${quoted(text)} is not more than the reading before it. Write what the scale shows in all, or choose that it was set to zero each time.`;
const nothing = (text: string): string => `${quoted(text)} is nothing. Leave the field empty when nothing was read.`;
