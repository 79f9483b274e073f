import { z } from 'zod';
import { readArea } from '../measure/area';
import { readDose } from '../measure/dose';
import { readGtin } from '../measure/gtin';
import { readMoney } from '../measure/money';
import { readSize, readVolume } from '../measure/size';
import { type Reading, read, unreadable } from '../outcome';
import { textFault } from '../text/text-fault';
import { readClockTime, readClosingTime } from '../time/clock-time';
import { readDay } from '../time/day';
import { readInstant } from '../time/instant';
import { readRepeat } from '../time/recurrence';
import { readZone } from '../time/zone';
import { shown } from './path';

/*
 * What a single field of a shop file may hold. Each says in one sentence what to write instead, because whoever reads
 * that sentence has the file open in an editor and nothing else.
 */

type Found = { readonly input?: unknown };

/** The sentence for a value of the wrong kind: what was found, and what to write. */
export const instead = (write: string) => ({
  error: ({ input }: Found) =>
    input === undefined ? `This is missing. ${write}` : `This is ${named(input)}. ${write}`,
});

function named(value: unknown): string {
  if (typeof value === 'number') return Number.isFinite(value) ? `the number ${value}` : 'a number too large to keep';
  if (typeof value === 'string') return value === '' ? 'empty' : `the text ${shown(value)}`;
  return shown(value);
}

/** Text of the shop's own: names, uses, notes. `textFault` says what it may hold. */
export function words(longest: number, write: string) {
  return z
    .string(instead(write))
    .min(1, { error: `This is empty. ${write}`, abort: true })
    .max(longest, { error: `This is longer than ${longest} characters. Shorten it.`, abort: true })
    .refine((text) => textFault(text) === null, {
      error: ({ input }: Found) => textFault(String(input)) ?? 'This cannot be kept.',
      abort: true,
    })
    .refine((text) => text.trim() === text, { error: 'This begins or ends with a space. Take it out.', abort: true });
}

/** Text that a reader of ours understands; its own sentence says why when it does not. */
function understood(longest: number, write: string, reader: (text: string) => Reading<unknown>) {
  return words(longest, write).superRefine((text, context) => {
    const reading = reader(text);
    if (!reading.ok) context.addIssue({ code: 'custom', message: reading.message });
  });
}

const LONGEST_MEASURE = 60;
const such = (...examples: string[]) => ({ examples });

export const id = () =>
  words(64, 'Write an id of 1 to 64 characters in quotes, such as "p1".').refine((text) => !/^\.{1,2}$/.test(text), {
    error: ({ input }: Found) => `${shown(input)} cannot be in an address. Give this another id, such as "p1".`,
    abort: true,
  });
export const reference = (what: string) => words(64, `Write the id of a ${what} in this file, in quotes.`);
export const name = () => words(200, 'Write a name in quotes.');
export const money = () =>
  understood(LONGEST_MEASURE, 'Write an amount of money as text in quotes, such as "212.00".', readMoney).meta({
    examples: ['212.00'],
    pattern: '^[0-9]*[.]?[0-9]+$',
  });
export const volume = () =>
  understood(LONGEST_MEASURE, 'Write a volume with its unit in quotes, such as "2 gal" or "0.5 L".', readVolume).meta(
    such('2 gal', '0.5 L'),
  );

export const area = () =>
  understood(LONGEST_MEASURE, 'Write an area with its unit in quotes, such as "130 sq ft" or "12 m2".', readArea).meta(
    such('130 sq ft', '12 m2'),
  );
export const gtin = () =>
  understood(14, 'Write the 8, 12, 13 or 14 digits under a bar code, in quotes.', readGtin).meta({
    pattern: '^([0-9]{8}|[0-9]{12,14})$',
  });

/** Whether a size or a dose fits its product is looked at later, once it is known whether that is a liquid or a powder. */
const ofEither = (reader: (text: string, form: 'liquid' | 'powder') => Reading<unknown>) => {
  return (text: string): Reading<unknown> => {
    const asLiquid = reader(text, 'liquid');
    return asLiquid.ok || reader(text, 'powder').ok ? read(text) : asLiquid;
  };
};
export const size = () =>
  understood(
    LONGEST_MEASURE,
    'Write a size with its unit in quotes, such as "1 qt", "600 mL" or "2.5 lb".',
    ofEither(readSize),
  ).meta(such('1 qt', '600 mL', '2.5 lb'));
export const dose = () =>
  understood(
    100,
    'Write a dose as people do, in quotes, such as "12 mL/gal", "0.5 %" or "40 ppm spinosad".',
    ofEither(readDose),
  ).meta(such('12 mL/gal', '0.5 %', '40 ppm spinosad'));

export const day = () =>
  understood(10, 'Write a day in quotes, such as "2026-03-31".', readDay).meta({ format: 'date' });
export const instant = () =>
  understood(40, 'Write a moment with its offset in quotes, such as "2026-02-24T22:30:00Z".', readInstant).meta({
    format: 'date-time',
  });
export const clockTime = () =>
  understood(5, 'Write a time of day in quotes, such as "17:30".', readClockTime).meta(such('17:30'));
export const closingTime = () =>
  understood(5, 'Write a time of day in quotes, such as "18:00" or "24:00".', readClosingTime).meta(
    such('18:00', '24:00'),
  );
export const zone = () =>
  understood(64, 'Write an IANA time zone in quotes, such as "America/New_York".', readZone).meta(
    such('America/New_York'),
  );
export const currency = () =>
  understood(20, 'Write a currency code in quotes, such as "USD".', readCurrency).meta({
    examples: ['USD'],
    pattern: '^[A-Z]{3}$',
  });
export const repeat = () =>
  understood(500, 'Write a rule in quotes, such as "FREQ=WEEKLY;BYDAY=TU", or null for once.', readRepeat).meta(
    such('FREQ=WEEKLY;BYDAY=TU'),
  );

/** With what ISO 4217 has for none: a shop whose currency cannot be read is shown with it. */
const CURRENCIES: ReadonlySet<string> = new Set([...Intl.supportedValuesOf('currency'), 'XXX']);

function readCurrency(text: string): Reading<string> {
  if (CURRENCIES.has(text)) return read(text);
  const capitals = text.toUpperCase();
  const meant = CURRENCIES.has(capitals) ? capitals : 'USD';
  return unreadable(`${shown(text)} is not a currency. Write its three-letter code of ISO 4217, such as "${meant}".`);
}

/** A number in a range, both ends included. */
export function number(least: number, most: number, write: string) {
  const outside = {
    error: ({ input }: Found) => `${shown(input)} is not between ${least} and ${most}. ${write}`,
    abort: true,
  };
  return z.number(instead(write)).min(least, outside).max(most, outside);
}

/** A whole number in a range, both ends included. */
export function count(least: number, most: number, write: string) {
  const isNumber = (input: unknown) => typeof input === 'number' && Number.isFinite(input);
  return z
    .int({
      error: ({ input }: Found) =>
        isNumber(input) ? `${shown(input)} is not a whole number. ${write}` : instead(write).error({ input }),
    })
    .min(least, { error: ({ input }: Found) => `${shown(input)} is below ${least}. ${write}` })
    .max(most, { error: ({ input }: Found) => `${shown(input)} is above ${most}. ${write}` });
}

export const yesNo = () => z.boolean(instead('Write true or false, without quotes.'));

/** One of a few words. */
export function oneOf<const T extends readonly string[]>(...choices: T) {
  return z.enum(choices, instead(`Write one of ${choices.map((choice) => `"${choice}"`).join(', ')}.`));
}

/** A list; of at most so many things, as `check-limits.ts` holds it for whole files. */
const list = <T extends z.ZodType>(of: T, most?: number) => {
  const any = z.array(of, instead('Write a list, in square brackets.'));
  return most === undefined ? any : any.meta({ maxItems: most });
};

/** A list that must name something. */
export const someOf = <T extends z.ZodType>(of: T, write: string) =>
  z.array(of, instead(write)).min(1, { error: `This list is empty. ${write}` });

/** An object whose fields are all known. */
export const section = <T extends z.ZodRawShape>(shape: T) =>
  z.strictObject(shape, {
    error: (issue) => (issue.code === 'unrecognized_keys' ? undefined : wrongSection.error(issue)),
  });

const wrongSection = instead('Write an object, in curly brackets.');

/** A field that may be left out, or null: unknown, which is never treated as zero. */
export const maybe = <T extends z.ZodType>(field: T) =>
  field
    .nullish()
    .transform((value) => value ?? null)
    .meta({ leftOut: null });

/** A setting that may be left out, or null, with the value it then has. */
export const setting = <T extends z.ZodType>(field: T, leftOut: NonNullable<z.output<T>>) =>
  field
    .nullish()
    .transform((value) => value ?? leftOut)
    .meta({ leftOut });

/** A list that may be left out: nothing in it. */
export const listOf = <T extends z.ZodType>(of: T, most?: number) =>
  list(of, most)
    .nullish()
    .transform((value) => value ?? [])
    .meta({ leftOut: [] });

/** An object that may be left out: everything in it is left out. */
export const sectionOf = <T extends z.ZodType>(of: T) =>
  of
    .nullish()
    .transform((value) => value ?? of.parse({}))
    .meta({ leftOut: {} });
