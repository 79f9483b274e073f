import { type Numerals, plainNumeral } from '@/shared/csv/numeral';

/** What a cell says, as the shop file would; with what is wrong with it, which then stands instead of any other complaint. */
export type CellReading = { value: unknown; fault: string | null };

export const cellValue = (value: unknown): CellReading => ({ value, fault: null });
export const cellFault = (value: unknown, fault: string): CellReading => ({ value, fault });

const NUMBER = /^[-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[-+]?\d+)?$/i;

/** A number; as typed when it is none, for the shop file's own sentence. */
export function numberIn(text: string, numerals: Numerals): CellReading {
  const plain = plainNumeral(text.trim(), numerals);
  if (!plain.ok) return cellFault(text, plain.message);
  return cellValue(NUMBER.test(plain.value) ? Number(plain.value) : text);
}
