import type { DayOrder } from '@/shared/csv/day-text';
import { plainDay } from '@/shared/csv/day-text';
import { type Numerals, plainNumeral } from '@/shared/csv/numeral';
import type { Reading } from '@/shared/outcome';
import { type CellReading, cellFault, cellValue, numberIn } from './cell-reading';
import type { Kind } from './column';
import type { Find } from './find-by-name';
import { itemsIn } from './list-cell';
import { readBreak, readContent, readRate } from './product-lists';

/** What the cells of a file are read with. */
export type ReadingWith = { numerals: Numerals; product: Find; supplier: Find };

/**
 * What a cell with something in it says.
 *
 * Takes    the kind of its column, its text, what it is read with, and the order of day and month in its column
 */
export function readCell(kind: Kind, text: string, by: ReadingWith, order: DayOrder | null): CellReading {
  switch (kind.of) {
    case 'words':
      return cellValue(text);
    case 'number':
      return numberIn(kind.plain ? kind.plain(text) : text, by.numerals);
    case 'money':
    case 'amount':
      return orTyped(text, plainNumeral(text, by.numerals));
    case 'day':
      return orTyped(text, plainDay(text, order));
    case 'yesNo':
      return readYesNo(text);
    case 'choice':
      return cellValue(kind.words.find((word) => word.toLowerCase() === text.toLowerCase()) ?? text);
    case 'product':
      return orTyped(text, by.product(text));
    case 'supplier':
      return orTyped(text, by.supplier(text));
    case 'names':
      return cellValue(itemsIn(text));
    case 'contents':
      return readItems(text, (item) => readContent(item, by.numerals));
    case 'rates':
      return readItems(text, (item) => readRate(item, by.numerals));
    case 'breaks':
      return readItems(text, (item) => readBreak(item, by.numerals));
  }
}

const orTyped = (text: string, reading: Reading<string>): CellReading =>
  reading.ok ? cellValue(reading.value) : cellFault(text, reading.message);

function readYesNo(text: string): CellReading {
  if (/^(yes|y|true|1|x)$/i.test(text)) return cellValue(true);
  if (/^(no|n|false|0)$/i.test(text)) return cellValue(false);
  return cellFault(text, `"${text}": write yes or no.`);
}

function readItems(text: string, readItem: (item: string) => CellReading): CellReading {
  const items = itemsIn(text).map(readItem);
  return { value: items.map(({ value }) => value), fault: items.find(({ fault }) => fault !== null)?.fault ?? null };
}
