import fc from 'fast-check';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';

/*
 * Values that a person, a spreadsheet or a program may send, and that no shop should be able to keep.
 */

const TEXTS = [
  ...['', ' ', '\t', '\u2028', '\u0000', 'a\tb', 'a\nb', 'a\r\nb', 'a\u2028b', 'a\u2029b', 'a\u0000b', ' a', 'a '],
  ...[
    '\u202eabc',
    'a\u200e',
    '\u2066a\u2069',
    '\u200b',
    '\u3164',
    '\ufeff',
    'a\ud800',
    '\udc00a',
    'a\u0085b',
    '.',
    '..',
  ],
  ...['x'.repeat(10_000), '\u001b[31m', '__proto__', 'constructor', "'; --", '<b>', 'ﷺ'.repeat(50), '👩‍🌾'],
] as const;

const DAYS = [
  ...['1969-12-31', '1970-01-01', '1970-12-31', '1971-01-01', '2999-12-31', '3000-01-01', '9999-12-31', '0000-00-00'],
  ...['2026-02-30', '', 'today', '2026-3-1', '2026-03-31\t', '12026-03-31'],
] as const;

const MOMENTS = [
  ...[
    0, 1, -1, 86_400_000, 31_535_999_999, 31_536_000_000, 32_503_679_999_999, 32_503_680_000_000, 253_402_214_399_999,
  ],
  ...[8_640_000_000_000_001, 1.5, Number.NaN, Number.POSITIVE_INFINITY, Number.MAX_SAFE_INTEGER],
] as const;

const NUMBERS = [
  ...[0, -0, -1, 1, 0.5, 1e-9, 1e-320, 1e9, 10_001, 2 ** 31, 2 ** 53, 1e21, 1e308],
  ...[Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
] as const;

const SIZES = [
  ...[
    '0 mL',
    '1e9 gal',
    '0.0000001 mL',
    '9007199254740993 mL',
    '500',
    'mL',
    '500 g',
    '1 tsp',
    '1\t qt',
    '-1 mL',
    '500 mL\u2028',
  ],
  ...['١ mL', '1,5 qt', '1 qt ', '½ qt', '99999999999999999999 gal'],
] as const;

/** Which fields of a command are hostile, counted as they are asked for, and which value each gets. */
export type Plan = { fields: number[]; pick: number; seed: number };

export const plan: fc.Arbitrary<Plan> = fc.record({
  fields: fc.uniqueArray(fc.nat(14), { minLength: 1, maxLength: 3 }),
  pick: fc.nat(1_000),
  seed: fc.nat(1_000_000),
});

/** Hands out the fields of one command: sound ones, and hostile ones where the plan says so. */
export class Fields {
  private asked = 0;
  /** Whether a number was handed in that no form and no route can make: they read text, and take whole amounts only. */
  hasImpossibleNumber = false;

  constructor(private readonly of: Plan) {}

  /** A number below some bound, the same for the same plan. */
  nth(bound: number): number {
    return (this.of.seed + this.asked * 7) % bound;
  }

  private value<T>(sound: unknown, hostile: readonly unknown[]): T {
    const at = this.asked;
    this.asked += 1;
    // Hostile values are handed in as a careless caller would: of the right type by word alone.
    return (this.of.fields.includes(at) ? hostile[(this.of.pick + at * 31) % hostile.length] : sound) as T;
  }

  text<T extends string | null>(sound: T): T {
    return this.value(sound, TEXTS);
  }

  day(sound: string): Day {
    return this.value(sound, DAYS);
  }

  dayText(sound: string): string {
    return this.value(sound, DAYS);
  }

  moment(sound: number): Instant {
    return this.value(sound, MOMENTS);
  }

  momentOrNull(sound: number | null): Instant | null {
    return this.value(sound, MOMENTS);
  }

  number<T extends number>(sound: number): T {
    const number = this.value<T>(sound, NUMBERS);
    this.hasImpossibleNumber ||= number < 0 || !Number.isSafeInteger(number);
    return number;
  }

  size(sound: string): string {
    return this.value(sound, SIZES);
  }

  id(sound: string): string {
    return this.value(sound, [...TEXTS, 'nobody', 'l', 'p', 'b', 'r', 'g', 'a']);
  }

  ids(sound: string[]): string[] {
    return this.value(sound, [[], [...sound, ...sound], ['nobody'], ['\t'], [...sound, 'b2', 'b2']]);
  }
}

/** A moment as a shop file writes it, whatever it is. */
export function isoOf(milliseconds: number): string {
  const date = new Date(milliseconds);
  return Number.isNaN(date.getTime()) ? String(milliseconds) : date.toISOString();
}
