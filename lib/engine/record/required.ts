import type { PRODUCT_KINDS } from '@/shared/shop-file/contract';
import type { Instant } from '@/shared/time/instant';

/** What a record must say of a spraying with a pesticide. */
type RequiredField =
  | 'product'
  | 'registration'
  | 'actives'
  | 'crop'
  | 'location'
  | 'startedAt'
  | 'endedAt'
  | 'interval';

/** What a record is held against it with. */
export type Kept = {
  startedAt: Instant;
  endedAt: Instant | null;
  crop: string | null;
  location: string | null;
  products: readonly {
    name: string | null;
    kind: (typeof PRODUCT_KINDS)[number];
    registration: string | null;
    actives: string | null;
    reiMinutes: number | null;
  }[];
};

/** A field that a record lacks, and in a sentence what to do about it. */
export type Missing = { field: RequiredField; message: string };

/** What is not registered as a pesticide. Whatever else there is might be. */
const NO_PESTICIDE: ReadonlySet<string> = new Set(['nutrient', 'biostimulant', 'surfactant', 'pH adjuster']);

/**
 * What a record lacks of that which US worker-protection rules ask to be kept of every use of a pesticide: its name,
 * registration number and active ingredients; the crop or site treated, where that is and which part of it; the date and
 * the times of start and end; and the restricted-entry interval.
 *
 * Gives    a sentence for each that is missing. A product that is no pesticide needs a name and an interval, no number
 * Source   40 CFR 170.311(b)
 */
export function missingFields({ startedAt, endedAt, crop, location, products }: Kept): Missing[] {
  const missing: Missing[] = products.flatMap(missingOf);
  const lacks = (field: RequiredField, message: string) => missing.push({ field, message });
  if (products.length === 0) lacks('product', 'Which products went in is unknown: amend the record.');
  if (crop === null) lacks('crop', 'The crop or site treated is unknown: amend the record.');
  if (location === null) {
    lacks('location', 'Where that is is unknown: enter the shop’s address, or the place of the bench, then amend.');
  }
  if (!(startedAt > 0)) lacks('startedAt', 'The start is unknown: amend the record.');
  if (endedAt === null) lacks('endedAt', 'The end is unknown: amend the record.');
  return missing;
}

function missingOf({ name, kind, registration, actives, reiMinutes }: Kept['products'][number]): Missing[] {
  const which = name ?? 'a product';
  const missing: Missing[] = [];
  const lacks = (field: RequiredField, what: string) =>
    missing.push({ field, message: `The ${what} of ${which} is unknown: enter it with the product, then amend.` });
  if (name === null) lacks('product', 'name');
  if (!NO_PESTICIDE.has(kind)) {
    if (registration === null) lacks('registration', 'registration number');
    if (actives === null) lacks('actives', 'content of active ingredients');
  }
  if (reiMinutes === null) lacks('interval', 'restricted-entry interval');
  return missing;
}
