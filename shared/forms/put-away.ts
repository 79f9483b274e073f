import { z } from 'zod';
import { commandId, fingerprint, shopId } from './command-fields';

/** Put a product away, or take it out again. */
export const PutAway = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  product: z.string().max(64),
  standing: fingerprint(),
  archived: z.enum(['yes', 'no']),
});

/** Remove what was entered by mistake and never used. */
export const RemoveProduct = z.strictObject({ commandId: commandId(), shop: shopId(), product: z.string().max(64) });

/** Put a safety data sheet away, or take it out again. */
export const PutAwaySheetForm = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  product: z.string().max(64),
  number: z
    .string()
    .regex(/^[1-9]\d{0,5}$/, { error: 'Reload the page and press the button again.' })
    .transform(Number),
  away: z.enum(['yes', 'no']),
});
