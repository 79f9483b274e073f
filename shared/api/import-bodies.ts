import { z } from 'zod';

const NEW = 'new';
const into = z.string().min(1).max(100).describe('The id of the shop to import into, or "new" for a new shop.');
const text = z.string().describe('The shop file, as text.');

/** What `POST /api/v1/shop/preview` takes. */
export const ImportPreviewBody = z.strictObject({ into, text });

const commandId = () =>
  z.string().regex(/^[0-9a-f-]{16,64}$/, {
    error: 'Write 16 to 64 characters of 0-9, a-f and -. Make a new one for each import.',
  });

/** What `POST /api/v1/shop/import/stop` takes. */
export const StopBody = z.strictObject({ commandId: commandId().describe('Of the import that is to stop.') });

/** What `POST /api/v1/shop/import` takes: the same, with the id of this command and what the preview showed. */
export const ImportBody = z
  .strictObject({
    commandId: commandId().describe(
      'Made by the sender, once per import: sending it again gives the same answer and changes nothing.',
    ),
    into,
    fingerprint: z
      .string()
      .max(100)
      .nullish()
      .describe('The fingerprint that the preview gave. Not needed for a new shop.'),
    text,
  })
  .refine((body) => isNew(body.into) || Boolean(body.fingerprint), {
    path: ['fingerprint'],
    error: 'Send the fingerprint that the preview gave, so that nothing is overwritten unseen.',
  });
export type ImportBody = z.output<typeof ImportBody>;

/** Whether a file is to become a shop of its own. */
export const isNew = (shopId: string): boolean => shopId === NEW;
