import { readGtin } from '../measure/gtin';
import { type BottleNamed, isBottleCode, readBottleCode } from './bottle-code';

/** What a scanned or typed text means to the shop. */
export type CodeMeaning =
  | { kind: 'nothing' }
  | { kind: 'bottle'; bottle: BottleNamed }
  | { kind: 'gtin'; gtin: string }
  | { kind: 'misread'; message: string }
  | { kind: 'words'; words: string };

/** The kinds of bar code that a camera tells apart, where what the digits mean depends on it. */
export type BarKind = 'upc_e' | 'other';

/**
 * What a text from a camera, a hand scanner or a keyboard means: one of our labels, the number under a bar code, or
 * words to search for.
 *
 * Takes    the text, and for a bar code its kind when the camera knows it
 * Gives    'misread' for a code of ours that is not whole, and for digits whose check digit does not fit
 */
export function codeMeaning(text: string, kind: BarKind = 'other'): CodeMeaning {
  const words = text.trim();
  if (words === '') return { kind: 'nothing' };
  if (isBottleCode(words)) {
    const code = readBottleCode(words);
    return code.ok ? { kind: 'bottle', bottle: code.value } : { kind: 'misread', message: code.message };
  }
  if (!isLikeABarCode(words)) return { kind: 'words', words };
  const gtin = readGtin(kind === 'upc_e' ? wholeUpc(words) : words);
  return gtin.ok ? { kind: 'gtin', gtin: gtin.value } : { kind: 'misread', message: gtin.message };
}

/** Whether these are digits of a length that bar codes have, with the spaces and hyphens that people copy along. */
const isLikeABarCode = (words: string): boolean => /^(\d{8}|\d{12,14})$/.test(words.replace(/[\s-]/g, ''));

/**
 * The twelve digits that a short bar code of eight stands for. Its sixth inner digit says which zeros were left out.
 *
 * Source   GS1 General Specifications, UPC-E: zero-suppressed forms of a GTIN-12
 */
export function wholeUpc(short: string): string {
  const [, system, six, check] = /^([01])(\d{6})(\d)$/.exec(short.replace(/[\s-]/g, '')) ?? [];
  if (system === undefined || six === undefined || check === undefined) return short;
  const last = Number(six.at(-1));
  return `${system}${unsqueezed(six.slice(0, 5), last)}${check}`;
}

/** The ten digits between the first and the last, out of the five that were printed and the one that says how. */
function unsqueezed(five: string, how: number): string {
  if (how <= 2) return `${five.slice(0, 2)}${how}0000${five.slice(2)}`;
  if (how === 3) return `${five.slice(0, 3)}00000${five.slice(3)}`;
  if (how === 4) return `${five.slice(0, 4)}00000${five.slice(4)}`;
  return `${five}0000${how}`;
}
