import { type Micros, micros, type Stock, stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';

/*
 * Whole numbers between the database, which holds them as big integers, and the program, which holds them as safe ones.
 */

/** A stored whole number. Throws RangeError when it is too large to be exact. */
export function toWhole(stored: bigint): number {
  const value = Number(stored);
  if (!Number.isSafeInteger(value)) throw new RangeError(`stored number: ${stored} is too large to be exact`);
  return value;
}

/** Stored money, or stored stock. Throw RangeError when it is negative or too large to be exact. */
export const toMicros = (stored: bigint): Micros => micros(toWhole(stored));
export const toStock = (stored: bigint): Stock => stock(toWhole(stored));

/** A stored moment. Throws RangeError when it is outside the years 1970 to 9999. */
export const toInstant = (stored: bigint): Instant => instantOf(toWhole(stored));

/*
 * The same for reading a whole shop, in which one odd value must not stop the rest: they throw nothing, and whatever
 * cannot be is refused by the contract of the shop file, as one thing that cannot be read.
 */
export const asStock = (stored: bigint): Stock => Number(stored) as Stock;
export const asMicros = (stored: bigint): Micros => Number(stored) as Micros;
export const asInstant = (stored: bigint): Instant => Number(stored) as Instant;
export const asDay = (stored: string): Day => stored as Day;

/** A whole number as it is stored. Throws RangeError when it is not whole or not exact, before anything is cut off. */
export function toStored(value: number): bigint {
  if (!Number.isSafeInteger(value)) throw new RangeError(`number to store: ${value} is not an exact whole number`);
  return BigInt(value);
}

/** The same for what may be unknown. */
export const toStoredOrNull = (value: number | null): bigint | null => (value === null ? null : toStored(value));

/**
 * A whole number for a column of small ones, which would otherwise cut 1.5 down to 1 without a word. Throws RangeError.
 */
export function small(value: number): number {
  if (!Number.isInteger(value) || Math.abs(value) > LARGEST_SMALL) {
    throw new RangeError(`number to store: ${value} is not a whole number that fits`);
  }
  return value;
}

export const smallOrNull = (value: number | null): number | null => (value === null ? null : small(value));

const LARGEST_SMALL = 2 ** 31 - 1;

/** A measured number. Throws RangeError for NaN and infinities, which the database would keep as "unknown". */
export function real(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`number to store: ${value} is not a number`);
  return value;
}

export const realOrNull = (value: number | null): number | null => (value === null ? null : real(value));
