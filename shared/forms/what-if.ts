import { z } from 'zod';
import type { Fault } from '../outcome';
import { type Day, readDay } from '../time/day';
import { shopId } from './command-fields';

const FIELDS = ['product', 'price', 'use', 'extra', 'extraOn', 'lost', 'bench', 'plants', 'ml'] as const;

/** What is supposed beside the plan, as it was typed: empty where nothing is supposed. */
export type WhatIfFields = Record<(typeof FIELDS)[number], string>;

/** The same, read. Percent of what it is now; programs and products by their ids. */
export type WhatIfAsked = {
  product: string | null;
  pricePercent: number;
  usePercent: number;
  extra: { program: string; on: Day } | null;
  lostFrom: Day | null;
  bench: { program: string; plants: number; mlPerPlant: number } | null;
};

/** How far the sliders go, percent. */
export const PRICE_PERCENT = { min: 50, max: 200 };
export const USE_PERCENT = { min: 0, max: 300 };
export const MOST_PLANTS = 100_000;
export const MOST_ML = 10_000;

/** What `GET /buy/what-if` is asked. */
export const WhatIfQuestion = z.strictObject({
  ...(Object.fromEntries(FIELDS.map((field) => [field, z.string().max(100).default('')])) as Record<
    keyof WhatIfFields,
    z.ZodDefault<z.ZodString>
  >),
  shop: shopId(),
});

/** The fields of which nothing is supposed as long as they say so: as much as it is now. */
const AS_IT_IS: Partial<WhatIfFields> = { price: '100', use: '100' };

/** Whether anything was typed that supposes something, be it half of it. Whose price and use are meant supposes nothing. */
export const isSupposed = (fields: WhatIfFields): boolean => namedIn(fields).some(([field]) => field !== 'product');

const namedIn = (fields: WhatIfFields) =>
  FIELDS.map((field) => [field, fields[field].trim()] as const).filter(
    ([field, typed]) => typed !== '' && typed !== AS_IT_IS[field],
  );

/** What is supposed in one line, always the same for the same; and read again. A part of a figure's address. */
export const whatIfText = (fields: WhatIfFields): string =>
  `${new URLSearchParams(namedIn(fields).map(([field, typed]) => [field, typed]))}`;
export const whatIfOfText = (text: string): WhatIfFields => whatIfIn(Object.fromEntries(new URLSearchParams(text)));

/** What stands in an address. What came twice counts once. */
export const whatIfIn = (search: Readonly<Record<string, string | string[] | undefined>>): WhatIfFields =>
  Object.fromEntries(
    FIELDS.map((field) => [field, [search[field] ?? ''].flat()[0]?.slice(0, 100) ?? '']),
  ) as WhatIfFields;

/**
 * What is supposed, as far as it can be read, and what cannot be, by field. A part of which nothing was typed is not
 * supposed; of one that was half typed, what is missing is asked for.
 */
export function readWhatIf(fields: WhatIfFields): { asked: WhatIfAsked; faults: Fault[] } {
  const [on, lostFrom] = [dayOf(fields, 'extraOn'), dayOf(fields, 'lost')];
  const [price, use] = [wholeOf(fields, 'price', PRICE_PERCENT), wholeOf(fields, 'use', USE_PERCENT)];
  const [plants, ml] = [
    wholeOf(fields, 'plants', { min: 1, max: MOST_PLANTS }),
    wholeOf(fields, 'ml', { min: 1, max: MOST_ML }),
  ];
  const asked = {
    product: fields.product || null,
    pricePercent: price.value ?? 100,
    usePercent: use.value ?? 100,
    extra: fields.extra !== '' && on.value ? { program: fields.extra, on: on.value } : null,
    lostFrom: lostFrom.value,
    bench:
      fields.bench !== '' && plants.value && ml.value
        ? { program: fields.bench, plants: plants.value, mlPerPlant: ml.value }
        : null,
  };
  const unreadable = [price, use, on, lostFrom, plants, ml].flatMap(({ fault }) => fault ?? []);
  return { asked, faults: [...unreadable, ...missingIn(fields)] };
}

type Field = keyof WhatIfFields;
type Read<T> = { value: T | null; fault: Fault | null };

function wholeOf(fields: WhatIfFields, field: Field, { min, max }: { min: number; max: number }): Read<number> {
  const typed = fields[field].trim();
  const value = /^\d+$/.test(typed) ? Number(typed) : Number.NaN;
  if (value >= min && value <= max) return { value, fault: null };
  const message = `${LABELS[field]}: write a whole number from ${min} to ${max.toLocaleString('en-US')}.`;
  return { value: null, fault: typed === '' ? null : { path: field, message } };
}

function dayOf(fields: WhatIfFields, field: Field): Read<Day> {
  if (fields[field].trim() === '') return { value: null, fault: null };
  const reading = readDay(fields[field]);
  if (reading.ok) return { value: reading.value, fault: null };
  return { value: null, fault: { path: field, message: `${LABELS[field]}: ${reading.message}` } };
}

/** What each field is called where something is wrong with it. */
const LABELS: Record<Field, string> = {
  product: 'Price and use of',
  price: 'Price',
  use: 'Use',
  extra: 'A spraying more',
  extraOn: 'The day of a spraying more',
  lost: 'The first day without spraying',
  bench: 'A bench more',
  plants: 'Plants on a bench more',
  ml: 'mL a plant on a bench more',
};

/** What takes more than one field to be supposed, and what to say of each that is missing. */
const TOGETHER: Partial<Record<Field, string>>[] = [
  { extra: 'Choose what would be sprayed once more.', extraOn: 'Say on which day it would be sprayed once more.' },
  {
    bench: 'Choose what a further bench would be sprayed with.',
    plants: 'Say how many plants would stand on a further bench.',
    ml: 'Say how many mL each plant on a further bench would take.',
  },
];

const missingIn = (fields: WhatIfFields): Fault[] =>
  TOGETHER.flatMap((parts) => {
    const missing = Object.entries(parts).filter(([field]) => fields[field as Field].trim() === '');
    return missing.length === Object.keys(parts).length ? [] : missing.map(([path, message]) => ({ path, message }));
  });
