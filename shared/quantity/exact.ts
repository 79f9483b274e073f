/**
 * An exact fraction. What people type is decimal or a fraction ("1 1/2"), and 1 US gallon is an exact decimal, so every
 * amount worked out from them is a fraction too. Keeping it as one means that a sum which comes out to a whole number of
 * fills, or to exactly half a microlitre, is seen to do so.
 */
export type Exact = { readonly over: bigint; readonly under: bigint };

const greatestCommonDivisor = (a: bigint, b: bigint): bigint => {
  while (b !== 0n) [a, b] = [b, a % b];
  return a < 0n ? -a : a;
};

const lowest = (over: bigint, under: bigint): Exact => {
  if (under === 0n) throw new RangeError('exact: division by zero');
  const sign = under < 0n ? -1n : 1n;
  const shared = greatestCommonDivisor(over, under) || 1n;
  return { over: (sign * over) / shared, under: (sign * under) / shared };
};

export const ZERO: Exact = { over: 0n, under: 1n };

/**
 * The exact value of a number as it is written: 0.1 is one tenth, not the nearest double.
 *
 * Takes    a finite number, or decimal text such as "-12.5" or "1e-3"
 * Throws   RangeError when it is not a plain decimal number
 */
export function exact(value: number | string | bigint): Exact {
  if (typeof value === 'bigint') return { over: value, under: 1n };
  const parts = /^(-?)(\d+)(?:\.(\d+))?(?:[eE]([+-]?\d+))?$/.exec(String(value));
  if (!parts) throw new RangeError(`exact: ${value} is not a decimal number`);
  const [, sign, whole = '', decimals = '', exponent = '0'] = parts;
  const digits = BigInt(`${sign}${whole}${decimals}`);
  const power = Number(exponent) - decimals.length;
  return power >= 0 ? lowest(digits * 10n ** BigInt(power), 1n) : lowest(digits, 10n ** BigInt(-power));
}

/** One whole number over another. Throws RangeError when the second is zero. */
export const fraction = (over: bigint, under: bigint): Exact => lowest(over, under);

export const add = (a: Exact, b: Exact): Exact => lowest(a.over * b.under + b.over * a.under, a.under * b.under);

export const subtract = (a: Exact, b: Exact): Exact => lowest(a.over * b.under - b.over * a.under, a.under * b.under);

export const multiply = (a: Exact, b: Exact): Exact => lowest(a.over * b.over, a.under * b.under);

/** Throws RangeError when b is zero. */
export const divide = (a: Exact, b: Exact): Exact => lowest(a.over * b.under, a.under * b.over);

/** −1, 0 or 1 as a is below, equal to or above b. */
export function compare(a: Exact, b: Exact): -1 | 0 | 1 {
  const [left, right] = [a.over * b.under, b.over * a.under];
  return left < right ? -1 : left > right ? 1 : 0;
}

export const smaller = (a: Exact, b: Exact): Exact => (compare(a, b) <= 0 ? a : b);

/**
 * The nearest ordinary number, for output and charts, never for further exact work.
 *
 * Rounds  to double precision: correct to the last bit for whatever fits in 17 digits
 */
export function toNumber({ over, under }: Exact): number {
  const small = over <= BigInt(Number.MAX_SAFE_INTEGER) && over >= -BigInt(Number.MAX_SAFE_INTEGER);
  if (small && under <= BigInt(Number.MAX_SAFE_INTEGER)) return Number(over) / Number(under);
  const scaled = (over * 10n ** 25n) / under;
  return Number(`${scaled}e-25`);
}
