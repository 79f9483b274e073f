import { z } from 'zod';

/** The id of the command that a form sends: the browser's, or where no script runs, the one that came with the page. */
export const commandId = () =>
  z.string().regex(/^[\w-]{12,64}$/, { error: 'This form is too old. Reload the page and enter it again.' });

/** The shop that a form was opened for, whichever is looked at when it is sent. */
export const shopId = () => z.string().min(1).max(100);

/** Which of the shops in this database is asked about; left out, the one that the device works in. */
export const shopAsked = () =>
  shopId()
    .optional()
    .describe('The id of a shop. Left out: the shop that the device works in, or the only one there is.');

/** How something stood when the form was opened. */
export const fingerprint = () => z.string().regex(/^[0-9a-f]{64}$/);
