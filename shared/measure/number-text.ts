import { type Reading, read, unreadable } from '../outcome';
import { add, type Exact, exact, fraction } from '../quantity/exact';

/** The longest text that is looked at. Longer than any amount a person writes, with the name of a substance behind it. */
const LONGEST = 100;

const SYMBOLS: Record<string, string> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const ANY_SYMBOL = new RegExp(`[${Object.keys(SYMBOLS).join('')}]`, 'g');

/**
 * The number that a text begins with, and what follows it.
 *
 *   number = whole | decimal | fraction | whole and fraction:  "12"  "1.5"  ".5"  "1/4"  "1 1/2"  "1-1/2"  "½"  "1½"
 *
 * Takes    the text, and an example of the whole thing for the sentence that refuses it
 * Gives    the exact value, never negative, and the rest of the text without surrounding spaces
 * Refuses  an empty or overlong text; no number in front; a sign; a comma (decimal or thousands); an exponent; a range;
 *          a fraction over zero; a whole number with a fraction of one or more
 */
export function leadingNumber(text: string, example: string): Reading<{ number: Exact; rest: string }> {
  if (text.length > LONGEST)
    return unreadable(`This is longer than ${LONGEST} characters. Write it like "${example}".`);
  const plain = text
    .replaceAll('⁄', '/')
    .replace(ANY_SYMBOL, (symbol) => ` ${SYMBOLS[symbol]}`)
    .trim();
  if (plain === '') return unreadable(`This is empty. Write it like "${example}".`);
  const wrong = wrongStart(text, plain, example);
  if (wrong) return unreadable(wrong);

  const mixed = /^(\d+)(?:\s+|-)(\d+)\s*\/\s*(\d+)/.exec(plain);
  if (mixed) return numberOf(text, plain, mixed, example);
  const broken = /^()(\d+)\s*\/\s*(\d+)/.exec(plain);
  if (broken) return numberOf(text, plain, broken, example);
  const decimal = /^(?:\d+(?:\.\d+)?|\.\d+)/.exec(plain)?.[0];
  if (decimal === undefined)
    return unreadable(`${quoted(text)} does not begin with a number. Write it like "${example}".`);
  return followed(text, exact(decimal.startsWith('.') ? `0${decimal}` : decimal), plain.slice(decimal.length), example);
}

/** What was typed, in quotes, short and on one line, for the sentence that refuses it. */
export function quoted(text: string): string {
  const letters = Array.from(JSON.stringify(text));
  return letters.length > 60 ? `${letters.slice(0, 57).join('')}…"` : letters.join('');
}

function wrongStart(text: string, plain: string, example: string): string | null {
  if (/^[-−–]/.test(plain))
    return `${quoted(text)} is negative. Write an amount of zero or more, such as "${example}".`;
  if (!/^[\d.]*,\s*\d/.test(plain)) return null;
  return `${quoted(text)} has a comma in its number. Write a decimal with a point, such as 1.5, and a thousand as 1000.`;
}

type Parts = RegExpExecArray;

function numberOf(text: string, plain: string, [all, whole, over = '', under = '']: Parts, example: string) {
  if (BigInt(under) === 0n) return unreadable(`${quoted(text)} has a fraction over zero. Write it like "${example}".`);
  if (whole && BigInt(over) >= BigInt(under)) {
    return unreadable(`In ${quoted(text)} the fraction is not less than one. Write one and a half as "1 1/2" or 1.5.`);
  }
  const number = add(exact(whole || '0'), fraction(BigInt(over), BigInt(under)));
  return followed(text, number, plain.slice(all.length), example);
}

function followed(
  text: string,
  number: Exact,
  after: string,
  example: string,
): Reading<{ number: Exact; rest: string }> {
  if (/^e[-+]?\d/i.test(after))
    return unreadable(`${quoted(text)} has an exponent. Write the number out in plain digits.`);
  if (/^\s*(?:[-–—]|to\s|±)\s*[\d.]/i.test(after)) {
    return unreadable(`${quoted(text)} is a range. Write one number, such as "${example}".`);
  }
  if (/^\s*[\d.,]/.test(after))
    return unreadable(`${quoted(text)} is not one number and one unit. Write it like "${example}".`);
  return read({ number, rest: after.trim() });
}
