import { z } from 'zod';
import { readDay } from '../time/day';
import { commandId, shopId } from './command-fields';
import { readBy } from './read-by';

/** Say that a planned spraying which was missed was done as it was planned. */
export const DoneSpraying = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  program: z.string().min(1).max(64),
  on: readBy(readDay),
});
export type DoneSpraying = z.output<typeof DoneSpraying>;
