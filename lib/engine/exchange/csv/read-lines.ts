import { type ColumnOrder, type DayOrder, orderIn } from '@/shared/csv/day-text';
import { hasDecimalComma, isAmbiguous } from '@/shared/csv/numeral';
import type { Row } from '@/shared/csv/rows';
import type { Table } from '@/shared/csv/table';
import { unguarded } from '@/shared/csv/write-rows';
import { SHELF_PAGES } from '@/shared/forms/product';
import type { CsvAsked } from './asked';
import { holdsSeveral, type Kind, type Thing } from './column';
import type { Matched } from './match-columns';
import { type ReadingWith, readCell } from './read-cell';

/** A line as the thing it says, not yet checked, and what is wrong with single cells of it. */
export type ReadLine = { line: number; thing: Record<string, unknown>; faults: CellComplaint[] };

/** What is wrong with a cell; with the line as a whole when there is no field. */
type CellComplaint = { field: string | null; message: string };

/** What the cells of a file say about how its numbers and days are written. */
export type Written = {
  isCommaSeen: boolean;
  /** A number that can be two, and a day that can be two with the column it stands in; null when there is none. */
  openNumber: string | null;
  openDay: { column: string; example: string } | null;
  orders: ReadonlyMap<number, ColumnOrder>;
};

/** The text of a cell, without what a spreadsheet needed before it. */
export const cellText = (row: Row, place: number): string => unguarded((row.cells[place] ?? '').trim()).trim();

const isNumeral = ({ of }: Kind): boolean => of === 'number' || of === 'money' || of === 'amount';
const holdsNumerals = ({ of }: Kind): boolean => of === 'contents' || of === 'rates' || of === 'breaks';

/** How a file writes its numbers and days, as far as its cells prove it. */
export function howWritten(rows: readonly Row[], columns: readonly Matched[]): Written {
  const ofKind = (wanted: (kind: Kind) => boolean) => columns.filter(({ column }) => column && wanted(column.kind));
  const cells = (of: Matched[]) => of.flatMap(({ place }) => rows.map((row) => cellText(row, place)));
  const numerals = cells(ofKind(isNumeral));
  const isCommaSeen = numerals.some(hasDecimalComma);
  const inLists = cells(ofKind(holdsNumerals)).flatMap((cell) => cell.match(/\d[\d.,]*\d/g) ?? []);
  const days = ofKind(({ of }) => of === 'day').map(({ place, header }) => {
    return { place, header, order: orderIn(rows.map((row) => cellText(row, place))) };
  });
  const open = days.find(({ order }) => order.open !== null && order.proven === null && !order.isMixed);
  return {
    isCommaSeen,
    openNumber: [...numerals, ...inLists].find((text) => isAmbiguous(text, isCommaSeen)) ?? null,
    openDay: open ? { column: open.header, example: open.order.open ?? '' } : null,
    orders: new Map(days.map(({ place, order }) => [place, order])),
  };
}

/** What every line of a file is read with. */
export type LineReading = {
  asked: CsvAsked;
  columns: readonly Matched[];
  written: Written;
  by: ReadingWith;
  /** What the shop has under each id: cells that a file has no column for stay as they are there. */
  standing: ReadonlyMap<string, Thing>;
  newId: (words: readonly unknown[]) => string;
};

/** One line as the thing it says. */
export function readLine(row: Row, { header }: Table, reading: LineReading): ReadLine {
  const idColumn = reading.columns.find(({ column }) => column?.field === 'id');
  const id = idColumn ? cellText(row, idColumn.place) : '';
  const thing = withoutHistory(reading.standing.get(id));
  const faults: CellComplaint[] = isPage(reading, id) ? [{ field: 'id', message: aPage(id) }] : [];
  const wrongLength = row.cells.length === header.cells.length ? null : lengthFault(row, header);
  if (wrongLength) faults.push({ field: null, message: wrongLength });
  const begun = new Set<string>();
  for (const { place, column } of reading.columns) {
    if (!column) continue;
    const text = cellText(row, place);
    const read =
      text === ''
        ? nothing(column.kind, column.isNeeded)
        : readCell(column.kind, text, reading.by, order(reading, place));
    if (read.fault !== null) faults.push({ field: column.field, message: mixed(reading, place, text) ?? read.fault });
    const before = begun.has(column.field) ? valueAt(thing, column.path) : [];
    const value = Array.isArray(read.value) && Array.isArray(before) ? [...before, ...read.value] : read.value;
    setAt(thing, column.path, value);
    begun.add(column.field);
  }
  withoutEmptyRange(thing);
  if (id === '') thing.id = reading.newId(wordsOf(reading.asked, thing));
  return { line: row.line, thing, faults };
}

/** A product has a page under its id, and some words are pages already. */
const isPage = ({ asked, standing }: LineReading, id: string): boolean =>
  asked.list === 'products' && !standing.has(id) && SHELF_PAGES.some((page) => page === id);

const aPage = (id: string): string => `"${id}" is the address of another page. Give this product another id.`;

const wordsOf = ({ list }: CsvAsked, thing: Record<string, unknown>): unknown[] => {
  if (list === 'products') return [thing.name];
  return list === 'offers' ? [thing.supplier, thing.product, thing.pack] : [thing.product, thing.receivedOn];
};

/** A price that differs is a new one, and since when it holds is only known when the file says so. */
function withoutHistory(thing: Thing | undefined): Record<string, unknown> {
  if (!thing) return {};
  const copy: Record<string, unknown> = structuredClone(thing);
  if ('earlier' in copy) Object.assign(copy, { earlier: [], since: null });
  return copy;
}

const nothing = (kind: Kind, isNeeded: boolean) => ({
  value: isNeeded ? undefined : holdsSeveral(kind) ? [] : null,
  fault: null,
});

const order = ({ asked, written }: LineReading, place: number): DayOrder | null => {
  const column = written.orders.get(place);
  return column?.isMixed ? null : (column?.proven ?? asked.dayOrder);
};

const mixed = ({ written }: LineReading, place: number, text: string): string | null =>
  written.orders.get(place)?.isMixed && /^\d{1,2}\D\d{1,2}\D\d{4}$/.test(text)
    ? `"${text}" can be two days, and this column has days with the day first and days with the month first. Write year-month-day.`
    : null;

function lengthFault(row: Row, header: Row): string {
  const [has, wanted] = [row.cells.length, header.cells.length];
  return has > wanted
    ? `This line has ${has} cells, and the first line names ${wanted} columns. Put a cell that holds the delimiter into quotes.`
    : `This line has only ${has} of ${wanted} cells. Something is missing at its end, or the file broke off.`;
}

function valueAt(thing: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((at, step) => (isFields(at) ? at[step] : undefined), thing);
}

function setAt(thing: Record<string, unknown>, path: readonly string[], value: unknown): void {
  let at = thing;
  for (const step of path.slice(0, -1)) {
    const there = at[step];
    const next = isFields(there) ? there : {};
    at[step] = next;
    at = next;
  }
  at[path.at(-1) ?? ''] = value;
}

/** A range that has neither end is none. */
function withoutEmptyRange(thing: Record<string, unknown>): void {
  const { label } = thing;
  if (!isFields(label) || !isFields(label.sprayPh)) return;
  if ((label.sprayPh.min ?? null) === null && (label.sprayPh.max ?? null) === null) label.sprayPh = null;
}

const isFields = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
