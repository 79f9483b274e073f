import { z } from 'zod';
import { LISTS } from '../shop-file/things';
import { typedLine } from '../text/one-line';
import { commandId, shopId } from './command-fields';

/** How somebody knows that a value is right. */
export const howKnown = () =>
  typedLine(
    z
      .string()
      .trim()
      .min(1, { error: 'Say how you know, for example "looked at the bottle". It stays on record.' })
      .max(300, { error: 'Shorten this to 300 characters.' }),
  );

/** That somebody has looked. */
export const looked = () => z.literal('yes', { error: 'Tick this once you have looked: benches may open by it.' });

const About = z.object({
  commandId: commandId(),
  shop: shopId(),
  list: z.enum(['shop', ...LISTS]),
  id: z.string().min(1).max(10_000),
  reason: howKnown(),
  sure: looked(),
});

/** One value that is put right: which field of the form it is, its place in its thing, and what it is to be. */
export type RightField = { field: string; path: string; is: string | null };

/** Put a thing right that cannot be read. Its values are fields named "value[0]", "value[1]", each beside its "path[0]". */
export const PutRightForm = z
  .record(z.string(), z.string({ error: 'Write this once, as text.' }).max(10_000))
  .transform((fields, context): z.output<typeof About> & { values: RightField[] } => {
    const about = About.safeParse(fields);
    const values = Object.entries(fields).flatMap(([name, text]): RightField[] => {
      const [, number] = /^value\[(\d{1,3})\]$/.exec(name) ?? [];
      const path = fields[`path[${number}]`];
      return path === undefined ? [] : [{ field: name, path, is: text.trim() || null }];
    });
    if (about.success) return { ...about.data, values };
    for (const { path, message } of about.error.issues) context.addIssue({ code: 'custom', path, message });
    return z.NEVER;
  });
