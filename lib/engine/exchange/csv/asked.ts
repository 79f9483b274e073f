import type { DayOrder } from '@/shared/csv/day-text';
import type { DecimalMark } from '@/shared/csv/numeral';
import type { CsvList } from './column';

/** A CSV file that is to come in, and what somebody said about it. */
export type CsvAsked = {
  list: CsvList;
  text: string;
  /** For each column in order the field it stands for, or null to leave it out. Null: by their names. */
  columns: readonly (string | null)[] | null;
  /** Which mark divides decimals, and whether the day or the month comes first, where the file leaves it open. */
  decimals: DecimalMark | null;
  dayOrder: DayOrder | null;
  /** Whether suppliers that are named in offers and not there are to be made. */
  createSuppliers: boolean;
};

/** Something to say about a place of the file; of the file as a whole when it names none. */
export type LineNote = { line: number | null; column: string | null; message: string };
