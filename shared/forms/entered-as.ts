import { z } from 'zod';

/** Who works in this browser, as entries are to be signed. */
export const EnteredAs = z.strictObject({
  who: z
    .string()
    .trim()
    .min(1, { error: 'Write a name, so that entries say whose they are.' })
    .max(60, { error: 'Write a shorter name.' })
    .refine((name) => !/\p{C}/u.test(name), { error: 'This holds a character that cannot be shown. Take it out.' }),
});
