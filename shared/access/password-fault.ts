import { COMMON_PASSWORDS } from './common-passwords';

/*
 * What is wrong with a password that somebody wants (NIST SP 800-63B, 5.1.1.2): too short, or one that is tried first. There
 * are no rules about which signs it must have, and none is ever too old.
 */

/** So many characters a password has at least. */
export const SHORTEST_PASSWORD = 8;
/** So many are taken in. Stretching one that is longer would only cost time. */
export const LONGEST_PASSWORD = 200;

/**
 * One sentence about a password that cannot be taken; null for one that can.
 *
 * Takes    the password, and the words that somebody who knows the person would try first: names of person and shop
 */
export function passwordFault(password: string, near: readonly string[] = []): string | null {
  const length = [...password].length;
  if (length < SHORTEST_PASSWORD) {
    return `Use at least ${SHORTEST_PASSWORD} characters; 15 are better. A few words in a row are easy to remember.`;
  }
  if (length > LONGEST_PASSWORD) return `Use at most ${LONGEST_PASSWORD} characters.`;
  const plain = plainOf(password);
  if (COMMON_PASSWORDS.has(plain) || isRow(plain) || isRepeated(plain)) {
    return 'This password is among the first that are tried. Use a few words that do not belong together.';
  }
  if (near.map(plainOf).some((word) => word.length > 2 && withoutWord(plain, word).length < 4)) {
    return 'This password is little more than a name. Use a few words that do not belong together.';
  }
  return null;
}

const plainOf = (text: string): string => text.normalize('NFKC').toLowerCase().replaceAll(/\s/g, '');

const withoutWord = (text: string, word: string): string => text.replaceAll(word, '');

/** One to four signs, over and over. */
const isRepeated = (text: string): boolean => /^(.{1,4}?)\1+.{0,3}$/u.test(text);

const ROWS = ['0123456789012345', 'abcdefghijklmnopqrstuvwxyz', 'qwertyuiopasdfghjklzxcvbnm', '1qaz2wsx3edc4rfv5tgb'];

/** Signs as they stand in a row, on the keyboard or in the alphabet, either way. */
const isRow = (text: string): boolean =>
  ROWS.some((row) => row.includes(text) || [...row].toReversed().join('').includes(text));
