import { z } from 'zod';
import { oneLine } from '../text/one-line';
import { commandId, shopId } from './command-fields';

/** What may have become of a spraying that was begun. */
const BECAME = ['ended', 'recorded', 'never'] as const;

/** Say what became of a spraying that was begun and is not on record. */
export const SettleSpraying = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  spraying: z.string().min(1).max(64),
  became: z.enum(BECAME, { error: 'Choose what became of it.' }),
  /** A day and a time of the shop's clock. */
  endedAt: z.string().max(40).default(''),
  reason: oneLine(z.string().trim().max(300, { error: 'Shorten this to 300 characters.' })).default(''),
});
export type SettleSpraying = z.output<typeof SettleSpraying>;
