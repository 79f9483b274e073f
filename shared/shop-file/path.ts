/** Where something stands in a shop file: `['lots', 3, 'remaining']`. */
export type Path = readonly (string | number)[];

/** A place as people read it: `lots[3].remaining`; nothing for the file as a whole. */
export function pathText(path: Path): string {
  let text = '';
  for (const part of path) {
    if (typeof part === 'number') text += `[${part}]`;
    else if (PLAIN.test(part)) text += text ? `.${part}` : part;
    else text += `[${JSON.stringify(shortened(part, LONGEST_NAME))}]`;
  }
  return text;
}

const PLAIN = /^[A-Za-z_][A-Za-z0-9_]{0,63}$/;
const LONGEST_NAME = 64;

/** Text cut to a length, with a sign that it was. */
export const shortened = (text: string, longest: number): string =>
  text.length > longest ? `${text.slice(0, longest - 1)}…` : text;

/** A value as it stands in the file, in a few words. */
export function shown(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return shortened(JSON.stringify(value) ?? 'nothing', 60);
}
