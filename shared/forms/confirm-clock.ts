import { z } from 'zod';
import { Instant } from '../time/instant';
import { commandId, shopId } from './command-fields';

/** Say that the time which a page showed is right. */
export const ConfirmClock = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  shownAt: z
    .string()
    .regex(/^\d{1,16}$/)
    .transform(Number)
    .pipe(Instant),
  /** Whether the clock was right before it went ahead; asked only where it did. */
  wasRight: z
    .enum(['yes', 'no'])
    .default('yes')
    .transform((word) => word === 'yes'),
});
