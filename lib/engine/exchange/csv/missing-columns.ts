import type { CsvList, Thing } from './column';
import { COLUMNS } from './list-columns';
import type { Matched } from './match-columns';
import type { ReadLine } from './read-lines';

/**
 * What every line must say and no column does, as field and what it is called. A list that only changes things that are
 * there may leave it out: they have it.
 */
export function missingColumns(
  list: CsvList,
  columns: readonly Matched[],
  lines: readonly ReadLine[],
  standing: ReadonlyMap<string, Thing>,
): ReadonlyMap<string, string> {
  const there = new Set(columns.map(({ column }) => column?.field));
  const isAllKnown = lines.length > 0 && lines.every(({ thing }) => standing.has(String(thing.id)));
  const missing = COLUMNS[list].filter(({ field, isNeeded }) => isNeeded && !there.has(field) && !isAllKnown);
  return new Map(missing.map(({ field, title }) => [field, title]));
}
