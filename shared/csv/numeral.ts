import { type Reading, read, unreadable } from '../outcome';

/** What divides the whole from its decimals. */
export type DecimalMark = 'point' | 'comma';

/** What is known about the numbers of a file: what somebody said of them, and whether some can only have a decimal comma. */
export type Numerals = { said: DecimalMark | null; isCommaSeen: boolean };

/** A number that stands in front of a text, with the marks that people and programs put into it. */
const IN_FRONT = /^\s*[\d.,\u00a0\u202f'’]*[\d.,]/;

/** A space or an apostrophe that only groups thousands. */
const GROUPING = /(?<=\d)[\u00a0\u202f'’](?=\d{3}(?:\D|$))/g;

/**
 * A text that begins with a number, with that number written the one way every reader here understands: "12,50" becomes
 * "12.50", "1.234,5 L" becomes "1234.5 L". Whatever is no number is left as it stands.
 *
 * Refuses  what can be two numbers, with the question: "1,234" always, and "1.234" in a file with decimal commas, unless
 *          somebody said which mark divides; and a mark that contradicts what was said
 */
export function plainNumeral(text: string, { said, isCommaSeen }: Numerals): Reading<string> {
  const written = IN_FRONT.exec(text)?.[0] ?? '';
  const number = written.trim().replace(GROUPING, '');
  if (!/[.,]/.test(number)) return read(number + text.slice(written.length));
  const [point, comma] = [withMark(number, 'point'), withMark(number, 'comma')];
  const plain = (value: string) => read(value + text.slice(written.length));
  if (point === null && comma === null) return read(text);
  if (said) {
    const meant = said === 'point' ? point : comma;
    return meant === null ? unreadable(otherMark(number, said)) : plain(meant);
  }
  if (point === null || comma === null) return plain(point ?? comma ?? number);
  if (/^\d+\.\d+$/.test(number) && !isCommaSeen) return plain(point);
  return unreadable(
    `"${number}" can be ${point} or ${comma}. Say which mark divides whole and decimals, or write it without the other.`,
  );
}

/** Whether a text begins with a number whose comma can only divide whole and decimals, as in "12,50". */
export function hasDecimalComma(text: string): boolean {
  const number = (IN_FRONT.exec(text)?.[0] ?? '').trim().replace(GROUPING, '');
  return number.includes(',') && withMark(number, 'point') === null && /\./.test(withMark(number, 'comma') ?? '');
}

/** Whether a number can be one or another, as long as nobody says which mark divides it. */
export const isAmbiguous = (text: string, isCommaSeen: boolean): boolean =>
  !plainNumeral(text, { said: null, isCommaSeen }).ok;

/** The number, when that mark divides its decimals and the other groups its thousands; null when it cannot. */
function withMark(number: string, mark: DecimalMark): string | null {
  const pattern =
    mark === 'point' ? /^([1-9]\d{0,2}(?:,\d{3})+|\d*)(\.\d+)?$/ : /^([1-9]\d{0,2}(?:\.\d{3})+|\d*)(,\d+)?$/;
  const [, whole, decimals = ''] = pattern.exec(number) ?? [];
  if (whole === undefined || whole + decimals === '') return null;
  return whole.replace(/[.,]/g, '') + decimals.replace(',', '.');
}

const otherMark = (number: string, said: DecimalMark): string =>
  said === 'point'
    ? `"${number}" has a comma where no thousand ends, and decimals were said to have a point. Write it with a point.`
    : `"${number}" has a point where no thousand ends, and decimals were said to have a comma. Write it with a comma.`;
