import { z } from 'zod';
import { commandId, shopId } from './command-fields';
import { howKnown, looked } from './put-right';

/** Accept damaged rows as they stand: which were seen, and how somebody knows that they are true. */
export const AcceptRowsForm = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  seen: z.string().regex(/^[0-9a-f]{64}$/, { error: 'Reload the page and look again.' }),
  reason: howKnown(),
  sure: looked(),
});
