/*
 * What a text of one line may hold. The one place that says so: names, notes and reasons are all held against it, in the
 * shop file, in forms, in commands and through the HTTP API.
 */

/**
 * The first thing in a text that no field of one line may hold, as a sentence that says what it is and what to write.
 *
 * Refuses  tabs, line breaks, control characters, halves of a character, marks that turn the direction of writing, and
 *          a text of which nothing can be seen. An empty text is for the field itself to judge. Joiners stay, because
 *          Persian and the scripts of India cannot be written without them
 * Gives    null when nothing is wrong
 */
export function textFault(text: string): string | null {
  if (PLAIN.test(text)) return null;
  for (const { found, says } of REFUSED) {
    const [character] = found.exec(text) ?? [];
    if (character !== undefined) return says(numberOf(character));
  }
  return text !== '' && NOTHING_SEEN.test(text) ? NOTHING_TO_SEE : null;
}

/** Printable ASCII with something to see in it: nearly every text of a shop, and nothing to look for. */
const PLAIN = /^[ -~]*[!-~] *$/;

type Rule = { found: RegExp; says: (number: string) => string };

const REFUSED: readonly Rule[] = [
  { found: /\t/u, says: () => 'This holds a tab, as between two cells of a spreadsheet. Write a space instead.' },
  { found: /[\n\v\f\r\u0085\u2028\u2029]/u, says: () => 'This holds a line break. Write it on one line.' },
  {
    found: /[\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069]/u,
    says: (number) => `This holds a mark that turns the direction of writing (${number}). Take it out.`,
  },
  { found: /\p{Cs}/u, says: (number) => `This holds half a character (${number}). Take it out.` },
  { found: /\p{Cc}/u, says: (number) => `This holds a character that cannot be shown (${number}). Take it out.` },
];

/** Spaces, and characters that are drawn as nothing: of zero width, fillers, blank braille. */
const NOTHING_SEEN = /^[\p{Z}\p{C}\p{Default_Ignorable_Code_Point}\u2800]*$/u;
const NOTHING_TO_SEE = 'Nothing of this can be seen. Write something that can be read.';

const numberOf = (character: string): string =>
  `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;

/** A text with a space for each run of tabs and line breaks. */
export const onOneLine = (text: string): string => text.replace(/[\t\n\v\f\r\u0085\u2028\u2029]+/gu, ' ');

/** The same where lines may stay: a space for each tab, and for line breaks that no key makes. */
export const withoutTabs = (text: string): string => text.replace(/[\t\v\f\u0085\u2028\u2029]+/gu, ' ');

/**
 * A text made fit for one line: a tab or a line break becomes a space, and what no field may hold is left out. For
 * showing, or proposing, what a text that cannot be kept was meant to say.
 *
 * Gives    '' when nothing of it can be seen
 */
export function tidyText(text: string): string {
  const plain = onOneLine(text)
    .replace(/[\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069\p{Cs}\p{Cc}]/gu, '')
    .trim();
  return NOTHING_SEEN.test(plain) ? '' : plain;
}
