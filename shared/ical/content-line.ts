/** A line is folded so that none has more octets than this, its line break left out. */
const MOST_OCTETS = 75;

/**
 * One property as a calendar file writes it, folded where it is long, with its line break.
 *
 *   a fold is a line break and one space, which whoever reads takes out again
 *
 * Takes   the name with its parameters, and the value as it is written: a text must be escaped already
 * Gives   lines of at most 75 octets; no character is ever split
 * Source  RFC 5545, section 3.1
 */
export function contentLine(name: string, value: string): string {
  const lines: string[] = [];
  let line = '';
  let octets = 0;
  for (const character of `${name}:${value}`) {
    const size = octetsOf(character);
    if (octets + size > MOST_OCTETS) {
      lines.push(line);
      line = ' ';
      octets = 1;
    }
    line += character;
    octets += size;
  }
  return `${[...lines, line].join('\r\n')}\r\n`;
}

/** How many octets a character takes in UTF-8. */
function octetsOf(character: string): number {
  const point = character.codePointAt(0) ?? 0;
  if (point < 0x80) return 1;
  if (point < 0x800) return 2;
  return point < 0x10000 ? 3 : 4;
}

/**
 * Words as a value of the type TEXT: \ ; , and line breaks escaped, so that nothing in them can end the value or begin
 * another property. Whatever else breaks lines somewhere becomes a line break; other control characters and halves of a
 * character, which no file may hold, are left out.
 *
 * Source  RFC 5545, sections 3.1 and 3.3.11
 */
export const textValue = (words: string): string =>
  words
    .replace(/\r\n?|[\v\f\u0085\u2028\u2029]/g, '\n')
    .replace(NOT_WRITTEN, '')
    .replace(/[\\;,]/g, '\\$&')
    .replace(/\n/g, '\\n');

const NOT_WRITTEN = /[^\P{Cc}\t\n]|\p{Cs}|[\uFFFE\uFFFF]/gu;
