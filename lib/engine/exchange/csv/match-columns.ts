import { type Column, type CsvList, holdsSeveral, plainName } from './column';
import { COLUMNS } from './list-columns';

/** A column of a file, and what it is taken for; null when it is left out. */
export type Matched = { place: number; header: string; column: Column | null };

/** The column of a list that a name stands for; null when it is none. A column that holds several values may be numbered. */
export function columnNamed(list: CsvList, name: string): Column | null {
  const plain = plainName(name);
  const named = byName(list).get(plain);
  if (named) return named;
  const unnumbered = byName(list).get(plain.replace(/\d+$/, ''));
  return unnumbered && holdsSeveral(unnumbered.kind) ? unnumbered : null;
}

/**
 * What each column of a file is taken for.
 *
 * Takes    the names in its first line; and what somebody chose by hand: a field or null for each, in their order
 * Gives    of several columns that could be one, only the first is, unless they hold lists, which may be numbered
 */
export function matchColumns(
  list: CsvList,
  headers: readonly string[],
  chosen: readonly (string | null)[] | null,
): Matched[] {
  const taken = new Set<string>();
  return headers.map((header, place) => {
    const meant = chosen ? columnOf(list, chosen[place] ?? null) : columnNamed(list, header);
    const isFree = meant !== null && (!taken.has(meant.field) || holdsSeveral(meant.kind));
    if (isFree) taken.add(meant.field);
    return { place, header: header.trim(), column: isFree ? meant : null };
  });
}

/** The column with a field; null when there is none. */
const columnOf = (list: CsvList, field: string | null): Column | null =>
  COLUMNS[list].find((column) => column.field === field) ?? null;

const names = new Map<CsvList, ReadonlyMap<string, Column>>();

/** Every name of the columns of a list: what the export calls them comes before what they are called besides. */
function byName(list: CsvList): ReadonlyMap<string, Column> {
  const known = names.get(list);
  if (known) return known;
  const columns = COLUMNS[list];
  const all = new Map<string, Column>();
  const add = (name: string, column: Column) => {
    if (!all.has(plainName(name))) all.set(plainName(name), column);
  };
  for (const column of columns) add(column.title, column);
  for (const column of columns) add(column.field, column);
  for (const column of columns) for (const name of column.also) add(name, column);
  names.set(list, all);
  return all;
}
