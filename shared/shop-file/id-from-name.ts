/** As long as an id of a shop file may be. */
const LONGEST = 64;

/**
 * An id for something new, made from its name: "Light oil, 98 %" becomes "light-oil-98".
 *
 * Takes    the name; the ids that are taken already; words that stand for pages in the same place, which no id may be
 * Gives    small letters, digits and hyphens, at most 64 of them; with a number behind it where that is taken
 */
export function idFromName(name: string, taken: Iterable<string>, reserved: readonly string[] = []): string {
  const no = new Set([...taken, ...reserved]);
  const plain = kebab(name) || 'new-one';
  if (!no.has(plain)) return plain;
  for (let number = 2; ; number += 1) {
    const id = `${plain.slice(0, LONGEST - `-${number}`.length)}-${number}`;
    if (!no.has(id)) return id;
  }
}

/** Letters of every script are kept; marks on them are not, so that an id can be typed on any keyboard of that script. */
function kebab(name: string): string {
  const letters = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+/, '');
  // Cut between letters, never within one.
  let id = '';
  for (const letter of letters) {
    if (id.length + letter.length > LONGEST) break;
    id += letter;
  }
  return id.replace(/-+$/, '');
}
