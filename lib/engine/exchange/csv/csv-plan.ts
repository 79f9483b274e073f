import type { Row } from '@/shared/csv/rows';
import { readTable } from '@/shared/csv/table';
import type { ShopFile } from '@/shared/shop-file/contract';
import { MOST_FAULTS, parseShopFile } from '@/shared/shop-file/parse';
import { canonical } from '../canonical';
import { type Comparison, compare } from '../compare';
import { withKnownHistory } from '../known-history';
import type { CsvAsked, LineNote } from './asked';
import type { CsvList, Thing } from './column';
import { findByName } from './find-by-name';
import { lineFaults, type Origin } from './line-faults';
import { columnNamed, type Matched, matchColumns } from './match-columns';
import { missingColumns } from './missing-columns';
import { nameWarnings } from './name-warnings';
import { idMaker } from './new-ids';
import { cellText, howWritten, type LineReading, type ReadLine, readLine } from './read-lines';
import { type SupplierToMake, suppliersToMake } from './suppliers-to-make';

/** How far reading is: the lines are there; so many of them are checked; the shop with all of them is looked at as a whole. */
export type CsvProgress =
  | { step: 'read'; lines: number }
  | { step: 'checked'; count: number; of: number }
  | { step: 'together'; lines: number };

/** What bringing a CSV file in would do. */
export type CsvPlan = {
  lines: number;
  columns: { header: string; example: string; field: string | null }[];
  /** What the file leaves open, whether somebody has answered it or not. */
  open: { decimals: string | null; dayOrder: { column: string; example: string } | null; suppliers: string[] };
  warnings: LineNote[];
  faults: LineNote[];
  /** The line that each thing of the list stands on, by its id. */
  lineOf: ReadonlyMap<string, number>;
  /** The shop with it in its plain form, and how that differs; null as long as there is a fault. */
  result: { file: ShopFile; comparison: Comparison } | null;
};

/** More lines than are checked between two words about how far it is. */
const AT_A_TIME = 250;

/**
 * What bringing a CSV file into a shop would do, told step by step, so that whoever asks can say how far it is.
 *
 * Cells that the file has no column for stay as they are; an empty cell says that nothing is known. A line whose id the
 * shop has changes that thing, any other is a new one.
 *
 * Takes    the shop as it stands, and the file with what somebody said about it
 * Gives    every fault at once, each with its line and column; or the shop as it would be
 */
export function* csvPlan(current: ShopFile, asked: CsvAsked): Generator<CsvProgress, CsvPlan> {
  const read = readTable(asked.text, (name) => columnNamed(asked.list, name) !== null);
  if (!read.ok) return { ...NOTHING, faults: [{ ...read.fault, column: cellName(read.fault.column) }] };
  const { header, rows } = read.table;
  yield { step: 'read', lines: rows.length };
  const columns = matchColumns(asked.list, header.cells, asked.columns);
  const suppliers = suppliersToMake(current, rows, columns);
  const made = asked.createSuppliers ? suppliers : [];
  const reading = lineReading(current, asked, rows, columns, made);
  const lines: ReadLine[] = [];
  for (const row of rows) {
    lines.push(readLine(row, read.table, reading));
    if (lines.length % AT_A_TIME === 0) yield { step: 'checked', count: lines.length, of: rows.length };
  }
  yield { step: 'together', lines: rows.length };
  const missing = missingColumns(asked.list, columns, lines, reading.standing);
  const origin = {
    list: asked.list,
    columns,
    lines,
    made,
    missing,
    whole: withLines(current, asked.list, lines, made),
  };
  const { openNumber: decimals, openDay: dayOrder } = reading.written;
  return {
    lines: rows.length,
    columns: columns.map((each) => ({ ...named(each), example: exampleOf(rows, each.place) })),
    open: { decimals, dayOrder, suppliers: suppliers.map(({ name }) => name) },
    warnings: asked.list === 'products' ? nameWarnings(current, lines, columns) : [],
    lineOf: new Map(lines.map(({ line, thing }) => [String(thing.id), line])),
    ...judged(current, origin, header.line),
  };
}

const NOTHING: CsvPlan = {
  lines: 0,
  columns: [],
  open: { decimals: null, dayOrder: null, suppliers: [] },
  warnings: [],
  faults: [],
  lineOf: new Map(),
  result: null,
};

const cellName = (column: number | null): string | null => (column === null ? null : `cell ${column}`);

const named = ({ header, column }: Matched) => ({ header, field: column?.field ?? null });

/** The first thing that a column says. */
const exampleOf = (rows: readonly Row[], place: number): string =>
  rows.map((row) => cellText(row, place)).find((text) => text !== '') ?? '';

function lineReading(
  current: ShopFile,
  asked: CsvAsked,
  rows: readonly Row[],
  columns: readonly Matched[],
  made: readonly SupplierToMake[],
): LineReading {
  const things: readonly Thing[] = current[asked.list];
  const standing = new Map(things.map((thing) => [thing.id, thing]));
  const idPlace = columns.find(({ column }) => column?.field === 'id')?.place;
  const given = idPlace === undefined ? [] : rows.map((row) => cellText(row, idPlace));
  const written = howWritten(rows, columns);
  const numerals = { said: asked.decimals, isCommaSeen: written.isCommaSeen };
  const product = findByName('product', current.products, BRING_PRODUCTS);
  const supplier = findByName('supplier', [...current.suppliers, ...made], MAKE_SUPPLIER);
  return {
    ...{ asked, columns, written, standing },
    by: { numerals, product, supplier },
    newId: idMaker([...standing.keys(), ...given]),
  };
}

const BRING_PRODUCTS = 'Write its name or its id, or bring the products in first.';
const MAKE_SUPPLIER = 'Write its name or its id, or have it made with this file.';

/** The shop as it would stand. What comes in stands first in each list, so that a fault has the place of its line. */
function withLines(current: ShopFile, list: CsvList, lines: readonly ReadLine[], made: readonly SupplierToMake[]) {
  const ids = new Set(lines.map(({ thing }) => thing.id));
  const things: readonly Thing[] = current[list];
  return {
    ...current,
    suppliers: [...made.map(({ id, name }) => ({ id, name })), ...current.suppliers],
    [list]: [...lines.map(({ thing }) => thing), ...things.filter(({ id }) => !ids.has(id))],
  };
}

function judged(current: ShopFile, origin: Origin, headerLine: number): Pick<CsvPlan, 'faults' | 'result'> {
  const missing = [...origin.missing.values()].map((title) => ({
    line: headerLine,
    column: title,
    message: `No column says this. Add one called "${title}", or choose by hand which column it is.`,
  }));
  const parsed = parseShopFile(JSON.stringify(origin.whole));
  if (!parsed.ok) return { faults: atMost([...missing, ...lineFaults(parsed.faults, origin)]), result: null };
  const comparison = compare(current, parsed.file);
  const faults = [...missing, ...lineFaults(comparison.faults, origin)];
  if (faults.length > 0) return { faults: atMost(faults), result: null };
  return { faults: [], result: { file: withKnownHistory(canonical(current), parsed.file), comparison } };
}

/** As many faults as anybody reads in one go. The shop file itself names no more, and counts what it leaves out. */
function atMost(faults: LineNote[]): LineNote[] {
  if (faults.length <= MOST_FAULTS) return faults;
  const more = { line: null, column: null, message: 'There are more faults than these. Put these right first.' };
  return [...faults.slice(0, MOST_FAULTS), more];
}
