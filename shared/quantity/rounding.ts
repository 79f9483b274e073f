import { compare, divide, type Exact, exact, multiply, ZERO } from './exact';

/*
 * Every rounding of the program is a function in this file, so that a division always shows its intent.
 */

const floorDivide = (over: bigint, under: bigint): bigint => {
  const quotient = over / under;
  return over % under !== 0n && over < 0n ? quotient - 1n : quotient;
};

const whole = <T extends number>(value: bigint): T => {
  const number = Number(value);
  if (!Number.isSafeInteger(number)) throw new RangeError(`rounding: ${value} is too large to be exact`);
  return number as T;
};

/** The nearest whole number; a half goes away from zero. */
export function wholeNearest<T extends number>({ over, under }: Exact): T {
  const away = over < 0n ? -1n : 1n;
  return whole<T>(away * floorDivide(2n * away * over + under, 2n * under));
}

/** The first whole number at or above. For sprayer fills, packs to buy, and intervals that may never be shortened. */
export const wholeUp = <T extends number>({ over, under }: Exact): T => whole<T>(-floorDivide(-over, under));

/** The last whole number at or below. For whole weeks until an order is due. */
export const wholeDown = <T extends number>({ over, under }: Exact): T => whole<T>(floorDivide(over, under));

/** The first multiple of a step at or above a value. A step of zero leaves the value as it is. */
export function stepUp(value: Exact, step: Exact): Exact {
  if (compare(step, ZERO) === 0) return value;
  return multiply(exact(BigInt(wholeUp(divide(value, step)))), step);
}

/**
 * The share of an amount that a part of a whole carries: amount × part ÷ whole.
 *
 * Takes    whole numbers, none negative
 * Rounds   to the nearest whole, a half up, on exact integers
 * Throws   RangeError when the part is above the whole
 */
export function share<A extends number, Q extends number>(amount: A, part: Q, of: NoInfer<Q>): A {
  if (part > of) throw new RangeError(`share: ${part} is more than ${of}`);
  return ofEach(amount, part, of);
}

/**
 * The price of an amount when a pack of a given size costs so much: price × amount ÷ size. Unlike `share`, the amount
 * may be larger than the pack.
 *
 * Rounds   to the nearest whole, a half up, on exact integers
 */
export function ofEach<A extends number, Q extends number>(price: A, amount: Q, size: NoInfer<Q>): A {
  if (amount === 0) return 0 as A;
  const product = price * amount;
  if (product > MOST_EXACT) return wholeNearest<A>({ over: BigInt(price) * BigInt(amount), under: BigInt(size) });
  // The same integer division in doubles: every term stays below 2^53, and the remainder settles the last bit.
  const over = 2 * product + size;
  const under = 2 * size;
  let quotient = Math.floor(over / under);
  if (quotient * under > over) quotient -= 1;
  return quotient as A;
}

const MOST_EXACT = 2 ** 51;

/**
 * The nearest whole number to a value that is known as a double and, where that is not enough, exactly. It is the same
 * number as the exact value would give, at a fraction of its cost: a double decides whenever it is not close to a half.
 *
 * Takes    an estimate, correct to a few of its last bits and not negative, and the exact value for when it is asked for
 * Rounds   to the nearest whole, a half up
 */
export function nearestBy<A extends number>(estimate: number, exactly: () => Exact): A {
  const down = Math.floor(estimate);
  const isClear = estimate < 2 ** 40 && Math.abs(estimate - down - 0.5) > 0.001;
  return isClear ? (Math.floor(estimate + 0.5) as A) : wholeNearest<A>(exactly());
}

/**
 * Share a whole amount over equal places so that the parts add up to it: the remainder goes to the first ones.
 *
 * Takes    the amount, and how many places (at least one)
 */
export function shareOut<A extends number>(amount: A, places: number): A[] {
  const each = Math.floor(amount / places);
  const left = amount - each * places;
  return Array.from({ length: places }, (_, place) => (each + (place < left ? 1 : 0)) as A);
}

/**
 * Share a whole amount over things by their value so that the parts add up to it: each gets its share rounded down, and
 * what is left over goes one by one to those that lost most by that, the first of equals first.
 *
 * Takes    the amount, and the value of each thing, none negative; where nothing has a value, all count alike
 * Throws   RangeError when there is an amount to share and nothing to share it over
 */
export function shareByValue<A extends number>(amount: A, values: readonly number[]): A[] {
  if (values.length === 0 && amount > 0) throw new RangeError(`share: nothing to share ${amount} over`);
  const small = values.reduce((sum, value) => sum + value, 0);
  if (small > 0 && values.every((value) => value >= 0 && amount * value + small < Number.MAX_SAFE_INTEGER)) {
    return shareSmall(amount, values, small);
  }
  const total = values.reduce((sum, value) => sum + BigInt(value), 0n);
  if (total === 0n) return shareOut(amount, values.length);
  const products = values.map((value) => BigInt(amount) * BigInt(value));
  const downs = products.map((product) => product / total);
  const left = BigInt(amount) - downs.reduce((sum, down) => sum + down, 0n);
  const byLoss = products.map((product, place) => ({ place, lost: product % total }));
  byLoss.sort((a, b) => (a.lost === b.lost ? a.place - b.place : a.lost > b.lost ? -1 : 1));
  const risen = new Set(byLoss.slice(0, Number(left)).map(({ place }) => place));
  return downs.map((down, place) => whole<A>(down + (risen.has(place) ? 1n : 0n)));
}

/** The same where every product stays below 2^53, so that plain numbers are exact: a budget shares a hundred thousand costs. */
function shareSmall<A extends number>(amount: number, values: readonly number[], total: number): A[] {
  const lost = values.map((value) => (amount * value) % total);
  const downs = values.map((value, place) => (amount * value - (lost[place] ?? 0)) / total);
  let left = amount - downs.reduce((sum, down) => sum + down, 0);
  const byLoss = lost.map((_, place) => place).sort((a, b) => (lost[b] ?? 0) - (lost[a] ?? 0) || a - b);
  for (const place of byLoss) {
    if (left <= 0) break;
    downs[place] = (downs[place] ?? 0) + 1;
    left -= 1;
  }
  return downs as A[];
}

/** Whole weeks in a number of days, rounded down: −1 day is −1 week, so that late says so. */
export const wholeWeeks = (days: number): number => Math.floor(days / 7);

/** Whole seconds in a number of milliseconds, rounded up: whoever waits that long has waited long enough. */
export const wholeSeconds = (ms: number): number => Math.ceil(ms / 1_000);

/** Whole thousandths of an estimate, the nearest: whole µL of mL, whole mg of g. */
export const thousandths = (amount: number): number => Math.round(amount * 1000);
