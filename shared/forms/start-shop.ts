import { z } from 'zod';
import { readVolume } from '../measure/size';
import type { Reading } from '../outcome';
import { typedLine } from '../text/one-line';
import { readZone } from '../time/zone';

const says = (read: (text: string) => Reading<unknown>) => (text: string, context: z.core.$RefinementCtx<string>) => {
  const reading = read(text);
  if (!reading.ok) context.addIssue(reading.message);
};

/** What a shop needs before anything can be put in it. Everything else is typed in later, or comes with a file. */
export const StartShop = z.strictObject({
  commandId: z.string().regex(/^[0-9a-f]{32}$/, { error: 'This form is too old. Reload the page and enter it again.' }),
  name: typedLine(
    z.string().trim().min(1, { error: 'Write what the shop is called.' }).max(200, { error: 'Write a shorter name.' }),
  ),
  timeZone: z.string().trim().superRefine(says(readZone)),
  currency: z
    .string()
    .trim()
    .toUpperCase()
    .refine((code) => Intl.supportedValuesOf('currency').includes(code), {
      error: 'Write the three letters of a currency, such as USD or EUR.',
    }),
  units: z.enum(['us', 'metric'], { error: 'Choose US or metric units.' }),
  fillCapacity: z.string().trim().superRefine(says(readVolume)),
  /** `yes` by the button that also lets this device work in the new shop. */
  here: z.enum(['yes', 'no']).default('no'),
});
export type StartShop = z.output<typeof StartShop>;
