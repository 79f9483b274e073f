import { z } from 'zod';

/** Whole millionths of the shop's currency unit. Never a float of dollars. */
export const Micros = z.number().int().nonnegative().brand<'Micros'>();
export type Micros = z.infer<typeof Micros>;

/** Whole millionths of a litre. */
export const Microlitres = z.number().int().nonnegative().brand<'Microlitres'>();
export type Microlitres = z.infer<typeof Microlitres>;

/** Whole thousandths of a gram. */
export const Milligrams = z.number().int().nonnegative().brand<'Milligrams'>();
export type Milligrams = z.infer<typeof Milligrams>;

/** Whole minutes, for intervals such as an REI. */
export const Minutes = z.number().int().nonnegative().brand<'Minutes'>();
export type Minutes = z.infer<typeof Minutes>;

/** What a container holds: µL when the product is a liquid, mg when it is a powder. The product says which. */
export type Stock = Microlitres | Milligrams;

const TOO_LARGE = 'is too large to be exact';

/** Whether something was thrown because a sum, or a rounding, went past the largest exact whole number. */
export const isTooLarge = (thrown: unknown): boolean =>
  thrown instanceof RangeError && thrown.message.endsWith(TOO_LARGE);

const safe = <T extends number>(value: number): T => {
  if (value > Number.MAX_SAFE_INTEGER) throw new RangeError(`quantity: ${value} ${TOO_LARGE}`);
  if (!Number.isSafeInteger(value) || value < 0) throw new RangeError(`quantity: ${value} is not a whole amount`);
  return value as T;
};

/** A whole amount from a plain number. Throws RangeError when it is negative, fractional or too large to be exact. */
export const micros = (value: number): Micros => safe<Micros>(value);
export const microlitres = (value: number): Microlitres => safe<Microlitres>(value);
export const milligrams = (value: number): Milligrams => safe<Milligrams>(value);
export const minutes = (value: number): Minutes => safe<Minutes>(value);
export const stock = (value: number): Stock => safe<Stock>(value);

/** a + b, in one unit. Throws RangeError past the largest exact whole number. */
export const plus = <T extends number>(a: T, b: NoInfer<T>): T => safe<T>(a + b);

/** a − b, in one unit. Throws RangeError when b is larger. */
export const minus = <T extends number>(a: T, b: NoInfer<T>): T => safe<T>(a - b);

/** The sum of a list, zero for an empty one. */
export const sum = <T extends number>(amounts: Iterable<T>): T => {
  let total = 0;
  for (const amount of amounts) total += amount;
  return safe<T>(total);
};

/** The smaller of two amounts in one unit. */
export const least = <T extends number>(a: T, b: NoInfer<T>): T => (a < b ? a : b);
