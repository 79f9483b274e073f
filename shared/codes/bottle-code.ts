import { type Reading, read, unreadable } from '../outcome';

/** The bottle that a label of this house names: the lot it came with, and which of that lot's bottles it is, from 1. */
export type BottleNamed = { lotId: string; number: number };

/**
 * The text in the square code of a bottle's label: "BB1:oil-b/1". What a lot and a number mean never changes, whatever
 * happens to the bottle, so a label lasts as long as its bottle does.
 */
export const bottleCode = ({ lotId, number }: BottleNamed): string => `BB1:${encodeURIComponent(lotId)}/${number}`;

/** Whether a text means to be the code of one of our labels, well written or not. */
export const isBottleCode = (text: string): boolean => /^\s*BB1\s*:/i.test(text);

/**
 * The bottle that a scanned or typed code names. Capitals in "BB1" and spaces around its parts do not matter; those in
 * the lot's own name do.
 *
 * Refuses  a code without a lot or a number, or with characters that no label carries
 */
export function readBottleCode(text: string): Reading<BottleNamed> {
  const [, lot, number] = /^\s*BB1\s*:\s*([^\s/]+)\s*\/\s*([1-9]\d{0,4})\s*$/i.exec(text) ?? [];
  const lotId = lot === undefined ? null : decoded(lot);
  if (lotId === null || number === undefined) return unreadable(NOT_WHOLE);
  return read({ lotId, number: Number(number) });
}

const NOT_WHOLE =
  'This begins like the code of a bottle label, but is not a whole one. It reads BB1:, the lot, a stroke and a number, such as BB1:oil-b/1.';

function decoded(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}
