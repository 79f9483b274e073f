import { z } from 'zod';
import { commandId, fingerprint, shopId } from './command-fields';

const text = (most: number) => z.string().max(most);

/** One line of a recipe as it is to be from now on; and, when it takes something back, nothing more than that. */
export const SwitchProduct = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  recipe: z.string().min(1).max(100),
  /** How the recipe stood when the page was opened. */
  standing: fingerprint(),
  line: z
    .string()
    .regex(/^\d{1,3}$/)
    .transform(Number),
  product: z.string().min(1).max(100),
  dose: text(100).min(1),
  use: text(200).transform((use) => use || null),
  order: z
    .string()
    .regex(/^\d{0,4}$/)
    .transform((order) => (order === '' ? null : Number(order))),
  /** Whether it takes a switch back. */
  back: z.enum(['', 'yes']),
});
