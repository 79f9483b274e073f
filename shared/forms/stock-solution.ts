import { z } from 'zod';
import { readVolume } from '../measure/size';
import { typedLine } from '../text/one-line';
import { commandId, shopId } from './command-fields';

/** How a form names what is taken from a bottle: "take:LOT/PLACE". */
export const TAKE = 'take:';

const MOST_DAYS = 3650;

const Sent = z.object({
  commandId: commandId(),
  shop: shopId(),
  product: z.string().min(1).max(64),
  makeUpTo: z
    .string({ error: 'Write how much it measures in the end, such as "500 mL".' })
    .trim()
    .max(60)
    .transform((text, context) => {
      const ml = readVolume(text);
      if (ml.ok) return { text, ml: ml.value };
      context.addIssue(ml.message);
      return z.NEVER;
    }),
  useByDays: z
    .string()
    .trim()
    .regex(/^\d{0,4}$/, { error: 'Write a whole number of days, such as 14, or leave it empty when nobody knows.' })
    .transform((text) => (text === '' ? null : Number(text)))
    .refine((days) => days === null || days <= MOST_DAYS, { error: `Write at most ${MOST_DAYS} days.` }),
  keptIn: typedLine(z.string().trim().max(100, { error: 'Shorten this to 100 characters.' })).transform(
    (text) => text || null,
  ),
});

/** What is taken from one bottle, as it was typed. */
export type TakeTyped = { field: string; lotId: string; place: number; text: string };

/**
 * Make a stock solution: what of, out of which bottles, up to what volume, and how long it may be used. The amounts are
 * read beside the product, which says whether they are poured or weighed.
 *
 * Refuses  nothing taken; any field that the form does not have
 */
export const StockSolutionForm = z
  .record(z.string(), z.string().max(300))
  .transform((fields, context): z.output<typeof Sent> & { takes: TakeTyped[] } => {
    const read = Sent.safeParse(fields);
    const takes = takesIn(fields);
    const known = Object.keys(fields).every((name) => name in Sent.shape || name.startsWith(TAKE));
    if (!known || takes === null) context.addIssue('This form is too old. Reload the page and enter it again.');
    else if (takes.length === 0) context.addIssue('Write beside a bottle how much is taken from it.');
    if (!read.success)
      for (const { message, path } of read.error.issues) context.addIssue({ message, path, code: 'custom' });
    if (read.success && takes !== null && takes.length > 0 && known) return { ...read.data, takes };
    return z.NEVER;
  });

/** The bottles from which something is taken; null when a name is not one of a bottle. */
function takesIn(fields: Record<string, string>): TakeTyped[] | null {
  const takes: TakeTyped[] = [];
  for (const [field, text] of Object.entries(fields)) {
    if (!field.startsWith(TAKE) || text.trim() === '') continue;
    const [, lotId, place] = /^(.+)\/(\d{1,6})$/.exec(field.slice(TAKE.length)) ?? [];
    if (lotId === undefined) return null;
    takes.push({ field, lotId, place: Number(place), text: text.trim() });
  }
  return takes;
}
