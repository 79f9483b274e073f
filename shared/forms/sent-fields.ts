import { z } from 'zod';
import { type Fault, type Reading, read, unreadable } from '../outcome';
import { type Fields, rowsIn } from './rows';

/** A form about one thing of the shop, read: which command it is, which thing, and how that stood when it was opened. */
export type Sent<Draft> = {
  commandId: string;
  /** The shop that the form was opened for, whichever is looked at when it is sent. */
  shop: string;
  /** Null when the thing is to be new. */
  id: string | null;
  /** The fingerprint of the thing as it stood; null when it is to be new. */
  standing: string | null;
  /** Everything that was typed, as it was typed. */
  draft: Draft;
};

const LONGEST_FIELD = 2_000;
const MOST_FIELDS = 1_000;

/**
 * The contract of a form about one thing, whose lists may have any number of rows.
 *
 * Takes    how the draft is read from the fields, and which names its fields have
 * Refuses  a command id that the page did not make; a field that came twice, is a file, is unknown, or is overlong
 */
export const sentForm = <Draft>(draftOf: (fields: Fields) => Draft, names: RegExp) =>
  z
    .record(z.string(), z.string({ error: 'Write this once, as text.' }).max(LONGEST_FIELD, { error: 'Shorten this.' }))
    .superRefine((fields, context) => {
      const all = Object.keys(fields);
      const isKnown = (name: string) => names.test(name) || /^(commandId|shop|id|standing)$/.test(name);
      if (!/^[0-9a-f]{32}$/.test(fields.commandId ?? '') || all.length > MOST_FIELDS || !all.every(isKnown)) {
        context.addIssue({ code: 'custom', message: 'This form is too old. Reload the page and enter it again.' });
      }
    })
    .transform(
      (fields): Sent<Draft> => ({
        commandId: fields.commandId ?? '',
        shop: fields.shop ?? '',
        id: fields.id || null,
        standing: fields.standing || null,
        draft: draftOf(fields),
      }),
    );

const MOST_ROWS = 100;

/**
 * The rows of a list in a form, in their order. A row that was taken out in between leaves no gap; a field that a row
 * does not have is empty.
 */
export const rowsTyped = <Column extends string>(
  fields: Fields,
  list: string,
  columns: readonly Column[],
): Record<Column, string>[] =>
  rowsIn(Object.keys(fields), list)
    .slice(0, MOST_ROWS)
    .map((number) => rowFrom(columns, (column) => fields[`${list}[${number}].${column}`] ?? ''));

/** A row of a list from what each of its columns holds. */
export function rowFrom<Column extends string>(columns: readonly Column[], held: (column: Column) => string) {
  return Object.fromEntries(columns.map((column) => [column, held(column)])) as Record<Column, string>;
}

/** The fields of a list's rows, as a browser sends them. */
export const fieldsOfRows = (list: string, rows: readonly Readonly<Record<string, string>>[]): Fields =>
  Object.fromEntries(
    rows.flatMap((row, number) =>
      Object.entries(row).map(([column, held]) => [`${list}[${number}].${column}`, held] as const),
    ),
  );

/** The rows into which something was typed, with their number in the form. */
export const usedRows = <Row extends Readonly<Record<string, string>>>(rows: readonly Row[]) =>
  rows.map((row, number) => ({ row, number })).filter(({ row }) => !isBlank(row));

/** Whether nothing at all was typed into a row. */
export const isBlank = (row: Readonly<Record<string, string>>): boolean =>
  Object.values(row).every((held) => held.trim() === '');

/**
 * A number that was typed into a field of its own.
 *
 * Gives    null for an empty field: not known
 * Refuses  anything but plain digits with a point, such as "6.4"; a sign, a comma, a unit
 */
export function readNumber(text: string, write: string): Reading<number | null> {
  const plain = text.trim();
  if (plain === '') return read(null);
  if (/^(\d+(\.\d*)?|\.\d+)(e-?\d{1,3})?$/i.test(plain)) return read(Number(plain));
  const comma = /^\d+,\d+$/.test(plain) ? ` With a point: ${plain.replace(',', '.')}.` : '';
  return unreadable(`${JSON.stringify(plain)} is not a plain number. ${write}${comma}`);
}

/** Gathers what is wrong in a form, field by field, while what can be read is read. */
export class FieldFaults {
  readonly faults: Fault[] = [];

  /** The value of a reading; null, and a fault at the field, when there is none. */
  take<T>(field: string, reading: Reading<T>): T | null {
    if (reading.ok) return reading.value;
    this.faults.push({ path: field, message: reading.message });
    return null;
  }

  add(path: string, message: string): void {
    this.faults.push({ path, message });
  }
}

/** What was typed; null for an empty field. */
export const orNull = (text: string): string | null => text.trim() || null;

/** A number as a field shows it: empty when it is not known. */
export const typedNumber = (value: number | null): string => (value === null ? '' : String(value));

/**
 * The id of a new thing: readable, from its name, and its own even beside one of the same name. Sending the form again
 * gives the same id.
 */
export function idFor(name: string, commandId: string, otherwise: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `${plain.slice(0, 40) || otherwise}-${commandId.slice(0, 4)}`;
}
