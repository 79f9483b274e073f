/** The fields of a form by name, as text. */
export type Fields = Readonly<Record<string, string>>;

/**
 * The lines that a form has of something that repeats: "contents[0].substance" and "contents[3].substance" are lines 0
 * and 3, since a line that was taken out leaves a gap.
 *
 * Gives   the numbers of the lines, in order
 */
export function rowsIn(fields: Iterable<string>, list: string): number[] {
  const rows = new Set<number>();
  for (const name of fields) {
    const row = rowOf(name, list);
    if (row !== null) rows.add(row);
  }
  return [...rows].sort((a, b) => a - b);
}

/** The line that a field belongs to; null when it is no field of this list. */
export function rowOf(name: string, list: string): number | null {
  if (!name.startsWith(`${list}[`)) return null;
  const number = /^(\d{1,3})\]/.exec(name.slice(list.length + 1))?.[1];
  return number === undefined ? null : Number(number);
}

/** The lines of a list in which something was written in one of these fields. Blank lines mean nothing. */
export const writtenRows = (fields: Fields, list: string, parts: readonly string[]): number[] =>
  rowsIn(Object.keys(fields), list).filter((row) =>
    parts.some((part) => (fields[`${list}[${row}]${part}`] ?? '').trim() !== ''),
  );
