import { z } from 'zod';

/*
 * What a single field of a shop file may hold. Each says in one sentence what to write instead, because whoever reads
 * that sentence has the file open in an editor and nothing else.
 */

type Input = { readonly input?: unknown };

/** The sentence for a value of the wrong kind: what was found, and what to write. */
const instead = (write: string) => ({
  error: ({ input }: Input) =>
    input === undefined ? `This is missing. ${write}` : `This is ${named(input)}. ${write}`,
});

function named(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'string') return value === '' ? 'empty' : `the text ${shortened(JSON.stringify(value))}`;
  return typeof value === 'number' ? `the number ${value}` : String(value);
}

const shortened = (text: string): string => (text.length > 60 ? `${text.slice(0, 57)}…"` : text);

const LONGEST_MEASURE = 60;

/** Text of the shop's own: names, uses, notes. */
export function words(longest: number, write: string) {
  return z
    .string(instead(write))
    .min(1, { error: `This is empty. ${write}` })
    .max(longest, { error: `This is longer than ${longest} characters. Shorten it.` });
}

export const id = () => words(64, 'Write an id: text of 1 to 64 characters, such as "p1".');
export const reference = (what: string) => words(64, `Write the id of a ${what} in this file, in quotes.`);
export const name = () => words(200, 'Write a name in quotes.');
export const money = () => words(LONGEST_MEASURE, 'Write an amount of money as text in quotes, such as "212.00".');
export const size = () =>
  words(LONGEST_MEASURE, 'Write a size with its unit in quotes, such as "1 qt", "600 mL" or "2.5 lb".');
export const volume = () =>
  words(LONGEST_MEASURE, 'Write a volume with its unit in quotes, such as "2 gal" or "0.5 L".');
export const dose = () =>
  words(LONGEST_MEASURE, 'Write a dose as people do, in quotes, such as "12 mL/gal" or "0.5 %".');
export const day = () => words(10, 'Write a day as "2026-03-31".');
export const instant = () => words(40, 'Write a moment with its offset, such as "2026-02-24T22:30:00Z".');
export const clockTime = () => words(5, 'Write a time of day as "17:30".');
export const zone = () => words(64, 'Write an IANA time zone, such as "America/New_York".');
export const currency = () => words(3, 'Write a currency code of ISO 4217, such as "USD".');
export const repeat = () => words(200, 'Write a rule such as "FREQ=WEEKLY;BYDAY=TU", or null for once.');

/** A number in a range, both ends included. */
export function number(least: number, most: number, write: string) {
  const outside = { error: ({ input }: Input) => `${input} is not between ${least} and ${most}. ${write}` };
  return z.number(instead(write)).min(least, outside).max(most, outside);
}

/** A whole number in a range, both ends included. */
export function count(least: number, most: number, write: string) {
  return number(least, most, write).int({ error: ({ input }: Input) => `${input} is not a whole number. ${write}` });
}

export const yesNo = () => z.boolean(instead('Write true or false, without quotes.'));

/** One of a few words. */
export function oneOf<const T extends readonly string[]>(...choices: T) {
  return z.enum(choices, instead(`Write one of ${choices.map((choice) => `"${choice}"`).join(', ')}.`));
}

export const list = <T extends z.ZodType>(of: T) => z.array(of, instead('Write a list, in square brackets.'));

export const section = <T extends z.ZodRawShape>(shape: T) =>
  z.strictObject(shape, { error: (issue) => (issue.code === 'invalid_type' ? wrongSection(issue) : undefined) });

const wrongSection = instead('Write an object, in curly brackets.').error;

/** A field that may be left out, or null: unknown, which is never treated as zero. */
export const maybe = <T extends z.ZodType>(field: T) =>
  field
    .nullish()
    .transform((value) => value ?? null)
    .meta({ default: null });

/** A list that may be left out: nothing in it. */
export const listOf = <T extends z.ZodType>(of: T) =>
  list(of)
    .nullish()
    .transform((value) => value ?? []);

/** A setting that may be left out, with the value it then has. */
export const setting = <T extends z.ZodType>(field: T, unless: NonNullable<z.output<T>>) =>
  field
    .nullish()
    .transform((value) => value ?? unless)
    .meta({ default: unless });
