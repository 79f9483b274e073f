import type { Fault } from '@/shared/outcome';
import type { LineNote } from './asked';
import type { CsvList } from './column';
import { COLUMNS } from './list-columns';
import type { Matched } from './match-columns';
import type { ReadLine } from './read-lines';

/** What came in: for each thing of the list, and for each supplier that would be made, the line that says it. */
export type Origin = {
  list: CsvList;
  columns: readonly Matched[];
  lines: readonly ReadLine[];
  made: readonly { line: number }[];
  /** Fields that every line must say and no column does: that is said once, and not of every line. */
  missing: ReadonlyMap<string, string>;
  /** The whole shop with it, whose paths the faults have. */
  whole: Record<string, unknown>;
};

/**
 * The faults of a shop file as faults of the CSV file that they come from: their line and column, in the words of a list.
 *
 * Gives    what the cells themselves complained of first; what the shop file says of the same cell is not said again
 */
export function lineFaults(faults: readonly Fault[], origin: Origin): LineNote[] {
  const own = origin.lines.flatMap(({ line, faults: complaints }) =>
    complaints.map(({ field, message }) => ({ line, field, message })),
  );
  const said = new Set(own.map(({ line, field }) => `${line} ${field}`));
  const places = new Map(origin.columns.map(({ column, place }) => [column?.field ?? null, place]));
  const placeIn = (field: string | null) => (field === null ? -1 : (places.get(field) ?? LAST));
  const others = faults
    .map(({ path, message }) => ({ ...placeOf(path, origin), message: inWordsOfLists(message, origin) }))
    .filter(({ line, field }) => line === null || !said.has(`${line} ${field}`))
    .filter(({ field }) => field === null || !origin.missing.has(field));
  return [...own, ...others]
    .sort((a, b) => (a.line ?? LAST) - (b.line ?? LAST) || placeIn(a.field) - placeIn(b.field))
    .map(({ line, field, message }) => ({ line, column: columnName(field, origin), message }));
}

/** What is about no line comes behind those that are. */
const LAST = Number.MAX_SAFE_INTEGER;

type Place = { line: number | null; field: string | null };

const IN_A_LIST = /^(\w+)\[(\d+)\](.*)$/;

function placeOf(path: string, { list, lines, made }: Origin): Place {
  const [, of, index = '', rest = ''] = IN_A_LIST.exec(path) ?? [];
  if (of === list) return { line: lines[Number(index)]?.line ?? null, field: fieldOf(list, rest) };
  if (of === 'suppliers') return { line: made[Number(index)]?.line ?? null, field: 'supplier' };
  return { line: null, field: null };
}

/** The column in whose path a place lies: the rate behind ".label.rates[0].min" is one of the column of rates. */
function fieldOf(list: CsvList, rest: string): string | null {
  const steps = rest
    .replace(/\[\d+\]/g, '')
    .split('.')
    .slice(1);
  const column = COLUMNS[list].find(({ path }) => path.every((step, place) => steps[place] === step));
  return column?.field ?? null;
}

/** A column as the file calls it; as we do where the file has none. */
function columnName(field: string | null, { list, columns }: Origin): string | null {
  if (field === null) return null;
  const header = columns.find(({ column }) => column?.field === field)?.header;
  return header || (COLUMNS[list].find((column) => column.field === field)?.title ?? null);
}

const A_PLACE =
  /\b(suppliers|products|offers|lots|recipes|applications|programs|benches)\[(\d+)\](?:\.([A-Za-z.[\]\d]+[A-Za-z\]]))?/g;

/** A sentence about a shop file in the words of a list: lines instead of places, and neither quotes nor null. */
function inWordsOfLists(message: string, origin: Origin): string {
  return message
    .replace(A_PLACE, (place, of: string, index: string, rest: string | undefined) => {
      const { line, field } = placeOf(rest ? `${of}[${index}].${rest}` : `${of}[${index}]`, origin);
      const column = rest ? columnName(field, origin) : null;
      if (line !== null) return column ? `line ${line}, ${column}` : `line ${line}`;
      const one = of === 'benches' ? 'bench' : of.slice(0, -1);
      return `${rest ? `${rest} of ` : ''}${one} ${idAt(origin.whole[of], Number(index)) ?? place}`;
    })
    .replace(/,? (?:as text )?in quotes\b/g, '')
    .replace(/; null when/g, '; nothing when')
    .replace(/, or null when/g, ', or nothing when');
}

function idAt(list: unknown, index: number): string | null {
  const thing: unknown = Array.isArray(list) ? list[index] : null;
  return typeof thing === 'object' && thing !== null && 'id' in thing ? `"${thing.id}"` : null;
}
