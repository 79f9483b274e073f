/** What JSON can say. */
export type Json = string | number | boolean | null | Json[] | { [field: string]: Json | undefined };

/** A field that differs: where, what it is and what it would be. `undefined` is never inside: nothing is null. */
export type Differing = { field: string; from: Json; to: Json };

/**
 * Where two pieces of plain data differ, field by field. Lists are compared as a whole, because their order counts.
 *
 * Gives    fields with their path, such as "label.reiHours"
 */
export function differences(from: Json, to: Json, field = ''): Differing[] {
  if (!isFields(from) || !isFields(to)) return isSame(from, to) ? [] : [{ field, from, to }];
  const fields = [...new Set([...Object.keys(from), ...Object.keys(to)])];
  return fields.flatMap((name) => differences(from[name] ?? null, to[name] ?? null, field ? `${field}.${name}` : name));
}

const isFields = (value: Json): value is { [field: string]: Json | undefined } =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function isSame(from: Json, to: Json): boolean {
  if (Array.isArray(from) && Array.isArray(to)) {
    return from.length === to.length && from.every((item, place) => isSame(item, to[place] ?? null));
  }
  if (isFields(from) && isFields(to)) return differences(from, to).length === 0;
  return from === to;
}
