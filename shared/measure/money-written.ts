import { plainNumeral } from '../csv/numeral';
import { coinPlaces } from './coin-places';

/** The places where people write a currency: in front of the number and behind it. */
const AROUND = /^(\p{L}*\.?\p{Sc}?|\p{Sc}\p{L}*)\s*(\d.*?|[.,]\d.*?)\s*(\p{L}*\p{Sc}?\p{L}*\.?)$/u;

/** Thousands in groups of three, and no decimals: "1,234" and "1.234.567". */
const GROUPS = /^[1-9]\d{0,2}([.,])\d{3}(?:\1\d{3})*$/;

/**
 * Money as people write it, made the plain number that `readMoney` reads: "$1,234.50" and "1 234,50 USD" become "1234.50"
 * in a shop whose currency is USD; "none" becomes "0".
 *
 * Takes   the text, and the shop's currency
 * Gives   the text as it is when it names another currency or can be two numbers, for the sentence that refuses it
 */
export function plainMoney(text: string, currency: string): string {
  if (/^\s*(none|nothing|free)\s*$/i.test(text)) return '0';
  const [, before = '', number, behind = ''] = AROUND.exec(text.trim()) ?? [];
  if (number === undefined || (before !== '' && behind !== '')) return text;
  const sign = before + behind;
  if (sign !== '' && !signsOf(currency).includes(sign.toLowerCase())) return text;
  // No currency of three decimals: what looks like thousands is thousands.
  const groups = GROUPS.exec(number);
  if (groups && coinPlaces(currency) < 3 && (groups[1] === ',' || /\..*\./.test(number))) {
    return number.replaceAll(groups[1] ?? '', '');
  }
  const plain = plainNumeral(number.replace(/(?<=\d) (?=\d{3}(?:\D|$))/g, ''), { said: null, isCommaSeen: false });
  return plain.ok ? plain.value : text;
}

/** How people write a currency beside a number, in small letters: "$", "us$", "usd". */
function signsOf(currency: string): string[] {
  const signs = (['narrowSymbol', 'symbol', 'code'] as const).flatMap((currencyDisplay) =>
    ['en-US', 'en-CA'].map((language) => signOf(language, currency, currencyDisplay)),
  );
  return signs.flatMap((sign) => [sign.toLowerCase(), `${sign.toLowerCase()}.`]);
}

function signOf(language: string, currency: string, currencyDisplay: 'narrowSymbol' | 'symbol' | 'code'): string {
  try {
    const parts = new Intl.NumberFormat(language, { style: 'currency', currency, currencyDisplay }).formatToParts(1);
    return parts.find(({ type }) => type === 'currency')?.value ?? currency;
  } catch {
    return currency;
  }
}
