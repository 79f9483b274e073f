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

/** What stands in an address. What came twice counts once. */
export const whatIfIn = (search: Readonly<Record<string, string | string[] | undefined>>): WhatIfFields =>
  Object.fromEntries(
    FIELDS.map((field) => [field, [search[field] ?? ''].flat()[0]?.slice(0, 100) ?? '']),
  ) as WhatIfFields;

/**
 * What is supposed, as far as it can be read, and what cannot be, by field. A part of which nothing was typed is not
 * supposed.
 */
export function readWhatIf(fields: WhatIfFields): { asked: WhatIfAsked; faults: Fault[] } {
  const faults: Fault[] = [];
  const whole = (field: keyof WhatIfFields, { min, max }: { min: number; max: number }, otherwise: number | null) => {
    const typed = fields[field].trim();
    if (typed === '') return otherwise;
    const value = /^\d+$/.test(typed) ? Number(typed) : Number.NaN;
    if (value >= min && value <= max) return value;
    faults.push({ path: field, message: `Write a whole number from ${min} to ${max.toLocaleString('en-US')}.` });
    return otherwise;
  };
  const day = (field: keyof WhatIfFields): Day | null => {
    if (fields[field] === '') return null;
    const reading = readDay(fields[field]);
    if (reading.ok) return reading.value;
    faults.push({ path: field, message: reading.message });
    return null;
  };
  const [on, plants] = [day('extraOn'), whole('plants', { min: 1, max: MOST_PLANTS }, null)];
  const mlPerPlant = whole('ml', { min: 1, max: MOST_ML }, null);
  const asked = {
    product: fields.product || null,
    pricePercent: whole('price', PRICE_PERCENT, 100) ?? 100,
    usePercent: whole('use', USE_PERCENT, 100) ?? 100,
    extra: fields.extra !== '' && on ? { program: fields.extra, on } : null,
    lostFrom: day('lost'),
    bench: fields.bench !== '' && plants && mlPerPlant ? { program: fields.bench, plants, mlPerPlant } : null,
  };
  return { asked, faults };
}
