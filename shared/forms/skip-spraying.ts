import { z } from 'zod';
import { typedLine } from '../text/one-line';
import { readDay } from '../time/day';
import { commandId, shopId } from './command-fields';

/** Say that a planned spraying was, or will be, left out. */
export const SkipSpraying = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  program: z.string().min(1).max(64),
  on: z.string().transform((text, context) => {
    const day = readDay(text);
    if (day.ok) return day.value;
    context.addIssue(day.message);
    return z.NEVER;
  }),
  reason: typedLine(
    z
      .string()
      .trim()
      .min(1, { error: 'Write why, in a few words, such as "rain" or "no pests seen".' })
      .max(300, { error: 'Shorten this to 300 characters.' }),
  ),
});
