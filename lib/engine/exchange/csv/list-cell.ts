/*
 * A cell that holds several things: "gloves; goggles". One that has a semicolon in it, or begins with a quote, stands in
 * quotes of its own, and a quote inside those is written twice.
 */

/** The things that a cell lists. A line break divides like a semicolon. */
export function itemsIn(text: string): string[] {
  const items: string[] = [];
  let rest = text.trimStart();
  while (rest !== '') {
    const [whole = rest, quoted, bare = ''] = /^(?:"((?:[^"]|"")*)"\s*(?=[;\r\n]|$)|([^;\r\n]*))/.exec(rest) ?? [];
    const item = quoted === undefined ? bare.trim() : quoted.replaceAll('""', '"');
    if (item !== '') items.push(item);
    rest = rest
      .slice(whole.length)
      .replace(/^[;\r\n]/, '')
      .trimStart();
  }
  return items;
}

/** The cell that lists these things. */
export const cellOfItems = (items: readonly string[]): string | null =>
  items.length === 0 ? null : items.map(written).join('; ');

const written = (item: string): string => (/^"|[;\r\n]/.test(item) ? `"${item.replaceAll('"', '""')}"` : item);
