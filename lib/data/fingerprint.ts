import { sha256 } from './sha256';

/**
 * A fingerprint of plain data, the same whatever the order of its fields.
 *
 * Takes    what JSON can say; a field that is undefined counts as left out
 */
export const fingerprint = (value: unknown): string => sha256(JSON.stringify(inOrder(value)) ?? '');

/** The same of some fields of something: what a form asks of it. */
export const fingerprintOf = <T extends object>(whole: T, fields: readonly string[]): string =>
  fingerprint(Object.fromEntries(Object.entries(whole).filter(([field]) => fields.includes(field))));

function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([field, held]) => [field, inOrder(held)]),
  );
}
